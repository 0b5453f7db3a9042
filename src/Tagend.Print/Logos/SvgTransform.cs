using System.Text.RegularExpressions;
using SkiaSharp;

namespace Tagend.Logos;

/// <summary>Reads the attribute <c>transform</c>: SVG 1.1, 7.6.</summary>
internal static partial class SvgTransform
{
    public static SKMatrix Of(SvgElement element)
    {
        var text = element.Attribute("transform") ?? "";
        var all = SKMatrix.Identity;
        var end = 0;
        foreach (Match step in Steps().Matches(text))
        {
            if (step.Index != end || StepOf(step.Groups[1].Value, step.Groups[2].Value) is not { } matrix)
            {
                break;
            }

            all = all.PreConcat(matrix);
            end = step.Index + step.Length;
        }

        if (end < text.Length)
        {
            element.Report("transform", text, SvgWording.ATransform);
        }

        return all;
    }

    private static SKMatrix? StepOf(string name, string arguments) => SvgNumbers.TryReadAll(arguments, out var n)
        ? (name, n.Length) switch
        {
            ("matrix", 6) => new SKMatrix(n[0], n[2], n[4], n[1], n[3], n[5], 0, 0, 1),
            ("translate", 1) => SKMatrix.CreateTranslation(n[0], 0),
            ("translate", 2) => SKMatrix.CreateTranslation(n[0], n[1]),
            ("scale", 1) => SKMatrix.CreateScale(n[0], n[0]),
            ("scale", 2) => SKMatrix.CreateScale(n[0], n[1]),
            ("rotate", 1) => SKMatrix.CreateRotationDegrees(n[0]),
            ("rotate", 3) => SKMatrix.CreateRotationDegrees(n[0], n[1], n[2]),
            ("skewX", 1) => SKMatrix.CreateSkew(Tangent(n[0]), 0),
            ("skewY", 1) => SKMatrix.CreateSkew(0, Tangent(n[0])),
            _ => null,
        }
        : null;

    private static float Tangent(float degrees) => (float)Math.Tan(double.DegreesToRadians(degrees));

    [GeneratedRegex(@"\G[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)\s*")]
    private static partial Regex Steps();
}
