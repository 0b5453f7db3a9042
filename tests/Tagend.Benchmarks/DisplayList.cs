using System.Globalization;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pdf;

namespace Tagend.Benchmarks;

/// <summary>
/// Finished pages as a file that other programs can draw: a line a page or mark, its fields separated by tabs. Places and
/// widths are points from the top left; a color is <c>#rrggbb</c>, or <c>-</c> where nothing is filled.
/// </summary>
internal static class DisplayList
{
    /// <summary>Writes NAME.list with the fonts beside it, cut to the characters of these pages.</summary>
    public static void Write(IReadOnlyList<Page> pages, Fonts fonts, string folder, string name)
    {
        File.WriteAllLines(Path.Combine(folder, $"{name}.list"), pages.SelectMany(p => Lines(p, fonts)));
        foreach (var ofWeight in pages.SelectMany(p => p.Inks).OfType<TextInk>().GroupBy(t => t.Style.Weight, t => t.Text))
        {
            File.WriteAllBytes(Path.Combine(folder, $"{ofWeight.Key}.ttf"), Cut(fonts[ofWeight.Key], ofWeight.Distinct()));
        }
    }

    /// <summary>The font's glyphs of some texts, and a table that leads from characters to the glyphs they were shaped to.</summary>
    private static byte[] Cut(Face face, IEnumerable<string> texts)
    {
        var glyphs = new SortedDictionary<int, ushort>();
        foreach (var (character, glyph) in texts.SelectMany(t => t.EnumerateRunes().Zip(face.Shape(t).Glyphs)))
        {
            glyphs[character.Value] = glyph;
        }

        List<ushort> kept = [.. glyphs.Values.Distinct()];
        return FontSubset.Cut(face.File, kept, CharacterMap.Of(glyphs.Select(g => (g.Key, (ushort)(kept.IndexOf(g.Value) + 1)))));
    }

    private static IEnumerable<string> Lines(Page page, Fonts fonts) =>
        page.Inks.Where(i => i is not (PartStart or PartEnd)).Select(ink => Line(ink, fonts)).Prepend(Joined("page", page.Width, page.Height));

    private static string Line(Ink ink, Fonts fonts) => ink switch
    {
        TextInk t => Joined(
            "text", t.X, t.Baseline, t.Style.Weight, t.Style.Size, Color(t.Style.Gray, t.Style.Color), t.Style.Tracking, Places(t, fonts), t.Text),
        LineInk l => Joined("line", l.X1, l.Y1, l.X2, l.Y2, l.Width, Color(l.Gray, l.Color), l.Dash),
        BoxInk { Stroke: 0 } b => Joined("box", b.X, b.Y, b.Width, b.Height, b.Radius, b.Stroke, Color(b.Gray), Fill(b.Fill)),
        BoxInk b => Joined( // the line lies inside the edges
            "box", b.X + (b.Stroke / 2), b.Y + (b.Stroke / 2), b.Width - b.Stroke, b.Height - b.Stroke, b.Radius, b.Stroke, Color(b.Gray), Fill(b.Fill)),
        OvalInk o => Joined(
            "oval", o.CenterX - o.RadiusX, o.CenterY - o.RadiusY, 2 * o.RadiusX, 2 * o.RadiusY, o.Stroke, Fill(o.Fill)),
        ShapeInk s => Joined("shape", s.Stroke, Fill(s.Fill), Corners(s.Corners)),
        BarsInk b => Joined("bars", b.X, b.Y, (b.Unit / Pen.PartsOfSquare).ToString("0.########", CultureInfo.InvariantCulture), string.Join(' ', b.Bars.Select(Pen.PlaceOf).Select(r => $"{r.Left} {r.Top} {r.Width} {r.Height}"))),
        _ => throw new InvalidOperationException($"cards have no {ink.GetType().Name}"),
    };

    /// <summary>Of the characters of a tracked text, from its first.</summary>
    private static string Places(TextInk text, Fonts fonts)
    {
        var style = text.Style;
        return style.Tracking == 0 ? "" : string.Join(',', text.Text.Select((_, i) => Number(fonts.WidthOf(text.Text[..i], style))));
    }

    private static string Corners(IEnumerable<(float X, float Y)> corners) =>
        string.Join(' ', corners.Select(c => $"{Number(c.X)} {Number(c.Y)}"));

    private static string Color(byte gray, InkColor? color = null)
    {
        var (red, green, blue) = color ?? new InkColor(gray, gray, gray);
        return $"#{red:x2}{green:x2}{blue:x2}";
    }

    private static string Fill(byte? gray) => gray is { } g ? Color(g) : "-";

    private static string Number(float number) => number.ToString("0.####", CultureInfo.InvariantCulture);

    private static string Joined(params object[] fields) =>
        string.Join('\t', fields.Select(f => f is float number ? Number(number) : f.ToString()));
}
