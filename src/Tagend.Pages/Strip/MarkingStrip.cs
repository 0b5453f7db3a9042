using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Strip;

/// <summary>The piece at true size, to be laid along the string: in one length on a roll, or in parts on sheets.</summary>
public static class MarkingStrip
{
    /// <summary>Between parts on a sheet, in points.</summary>
    private const float RowGap = 8;

    /// <summary>The longest lap, in points.</summary>
    private const float LongestLap = 36;

    /// <summary>Between the start of a part, or the bar there, and the part's name, in points.</summary>
    private const float NameGap = 10;

    private static float Margin => Points.Of(StripStock.Margin);

    /// <summary>A length over each joint, to see that it is glued true.</summary>
    internal static Length Across(LengthUnit unit) =>
        unit == LengthUnit.Inch ? Length.FromInches(4) : Length.FromMillimeters(100);

    /// <returns>All pages of a strip, or the problems of what does not fit.</returns>
    public static Composed Compose(Build build, ShopCatalog catalog, StripStock stock, StripPositions positions, Fonts fonts)
    {
        var spec = build.Spec;
        var write = new CardWriter(spec.Unit, catalog.Words);
        var plan = catalog.Plans.GetValueOrDefault(spec.Kind);
        var places = new StripPlaces(spec, write.Ends(plan), positions, write);
        var room = stock.Along - (StripStock.Margin * 2);
        var step = spec.Unit == LengthUnit.Inch ? Length.FromInches(1) : Length.FromMillimeters(10);
        var tiles = StripTile.Cut(places.StripLength, room, step);
        StripPlace? crowded = null;
        foreach (var style in StripStyle.FromLargeToSmall)
        {
            (var parts, crowded) = Parts(spec, places, tiles, stock, style, write, fonts);
            if (crowded is null)
            {
                var head = new StripHead(build, places, positions, tiles.Count, write);
                var pages = stock.IsRoll ? OnRoll(parts, stock, spec, head, fonts) : OnSheets(parts, stock, spec, head, write, fonts);
                return pages.IfWritable(fonts, Whose(spec));
            }
        }

        return new Composed([], [Crowded(spec, crowded!)]);
    }

    /// <returns>The parts, or a place whose words find no room.</returns>
    private static (IReadOnlyList<StripPart> Parts, StripPlace? Crowded) Parts(
        BuildSpec spec, StripPlaces places, IReadOnlyList<StripTile> tiles, StripStock stock, StripStyle style, CardWriter write, Fonts fonts)
    {
        var room = Points.Of(stock.Along) - (2 * Margin);
        var parts = new List<StripPart>();
        foreach (var tile in tiles)
        {
            var band = new StripBand(spec, places, tile, style);
            var names = new StripLabels(0, tile.IsLast && !stock.IsRoll ? room : band.Width, style, fonts);
            var labels = names.Spread(band.Named);
            if (names.Crowded is { } crowded)
            {
                return ([], crowded);
            }

            var lap = tile.IsLast ? 0 : Math.Min(room - band.Width, LongestLap);
            List<Ink> drawn = [.. band.Inks(labels, fonts), .. Joints(tiles, tile, band.Width, lap, write, fonts)];
            parts.Add(new StripPart(tile, band.Width + lap, [PartStart.Figure(drawn), .. drawn, .. band.Scale(fonts), PartEnd.Ink]));
        }

        return (parts, null);
    }

    private static IEnumerable<Ink> Joints(
        IReadOnlyList<StripTile> tiles, StripTile tile, float joint, float lap, CardWriter write, Fonts fonts)
    {
        var before = tile.IsFirst ? [] : StripJoint.Over(AfterJoint(tile));
        return tile.IsLast
            ? before
            : before.Concat(StripJoint.Under(tile, joint, lap, Across(write.Unit) - AfterJoint(tiles[tile.Number]), write.Language, fonts));

        // A short last part has less than half of it.
        Length AfterJoint(StripTile after) => Length.Min(Across(write.Unit) / 2, after.To - after.From);
    }

