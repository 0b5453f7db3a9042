using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Tests.Pages;

/// <summary>Label stocks of our own.</summary>
internal static class Stock
{
    /// <summary>A roll of labels, its sides in dots.</summary>
    public static LabelStock Roll(int width, int height, int dotsPerInch)
    {
        var (across, down) = (Length.FromInches((double)width / dotsPerInch), Length.FromInches((double)height / dotsPerInch));
        return new LabelStock(
            "roll", "Test roll", across, down, across, down, 1, 1, Length.Zero, Length.Zero, across, down, Length.Zero, dotsPerInch);
    }
}
