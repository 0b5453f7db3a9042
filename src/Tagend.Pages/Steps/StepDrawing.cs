using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Steps;

/// <summary>The card's drawing of a piece, with where on it each step is.</summary>
/// <param name="Page">The drawing.</param>
/// <param name="Bands">Left edges and widths in points, of each step in their order.</param>
public sealed record StepDrawing(Page Page, IReadOnlyList<IReadOnlyList<(float X, float Width)>> Bands)
{
    /// <summary>Beyond a place, in points, so that a mark is seen.</summary>
    private const float Beyond = 5;

    /// <summary>Draws a piece for its steps.</summary>
    /// <param name="width">Of the drawing, in points: what is narrower has a smaller scale, not smaller words.</param>
    /// <returns>Null where the piece's marks find no room side by side.</returns>
    public static StepDrawing? Of(BuildSpec spec, IReadOnlyList<BenchStep> steps, ShopCatalog catalog, float width, Fonts fonts)
    {
        var write = new CardWriter(spec.Unit, catalog.Words);
        var drawing = new PieceDrawing(spec, write.Ends(catalog.Plans.GetValueOrDefault(spec.Kind)), write);
        if (drawing.Of(CardStyle.Front[0]).Place(fonts, new Room(width, Room.Endless)) is not Placed placed)
        {
            return null;
        }

        var scale = drawing.ScaleIn(width);
        return new StepDrawing(new Page(width, placed.Height, [.. placed.InksAt(0, 0)]), [.. steps.Select(BandsOf)]);

        IReadOnlyList<(float, float)> BandsOf(BenchStep step) =>
            [.. step.Where.Select(w => (scale.At(w.From) - Beyond, scale.At(w.To) - scale.At(w.From) + (2 * Beyond)))];
    }

    /// <summary>The hand of a piece's twist, and the way a hook turns for it.</summary>
    public static Page TwistOf(BuildSpec spec, Fonts fonts)
    {
        var placed = (Placed)new TwistPicture(spec.Twist).Place(fonts, new Room(Room.Endless, Room.Endless));
        return new Page(placed.Width, placed.Height, [.. placed.InksAt(0, 0)]);
    }
}