    private static Composed OnRoll(
        IReadOnlyList<StripPart> parts, StripStock stock, BuildSpec spec, StripHead head, Fonts fonts)
    {
        var width = Points.Of(stock.Across);
        var pages = new List<Page>();
        foreach (var part in parts)
        {
            var placement = head.OnRoll(part.Tile, fonts).Place(fonts, new Room(Room.Endless, CheckBar.Height));
            if (placement is not Placed foot)
            {
                return Refused(spec, (Misfit)placement);
            }

            var left = Margin + NameFrom(part.Tile, spec.Unit);
            var top = (width - StripStyle.Height) / 2;
            pages.Add(new Page(
                width,
                Math.Max(Margin + part.Width, left + foot.Width) + Margin,
                [.. part.Inks.Select(i => i.Moved(Margin, top)), .. foot.InksAt(left, top + StripStyle.FootTop)])
            {
                IsLying = true,
                IsFromRoll = true,
            });
        }

        return new Composed(pages, []);
    }

    private static Composed OnSheets(
        IReadOnlyList<StripPart> parts, StripStock stock, BuildSpec spec, StripHead head, CardWriter write, Fonts fonts)
    {
        var (across, along) = (Points.Of(stock.Across), Points.Of(stock.Along));
        var room = new Room(along - (2 * Margin), across - (2 * Margin));
        const float RowHeight = StripStyle.Above + StripStyle.Height + RowGap;
        var pages = new List<Page>();
        var placement = head.OnSheet(1, 1).Place(fonts, room);
        if (placement is not Placed first)
        {
            return Refused(spec, (Misfit)placement);
        }

        var rows = (int)((room.Height - first.Height) / RowHeight);
        var sheets = parts.Chunk(rows).ToList();
        foreach (var (index, sheet) in sheets.Index())
        {
            var inks = new List<Ink>(((Placed)head.OnSheet(index + 1, sheets.Count).Place(fonts, room)).InksAt(Margin, Margin));
            foreach (var (row, part) in sheet.Index())
            {
                var edge = Margin + first.Height + RowGap + StripStyle.Above + (row * RowHeight);
                inks.AddRange(part.Inks.Append(Name(part.Tile, spec, write)).Select(i => i.Moved(Margin, edge)));
            }

            pages.Add(new Page(across, along, inks) { IsLying = true });
        }

        return new Composed(pages, []);
    }

    private static TextInk Name(StripTile tile, BuildSpec spec, CardWriter write)
    {
        var range = write.Language.Say(
            PaperWord.StripPartRange,
            ("part", $"{tile.Number}"),
            ("parts", $"{tile.Count}"),
            ("from", write.BareSetting(tile.From)),
            ("to", tile.IsLast ? write.Mark(tile.To) : write.Setting(tile.To)));
        var text = $"{spec.Order}\u00A0 {spec.Piece}   {range}";
        return new TextInk(NameFrom(tile, spec.Unit), StripStyle.FootTop + 9, text, TypeScale.BodyBold);
    }

    private static float NameFrom(StripTile tile, LengthUnit unit) =>
        tile.IsFirst ? 0 : Points.Of(Across(unit) / 2) + NameGap;

    private static Place Whose(BuildSpec spec) => new($"marking strip {spec.Order} {spec.Piece}");

    private static Composed Refused(BuildSpec spec, Misfit misfit) =>
        new([], [.. misfit.Reasons.Select(reason => new Problem(Whose(spec), null, reason))]);

    private static Problem Crowded(BuildSpec spec, StripPlace place) => new(
        Whose(spec),
        $"{place.Figure}",
        $"too many places near this one ({place.Words}) to write all their distances; leave one out of the order");

    /// <summary>A part with its joints, from its upper left, in points.</summary>
    private sealed record StripPart(StripTile Tile, float Width, IReadOnlyList<Ink> Inks);
}
