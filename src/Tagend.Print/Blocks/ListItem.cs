using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A marker such as a number or a bullet, and beside it text that wraps in line with itself.</summary>
/// <param name="Indent">From the marker's left edge to the text, in points.</param>
public sealed record ListItem(Paragraph Marker, Block Body, float Indent) : Block
{
    public override Placement Place(Fonts fonts, Room room) => Inner.Place(fonts, room) switch
    {
        Placed item => item.With(PartKind.Item, PartKind.Label, PartKind.Body),
        var misfit => misfit,
    };

    public override float NaturalWidth(Fonts fonts) => Inner.NaturalWidth(fonts);

    private Row Inner => new(
        [new Column(Marker, ColumnWidth.Of(Indent)), new Column(Body, ColumnWidth.Shared())], Level: Level.Baseline);
}

/// <summary>An empty square to tick, and what it stands for.</summary>
public sealed record Checkbox(Paragraph Label) : Block
{
    private const float SizeInLines = 0.72f;
    private const float LineWidth = 0.7f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var line = Label.Spans[0].Style.LineHeight;
        var square = line * SizeInLines;
        var indent = square + (line * 0.45f);
        var placement = Label.Place(fonts, room with { Width = room.Width - indent });
        if (placement is not Placed label)
        {
            return placement;
        }

        var box = new BoxInk(0, (line - square) / 2, square, square, LineWidth);
        return new Placed(indent + label.Width, label.Height, [box], [new PlacedChild(indent, 0, label)], label.Baseline);
    }
}

/// <summary>Room to write a value into by hand: a frame with its name in the top left corner and the unit at the right.</summary>
/// <param name="Height">Of the frame, in points; what the room gives if that is to be filled.</param>
public sealed record FillIn(string Name, string Unit, float Height) : Block
{
    private const float Padding = 3;
    private const float LineWidth = 0.6f;

    public override Placement Place(Fonts fonts, Room room)
    {
        var inner = new Room(room.Width - (2 * Padding), room.Height - Padding);
        var name = new Paragraph(Name, TypeScale.Caption).Place(fonts, inner);
        var unit = new Paragraph(Unit, TypeScale.Caption, Align.Right).Place(fonts, inner);
        if (name is Misfit misfit)
        {
            return misfit;
        }

        var height = room.Fill ? room.Height : Height;
        if (!room.HoldsHeight(height) || unit is not Placed placedUnit)
        {
            return new Misfit($"the box \"{Name}\" is {height:0.#} pt high and has {room.Height:0.#} pt");
        }

        return new Placed(
            room.Width,
            height,
            [new BoxInk(0, 0, room.Width, height, LineWidth)],
            [
                new PlacedChild(Padding, Padding, (Placed)name),
                new PlacedChild(Padding, height - placedUnit.Height - (Padding / 2), placedUnit),
            ]);
    }

    public override float NaturalWidth(Fonts fonts) => fonts.WidthOf(Name, TypeScale.Caption) + (2 * Padding);
}
