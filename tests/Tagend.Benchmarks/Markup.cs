using System.Globalization;
using System.Net;
using System.Text;

namespace Tagend.Benchmarks;

/// <summary>A page of a <see cref="DisplayList"/> as the programs that compile markup take it: everything at its place.</summary>
internal static class Markup
{
    /// <summary>HTML with one SVG, for browsers and their like.</summary>
    public static string Html(IReadOnlyList<string> list, string fonts)
    {
        var page = list[0].Split('\t');
        var (width, height) = (page[1], page[2]);
        var faces = string.Concat(new[] { ("Regular", 400), ("SemiBold", 600), ("Bold", 700) }.Select(face =>
            $"@font-face{{font-family:Card;font-weight:{face.Item2};src:url({new Uri(Path.Combine(fonts, $"Inter-{face.Item1}.ttf"))})}}\n"));
        var html = new StringBuilder(
            $"<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>Card</title><style>\n{faces}@page{{size:{width}pt {height}pt;margin:0}}\n"
            + $"body{{margin:0}} svg{{display:block}} text{{font-family:Card,Inter;white-space:pre}}\n</style>\n<svg xmlns=\"http://www.w3.org/2000/svg\" "
            + $"width=\"{width}pt\" height=\"{height}pt\" viewBox=\"0 0 {width} {height}\">\n");
        foreach (var field in list.Skip(1).Select(l => l.Split('\t')))
        {
            html.AppendLine(Svg(field));
        }

        return html.Append("</svg></html>").ToString();
    }

    /// <summary>Typst, every mark in a place of its own.</summary>
    public static string Typst(IReadOnlyList<string> list)
    {
        var page = list[0].Split('\t');
        var source = new StringBuilder(
            $"#set page(width: {page[1]}pt, height: {page[2]}pt, margin: 0pt)\n#set text(top-edge: \"baseline\", bottom-edge: \"baseline\", font: \"Inter\")\n"
            + "#let at(x, y, it) = place(top + left, dx: x, dy: y, it)\n");
        foreach (var field in list.Skip(1).Select(l => l.Split('\t')))
        {
            source.AppendLine(Placed(field));
        }

        return source.ToString();
    }

    private static string Svg(string[] f) => f[0] switch
    {
        "text" => $"<text x=\"{f[1]}\" y=\"{f[2]}\" font-size=\"{f[4]}\" font-weight=\"{WeightOf(f[3])}\" fill=\"{f[5]}\""
            + (f[6] == "0" ? "" : $" letter-spacing=\"{f[6]}\"") + $">{WebUtility.HtmlEncode(f[8])}</text>",
        "line" => $"<line x1=\"{f[1]}\" y1=\"{f[2]}\" x2=\"{f[3]}\" y2=\"{f[4]}\" stroke=\"{f[6]}\" stroke-width=\"{f[5]}\""
            + (f[7] == "0" ? "" : $" stroke-dasharray=\"{f[7]}\"") + "/>",
        "box" => $"<rect x=\"{f[1]}\" y=\"{f[2]}\" width=\"{f[3]}\" height=\"{f[4]}\" rx=\"{f[5]}\"{SvgPaint(f[8], f[6], f[7])}/>",
        "oval" => $"<ellipse cx=\"{Middle(f[1], f[3])}\" cy=\"{Middle(f[2], f[4])}\" rx=\"{Middle("0", f[3])}\" ry=\"{Middle("0", f[4])}\"{SvgPaint(f[6], f[5])}/>",
        "shape" => $"<path d=\"{SvgPath(f[3])}\"{SvgPaint(f[2], f[1])}/>",
        "bars" => $"<path transform=\"translate({f[1]} {f[2]}) scale({f[3]})\" d=\"{string.Concat(Bars(f[4]).Select(b => $"M{b[0]} {b[1]}h{b[2]}v{b[3]}h-{b[2]}z"))}\"/>",
        var kind => throw new InvalidOperationException($"no SVG for {kind}"),
    };

    private static string SvgPaint(string fill, string width, string color = "#000000") =>
        $" fill=\"{(fill == "-" ? "none" : fill)}\"" + (width == "0" ? "" : $" stroke=\"{color}\" stroke-width=\"{width}\"");

    private static string SvgPath(string polygons) => string.Concat(polygons.Split(';').Select(p => $"M{p}Z"));

    private static string Placed(string[] f) => f[0] switch
    {
        "text" => $"#at({f[1]}pt, {f[2]}pt, text(size: {f[4]}pt, weight: {WeightOf(f[3])}, fill: rgb(\"{f[5]}\"), tracking: {f[6]}pt, {Quoted(f[8])}))",
        "line" => $"#at(0pt, 0pt, line(start: ({f[1]}pt, {f[2]}pt), end: ({f[3]}pt, {f[4]}pt), stroke: (paint: rgb(\"{f[6]}\"), thickness: {f[5]}pt"
            + (f[7] == "0" ? "" : $", dash: ({f[7]}pt, {f[7]}pt)") + ")))",
        "box" => $"#at({f[1]}pt, {f[2]}pt, rect(width: {f[3]}pt, height: {f[4]}pt, radius: {f[5]}pt, {TypstPaint(f[8], f[6], f[7])}))",
        "oval" => $"#at({f[1]}pt, {f[2]}pt, ellipse(width: {f[3]}pt, height: {f[4]}pt, {TypstPaint(f[6], f[5])}))",
        "shape" => $"#at(0pt, 0pt, curve({TypstPaint(f[2], f[1])}, {Curve(f[3])}))",
        "bars" => string.Join('\n', Bars(f[4]).Select(b =>
            $"#at({f[1]}pt + {b[0]} * {f[3]}pt, {f[2]}pt + {b[1]} * {f[3]}pt, rect(width: {b[2]} * {f[3]}pt, height: {b[3]} * {f[3]}pt, fill: black))")),
        var kind => throw new InvalidOperationException($"no typst for {kind}"),
    };

    /// <summary>Each as its left, top, width and height.</summary>
    private static IEnumerable<string[]> Bars(string numbers) => numbers.Split(' ').Chunk(4);

    private static string TypstPaint(string fill, string width, string color = "#000000") =>
        (fill == "-" ? "fill: none" : $"fill: rgb(\"{fill}\")") + (width == "0" ? ", stroke: none" : $", stroke: {width}pt + rgb(\"{color}\")");

    private static string Curve(string polygons) => string.Join(", ", polygons.Split(';').Select(polygon =>
        string.Join(", ", polygon.Split(' ').Chunk(2).Select((xy, i) => $"curve.{(i == 0 ? "move" : "line")}(({xy[0]}pt, {xy[1]}pt))"))
        + ", curve.close()"));

    private static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private static int WeightOf(string name) => name switch { "Regular" => 400, "SemiBold" => 600, _ => 700 };

    private static string Middle(string start, string size) => Written(Read(start) + (Read(size) / 2));

    private static double Read(string number) => double.Parse(number, CultureInfo.InvariantCulture);

    private static string Written(double number) => number.ToString("0.####", CultureInfo.InvariantCulture);
}
