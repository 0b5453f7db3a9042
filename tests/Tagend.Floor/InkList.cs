using System.Globalization;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Qr.Encode;

namespace Tagend.Floor;

/// <summary>The same list as pages of our own inks, for the second floor: our writer alone.</summary>
internal static class InkList
{
    /// <summary>Of a module, which bars of a list are placed in.</summary>
    private const int PartsOfModule = 50;

    public static List<Page> ReadAll(string path)
    {
        var pages = new List<Page>();
        var inks = new List<Ink>();
        foreach (var field in File.ReadLines(path).Select(l => l.Split('\t')))
        {
            if (field[0] == "page")
            {
                inks = [];
                pages.Add(new Page(Number(field[1]), Number(field[2]), inks));
            }
            else
            {
                inks.Add(InkOf(field));
            }
        }

        return pages;
    }

    private static Ink InkOf(string[] field) => field[0] switch
    {
        "text" => new TextInk(Number(field[1]), Number(field[2]), field[8], new TextStyle(
            Enum.Parse<Weight>(field[3]), Number(field[4]), Tracking: Number(field[6]), Color: Color(field[5]))),
        "line" => new LineInk(
            Number(field[1]), Number(field[2]), Number(field[3]), Number(field[4]), Number(field[5]), Color: Color(field[6]), Dash: Number(field[7])),
        "box" when Number(field[6]) is var stroke => new BoxInk(
            Number(field[1]) - (stroke / 2), Number(field[2]) - (stroke / 2), Number(field[3]) + stroke, Number(field[4]) + stroke,
            stroke, Color(field[8])?.Red, Number(field[5]), Color(field[7])!.Value.Red),
        "oval" when (Number(field[3]) / 2, Number(field[4]) / 2) is var (x, y) => new OvalInk(
            Number(field[1]) + x, Number(field[2]) + y, x, y, Number(field[5]), Color(field[6])?.Red),
        "shape" => new ShapeInk([.. Numbers(field[3]).Chunk(2).Select(c => (c[0], c[1]))], Number(field[1]), Color(field[2])?.Red),
        "bars" => new BarsInk(Number(field[1]), Number(field[2]), Number(field[3]) * PartsOfModule, [.. Numbers(field[4]).Chunk(4).Select(BarOf)]),
        var kind => throw new InvalidDataException($"no mark is called {kind}"),
    };

    private static Bar BarOf(float[] edges) => new(Modules(edges[0]), Modules(edges[1]), Modules(edges[2]), Modules(edges[3]));

    private static byte Modules(float parts) => (byte)MathF.Round(parts / PartsOfModule);

    private static InkColor? Color(string text) => text == "-" ? null : new InkColor(Part(text, 1), Part(text, 3), Part(text, 5));

    private static byte Part(string color, int at) => byte.Parse(color.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    private static float Number(string text) => float.Parse(text, CultureInfo.InvariantCulture);

    private static float[] Numbers(string text) => [.. text.Split(' ').Select(Number)];
}
