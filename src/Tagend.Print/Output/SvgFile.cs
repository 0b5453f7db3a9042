using System.Globalization;
using System.Net;
using System.Text;

namespace Tagend.Output;

/// <summary>Writes a page as a drawing in a web page, which gives its ink and its paper their colors.</summary>
/// <remarks>
/// Scalable Vector Graphics 2. What is black has the class <c>ink</c> and what is white <c>paper</c>, so that a dark screen
/// turns them around; text is text, in the page's own Inter.
/// </remarks>
public static class SvgFile
{
    private const byte Middle = 128;

    /// <summary>The inks of a page as elements; what holds them has the page's size in points for its view box.</summary>
    /// <exception cref="InvalidOperationException">The page has a code, a picture, or something in color.</exception>
    public static string Elements(Page page)
    {
        var svg = new StringBuilder();
        foreach (var ink in page.Inks)
        {
            svg.Append(ink switch
            {
                TextInk text => Element(text),
                LineInk { Color: null } line => string.Create(
                    CultureInfo.InvariantCulture,
                    $"<path class=\"line\" d=\"M{line.X1:0.##} {line.Y1:0.##}L{line.X2:0.##} {line.Y2:0.##}\" stroke-width=\"{line.Width:0.##}\"{(line.Dash > 0 ? string.Create(CultureInfo.InvariantCulture, $" stroke-dasharray=\"{line.Dash:0.##}\"") : "")}/>"),
                BoxInk box => string.Create(
                    CultureInfo.InvariantCulture,
                    $"<rect{Look(box.Fill, box.Stroke)} x=\"{box.X + (box.Stroke / 2):0.##}\" y=\"{box.Y + (box.Stroke / 2):0.##}\" width=\"{box.Width - box.Stroke:0.##}\" height=\"{box.Height - box.Stroke:0.##}\" rx=\"{box.Radius:0.##}\"/>"),
                OvalInk oval => string.Create(
                    CultureInfo.InvariantCulture,
                    $"<ellipse{Look(oval.Fill, oval.Stroke)} cx=\"{oval.CenterX:0.##}\" cy=\"{oval.CenterY:0.##}\" rx=\"{oval.RadiusX:0.##}\" ry=\"{oval.RadiusY:0.##}\"/>"),
                ShapeInk shape => $"<path{Look(shape.Fill, shape.Stroke)} d=\"M{string.Join('L', shape.Corners.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.X:0.##} {c.Y:0.##}")))}z\"/>",
                PartStart or PartEnd => "",
                _ => throw new InvalidOperationException($"no way to write {ink.GetType().Name}"),
            });
        }

        return svg.ToString();
    }

    private static string Element(TextInk text) => string.Create(
        CultureInfo.InvariantCulture,
        $"<text class=\"{(text.Style.Gray < Middle ? "ink" : "paper")}\" x=\"{text.X:0.##}\" y=\"{text.Baseline:0.##}\" font-size=\"{text.Style.Size}\"{(text.Style.Weight == Weight.Regular ? "" : " font-weight=\"600\"")}>{WebUtility.HtmlEncode(text.Text)}</text>");

    private static string Look(byte? fill, float stroke) => string.Create(
        CultureInfo.InvariantCulture,
        $" class=\"{(fill is not { } gray ? "open" : gray < Middle ? "ink" : "paper")}{(stroke > 0 ? " edge" : "")}\"{(stroke > 0 ? string.Create(CultureInfo.InvariantCulture, $" stroke-width=\"{stroke:0.##}\"") : "")}");
}
