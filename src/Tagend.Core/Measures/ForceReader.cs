namespace Tagend.Measures;

/// <summary>Reads a force as people write it: <c>70</c>, <c>70 lb</c>, <c>70#</c>, <c>311 N</c>.</summary>
public static class ForceReader
{
    private static readonly string[] PoundWords = ["", "lb", "lbs", "lb.", "lbs.", "lbf", "#", "pound", "pounds"];
    private static readonly string[] NewtonWords = ["N", "newton", "newtons"];

    /// <summary>Reads the whole text as one force of 0 or more; a number without a unit is pounds-force.</summary>
    /// <param name="text">Spaces around it do not matter.</param>
    /// <param name="force">The force to the nearest micronewton.</param>
    /// <returns>False where it is no such force.</returns>
    public static bool TryRead(string text, out Force force)
    {
        force = default;
        var scanner = new QuantityScanner(QuantityScanner.Plain(text));
        if (!scanner.TryReadDecimal(out var number, out _))
        {
            return false;
        }

        scanner.SkipSpaces();
        var unit = scanner.Rest.ToString();
        if (PoundWords.Contains(unit, StringComparer.OrdinalIgnoreCase))
        {
            force = Force.FromPounds((double)number);
            return true;
        }

        force = Force.FromNewtons((double)number);
        return NewtonWords.Contains(unit, StringComparer.OrdinalIgnoreCase);
    }
}
