namespace Tagend.Measures;

/// <summary>Reads a length as people write it: <c>60 1/4</c>, <c>5' 0¼"</c>, <c>1530,5 mm</c>.</summary>
public static class LengthReader
{
    private const decimal Inch = 25_400_000;
    private const decimal Foot = 304_800_000;
    private const decimal Millimeter = 1_000_000;

    // In nanometers (1 in = 25.4 mm, 1 ft = 0.3048 m, exact: NIST SP 811).
    private static readonly Dictionary<string, decimal> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        [""] = 0,
        ["in"] = Inch,
        ["in."] = Inch,
        ["inch"] = Inch,
        ["inches"] = Inch,
        ["\""] = Inch,
        ["″"] = Inch,
        ["”"] = Inch,
        ["''"] = Inch,
        ["′′"] = Inch,
        ["’’"] = Inch,
        ["mm"] = Millimeter,
        ["millimeter"] = Millimeter,
        ["millimeters"] = Millimeter,
        ["millimetre"] = Millimeter,
        ["millimetres"] = Millimeter,
        ["cm"] = 10 * Millimeter,
        ["centimeter"] = 10 * Millimeter,
        ["centimeters"] = 10 * Millimeter,
        ["centimetre"] = 10 * Millimeter,
        ["centimetres"] = 10 * Millimeter,
        ["m"] = 1000 * Millimeter,
        ["meter"] = 1000 * Millimeter,
        ["meters"] = 1000 * Millimeter,
        ["metre"] = 1000 * Millimeter,
        ["metres"] = 1000 * Millimeter,
    };

    // Longer words first: each is tried as the beginning of what follows the number.
    private static readonly string[] FeetWords = ["feet", "foot", "ft.", "ft", "'", "′", "’"];

    /// <summary>Reads the whole text as one length of 0 or more.</summary>
    /// <param name="text">Spaces around it do not matter.</param>
    /// <param name="bareUnit">The unit of a number that has none.</param>
    /// <param name="length">Exact for fractions and decimals of an inch or a millimeter; else to the nearest nanometer.</param>
    /// <returns>False where it is no such length.</returns>
    /// <remarks>
    /// A decimal comma is read, a comma that could be a thousands separator (<c>1,530</c>) is not. Fractions are those of a
    /// tape, halves to sixty-fourths. Inches after feet are less than 12.
    /// </remarks>
    public static bool TryRead(string text, LengthUnit bareUnit, out Length length)
    {
        length = Length.Zero;
        var scanner = new QuantityScanner(QuantityScanner.Plain(text));
        if (!scanner.TryReadMixed(out var number))
        {
            return false;
        }

        scanner.SkipSpaces();
        if (Units.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(scanner.Rest, out var unit))
        {
            var bare = bareUnit == LengthUnit.Inch ? Inch : Millimeter;
            length = OfNanometers(number * (unit == 0 ? bare : unit));
            return true;
        }

        return TrySkipFeetWord(ref scanner) && TryReadInches(ref scanner, number, out length);
    }

    /// <summary>Whether a text is a length above 0 that names no unit.</summary>
    public static bool IsBare(string text) =>
        TryRead(text, LengthUnit.Inch, out var inches)
        && TryRead(text, LengthUnit.Millimeter, out var millimeters)
        && inches != millimeters;

    private static bool TrySkipFeetWord(ref QuantityScanner scanner)
    {
        foreach (var word in FeetWords)
        {
            if (scanner.TrySkip(word))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What follows the feet: nothing, or inches with or without their mark.</summary>
    private static bool TryReadInches(ref QuantityScanner scanner, decimal feet, out Length length)
    {
        length = OfNanometers(feet * Foot);
        scanner.SkipSpaces();
        if (scanner.Rest.IsEmpty)
        {
            return true;
        }

        scanner.TrySkip("-");
        if (feet != decimal.Truncate(feet) || !scanner.TryReadMixed(out var inches) || inches >= 12)
        {
            return false;
        }

        scanner.SkipSpaces();
        length = OfNanometers((feet * Foot) + (inches * Inch));
        return Units.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(scanner.Rest, out var unit)
            && unit is 0 or Inch;
    }

    private static Length OfNanometers(decimal nanometers) =>
        Length.FromNanometers((long)Math.Round(nanometers, MidpointRounding.AwayFromZero));
}
