using System.Globalization;
using System.Text.RegularExpressions;

namespace Tagend.StationTests;

/// <summary>Inches as papers and screens write them.</summary>
internal static class Inch
{
    /// <summary>Reads <c>60 1/4 in</c> and <c>60 in</c>.</summary>
    public static double Read(string text)
    {
        var match = Regex.Match(text, @"^(\d+)(?: (\d+)/(\d+))? in$");
        return Number(1) + (match.Groups[2].Success ? Number(2) / Number(3) : 0);

        double Number(int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);
    }
}
