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
        return new LabelStock
        {
            Name = "roll",
            Title = "Test roll",
            PageWidth = across,
            PageHeight = down,
            LabelWidth = across,
            LabelHeight = down,
            Rows = 1,
            Columns = 1,
            Left = Length.Zero,
            Top = Length.Zero,
            AcrossPitch = across,
            DownPitch = down,
            Corner = Length.Zero,
            DotsPerInch = dotsPerInch,
        };
    }
}
