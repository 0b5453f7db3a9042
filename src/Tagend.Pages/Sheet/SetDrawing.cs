using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Sheet;

/// <summary>The customer sheet's drawing of a set, by itself: all pieces to one scale, with their ends and marks.</summary>
public static class SetDrawing
{
    private const float Edge = 4;

    /// <summary>Draws a set on a page as high as the drawing.</summary>
    /// <param name="set">One piece at least.</param>
    /// <param name="catalog">The shop's words and plans.</param>
    /// <param name="width">The page's width, in points.</param>
    /// <param name="fonts">The fonts of its texts.</param>
    /// <returns>No page, but a problem, where the drawing does not fit the width.</returns>
    public static Composed Of(BuildSet set, ShopCatalog catalog, float width, Fonts fonts)
    {
        var data = new SheetData(set.Order, set.Builds, catalog, new SheetWriter(catalog.Words));
        var drawing = new SheetDrawing(data, SheetStyle.LooseToDense[0]);
        return drawing.Place(fonts, new Room(width - (2 * Edge), Room.Endless)) is Placed placed
            ? new Composed([new Page(width, placed.Height + (2 * Edge), [.. placed.InksAt(Edge, Edge)])], [])
            : new Composed([], [new Problem(new Place($"drawing of {set.Order}"), null, $"it does not fit into {width:0} pt")]);
    }
}
