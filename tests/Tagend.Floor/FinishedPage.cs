using System.Globalization;
using SkiaSharp;

namespace Tagend.Floor;

/// <summary>A page of a list: what to draw, in points, in order.</summary>
internal sealed class FinishedPage(float width, float height)
{
    private readonly List<Mark> _marks = [];

    public float Width => width;

    public float Height => height;

    /// <summary>Reads a list: a line a page or mark, its fields separated by tabs, its kind first.</summary>
    public static List<FinishedPage> ReadAll(string path)
    {
        var pages = new List<FinishedPage>();
        foreach (var line in File.ReadLines(path))
        {
            var field = line.Split('\t');
            if (field[0] == "page")
            {
                pages.Add(new FinishedPage(Number(field[1]), Number(field[2])));
            }
            else
            {
                pages[^1]._marks.Add(MarkOf(field));
            }
        }

        return pages;
    }

    public void Draw(SKCanvas canvas, SKPaint paint, Faces faces)
    {
        foreach (var mark in _marks)
        {
            mark.Draw(canvas, paint, faces);
        }
    }

    private static Mark MarkOf(string[] field) => field[0] switch
    {
        "text" => new Text(
            Number(field[1]), Number(field[2]), field[3], Number(field[4]), Color(field[5])!.Value, Numbers(field[7], ','), field[8]),
        "line" => new Line(
            new(Number(field[1]), Number(field[2])), new(Number(field[3]), Number(field[4])), Number(field[5]), Color(field[6])!.Value, Number(field[7])),
        "box" => new Shape(
            PathOf.Box(Rectangle(field), Number(field[5])), Number(field[6]), Color(field[7])!.Value, Color(field[8])),
        "oval" => new Shape(PathOf.Oval(Rectangle(field)), Number(field[5]), SKColors.Black, Color(field[6])),
        "shape" => new Shape(PathOf.Polygons(Polygons(field[3])), Number(field[1]), SKColors.Black, Color(field[2])),
        "bars" => new Bars(Number(field[1]), Number(field[2]), Number(field[3]), [.. Numbers(field[4], ' ').Chunk(4).Select(b => SKRect.Create(b[0], b[1], b[2], b[3]))]),
        var kind => throw new InvalidDataException($"no mark is called {kind}"),
    };

    private static SKRect Rectangle(string[] field) =>
        SKRect.Create(Number(field[1]), Number(field[2]), Number(field[3]), Number(field[4]));

    private static SKColor? Color(string text) => text == "-" ? null : SKColor.Parse(text);

    private static float Number(string text) => float.Parse(text, CultureInfo.InvariantCulture);

    private static float[] Numbers(string text, char separator) =>
        text.Length == 0 ? [] : [.. text.Split(separator).Select(Number)];

    private static SKPoint[][] Polygons(string text) =>
        [.. text.Split(';').Select(polygon => Numbers(polygon, ' ').Chunk(2).Select(xy => new SKPoint(xy[0], xy[1])).ToArray())];
}
