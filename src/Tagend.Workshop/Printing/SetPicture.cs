using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Sheet;
using Tagend.Specs;

namespace Tagend.Workshop.Printing;

/// <summary>The drawing of a set as a picture for a screen.</summary>
public static class SetPicture
{
    /// <summary>Draws all pieces of a set to one scale.</summary>
    /// <param name="set">One piece at least.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="width">The width of the drawing in points of 1/72 in: what is narrower has a smaller scale, not smaller words.</param>
    /// <param name="dotsPerInch">The picture's resolution.</param>
    /// <returns>A PNG; null where the set's marks do not fit into the width.</returns>
    /// <exception cref="Problems.TagendException">The fonts cannot be read.</exception>
    public static byte[]? Of(BuildSet set, ShopCatalog catalog, float width, int dotsPerInch)
    {
        var fonts = Fonts.Of(catalog.Folder);
        if (SetDrawing.Of(set, catalog, width, fonts).Pages is not [var page])
        {
            return null;
        }

        var picture = new MemoryStream();
        PngFile.Write(page, fonts, dotsPerInch, DotDepth.Gray, picture);
        return picture.ToArray();
    }
}
