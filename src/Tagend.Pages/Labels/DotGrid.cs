using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>The dots of the printer that a label stock is printed on.</summary>
/// <param name="DotsPerInch">What its head has; for sheets, what they are taken to be printed at.</param>
internal readonly record struct DotGrid(int DotsPerInch)
{
    private const int SheetDotsPerInch = 300;

    /// <summary>How far a bar's edges stay within its dots, in dots: a printer paints every dot that it touches.</summary>
    private const float Trace = 0.05f;

    /// <summary>Of a dot, in points.</summary>
    public float Size => Points.PerInch / DotsPerInch;

    public static DotGrid Of(LabelStock stock) => new(stock.DotsPerInch ?? SheetDotsPerInch);

    /// <summary>The edge between dots that is nearest to a place in points.</summary>
    public float Nearest(float points) => MathF.Round(points / Size) * Size;

    /// <summary>The edge between dots at a place in points or before it.</summary>
    public float Before(float points) => MathF.Floor((points / Size) + 0.001f) * Size;

    /// <summary>The whole dots nearest to a page's side, in points.</summary>
    /// <remarks>
    /// Where they are no whole points, less by up to a hundredth, in which a PDF's page is measured: a program that rounds
    /// up would add a dot.
    /// </remarks>
    public float WholeSide(Length side)
    {
        var points = Math.Round(side.Inches * DotsPerInch) * Points.PerInch / DotsPerInch;
        return (float)(Math.Abs(points - Math.Round(points)) < 1e-6 ? Math.Round(points) : (Math.Ceiling(points * 100 - 1e-4) - 1) / 100);
    }

    /// <summary>A level or upright line as a bar of whole dots, one at the least; a text on an edge between dots; all else as it is.</summary>
    public Ink OnDots(Ink ink) => ink switch
    {
        TextInk text => text with { X = Nearest(text.X), Baseline = Nearest(text.Baseline) },
        LineInk { Dash: 0 } line when line.Y1 == line.Y2 =>
            Bar(line, Nearest(line.X1), Edge(line.Y1, line), Nearest(line.X2) - Nearest(line.X1), Thickness(line)),
        LineInk { Dash: 0 } line when line.X1 == line.X2 =>
            Bar(line, Edge(line.X1, line), Nearest(line.Y1), Thickness(line), Nearest(line.Y2) - Nearest(line.Y1)),
        _ => ink,
    };

    private float Thickness(LineInk line) => MathF.Max(1, MathF.Round(line.Width / Size)) * Size;

    private float Edge(float middle, LineInk line) => Nearest(middle - (Thickness(line) / 2));

    private BoxInk Bar(LineInk line, float x, float y, float width, float height)
    {
        var trace = Trace * Size;
        return new BoxInk(x + trace, y + trace, width - (2 * trace), height - (2 * trace), Fill: line.Gray);
    }
}
