using System.Globalization;
using System.Text.RegularExpressions;
using NCalc;
using Tagend.Specs.Explained;

namespace Tagend.Tests.Specs;

/// <summary>Works an explained step again from the numbers it shows, by a general-purpose calculator library.</summary>
internal static class ShownArithmetic
{
    private const string Number = @"-?\d+(?:\.(?<decimals>\d+))?";

    /// <summary>What the step's numbers give, and what it says they give, with the worth of its last digit.</summary>
    public static (double Worked, double Shown, double LastDigit) Of(ExplainedStep step)
    {
        var shown = Regex.Match(step.Result, $"^{Number}");
        var value = double.Parse(shown.Value, CultureInfo.InvariantCulture);
        var lastDigit = Math.Pow(10, -shown.Groups["decimals"].Length);
        var worked = Convert.ToDouble(new Expression(ForCalculator(step.Numbers)).Evaluate(), CultureInfo.InvariantCulture);
        var scale = step.Result[shown.Length..] switch
        {
            ['°', ..] => 180 / Math.PI,
            [' ', '%', ..] => 100,
            _ => 1,
        };
        return (worked * scale, value, lastDigit);
    }

    private static string ForCalculator(string numbers)
    {
        var text = Regex.Replace(numbers, @"(?<=\d) (turns per inch|g/cm³|GPa|lbf|mm²|mm|in|tex|gr|g|N)(?![\w²])", "");
        text = Regex.Replace(text, @"\((?<inner>(?:[^()]|(?<open>\()|(?<-open>\)))*)(?(open)(?!))\)²", "Pow(${inner},2)");
        text = Regex.Replace(text, @"([\d.]+)°", "($1*π/180)");
        text = Regex.Replace(text, @"√([\d.]+)", "Sqrt($1)").Replace("√", "Sqrt", StringComparison.Ordinal);
        text = Regex.Replace(text, @"\barctan\(", "Atan(");
        text = Regex.Replace(text, @"\barccos\(", "Acos(");
        text = Regex.Replace(text, @"\bsin\(", "Sin(");
        text = Regex.Replace(text, @"\bcos\(", "Cos(");
        return text.Replace("π", "3.141592653589793", StringComparison.Ordinal)
            .Replace('×', '*')
            .Replace('−', '-');
    }
}
