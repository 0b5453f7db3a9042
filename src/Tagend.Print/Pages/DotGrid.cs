using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages;

/// <summary>The dots of the printer that a label stock is printed on.</summary>
/// <param name="DotsPerInch">What its head has; for sheets, what they are taken to be printed at.</param>
internal readonly record struct DotGrid(int DotsPerInch)
{
    private const int SheetDotsPerInch = 300;

    /// <summary>Of a dot, in points.</summary>
    public float Size => Points.PerInch / DotsPerInch;

    public static DotGrid Of(LabelStock stock) => new(stock.DotsPerInch ?? SheetDotsPerInch);

    /// <summary>The edge between dots that is nearest to a place in points.</summary>
    public float Nearest(float points) => MathF.Round(points / Size) * Size;

    /// <summary>The edge between dots at a place in points or before it.</summary>
    public float Before(float points) => MathF.Floor((points / Size) + 0.001f) * Size;
}
