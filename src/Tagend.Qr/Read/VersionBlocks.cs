using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Reads the version of a large symbol beside two of its finder patterns, whose own modules lead there however the rest is bent.</summary>
internal static class VersionBlocks
{
    /// <summary>The nearest and farthest columns of the block beside the finder pattern on the right, from its middle: ISO/IEC 18004:2015, 7.10.</summary>
    private const int First = -7;

    private const int Across = 3;

    /// <summary>Its first row, from the same middle.</summary>
    private const int Top = -3;

    /// <summary>Sizes in modules that one of the two blocks tells.</summary>
    /// <param name="picture">That shows both.</param>
    /// <param name="right">The finder pattern at the top right.</param>
    /// <param name="below">The one at the bottom left, whose block is the other one's mirror image.</param>
    public static IEnumerable<int> Sizes(GrayPicture picture, FinderShape right, FinderShape below)
    {
        int?[] versions =
        [
            VersionInformation.Nearest(Word(picture, right, right.At)),
            VersionInformation.Nearest(Word(picture, below, (across, down) => below.At(down, across))),
        ];
        return versions.OfType<int>().Distinct().Select(v => (4 * v) + 17);
    }

    private static int Word(GrayPicture picture, FinderShape finder, Func<float, float, Point> at)
    {
        var middle = finder.Gray(picture);
        var word = 0;
        for (var bit = VersionInformation.Bits - 1; bit >= 0; bit--)
        {
            var light = picture.At(at(First + (bit % Across), Top + (bit / Across)));
            word = word << 1 | (light < middle ? 1 : 0);
        }

        return word;
    }
}
