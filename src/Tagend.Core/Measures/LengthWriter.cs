using System.Globalization;

namespace Tagend.Measures;

/// <summary>Writes lengths as a shop reads them. Each method rounds once, as its summary says.</summary>
public static class LengthWriter
{
    private const int Sixteenths = 16;

    /// <summary>As on a tape: nearest 1/16 in (<c>60 1/4 in</c>) or nearest 0.1 mm (<c>1530.4 mm</c>).</summary>
    public static string Tape(Length length, LengthUnit unit) =>
        unit == LengthUnit.Inch ? Fraction(length, Sixteenths, " in") : Exact(length, unit);

    /// <summary>As on a tape where the length is a whole mark of it, else to 0.001 in or 0.1 mm.</summary>
    public static string Mark(Length length, LengthUnit unit) =>
        unit == LengthUnit.Inch && IsWhole(length, 32) ? Fraction(length, 32, " in") : Exact(length, unit);

    /// <summary>As <see cref="Mark"/>, without the unit: for columns that name it once.</summary>
    public static string Bare(Length length, LengthUnit unit) => Mark(length, unit)[..^Symbol(unit).Length].TrimEnd();

    /// <summary>A length of few digits, such as a mark of a tape: <c>61 3/16 in</c>, <c>1554 mm</c>, <c>6.35 mm</c>.</summary>
    public static string Setting(Length mark, LengthUnit unit) => unit == LengthUnit.Inch
        ? Mark(mark, unit)
        : mark.Millimeters.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    /// <summary><c>in</c> or <c>mm</c>.</summary>
    public static string Symbol(LengthUnit unit) => unit == LengthUnit.Inch ? "in" : "mm";

    /// <summary>To 0.001 in or 0.1 mm, with the unit.</summary>
    public static string Exact(Length length, LengthUnit unit) => unit == LengthUnit.Inch
        ? length.Inches.ToString("0.000", CultureInfo.InvariantCulture) + " in"
        : length.Millimeters.ToString("0.0", CultureInfo.InvariantCulture) + " mm";

    /// <summary>To 0.0001 in or 0.001 mm, with the unit: diameters and take-up per turn.</summary>
    public static string Fine(Length length, LengthUnit unit) => unit == LengthUnit.Inch
        ? length.Inches.ToString("0.0000", CultureInfo.InvariantCulture) + " in"
        : length.Millimeters.ToString("0.000", CultureInfo.InvariantCulture) + " mm";

    /// <summary>A standard error, as <see cref="Fine"/>: what is less than its last digit is that digit, for no fit is sure to nothing.</summary>
    /// <param name="error">0 or more.</param>
    public static string Error(Length error, LengthUnit unit)
    {
        var least = unit == LengthUnit.Inch ? Length.FromInches(0.0001) : Length.FromMillimeters(0.001);
        return Fine(error > Length.Zero ? Length.Max(error, least) : error, unit);
    }

    /// <summary>As much as to take from a spool, rounded up to a whole foot or 0.1 m: <c>41 yd 1 ft</c>, <c>37.8 m</c>.</summary>
    /// <param name="length">0 or more.</param>
    public static string Spool(Length length, LengthUnit unit)
    {
        if (unit == LengthUnit.Millimeter)
        {
            return FormattableString.Invariant($"{Math.Ceiling(length.Millimeters / 100) / 10:0.0} m");
        }

        var (yards, feet) = Math.DivRem((long)Math.Ceiling(length.Inches / 12), 3);
        return FormattableString.Invariant($"{yards} yd {feet} ft");
    }

    /// <summary>Whole inches and a reduced fraction, without the unit: <c>60 1/4</c>, <c>0</c>, <c>-3/16</c>.</summary>
    /// <param name="length">Rounded to the nearest part.</param>
    /// <param name="parts">Parts of an inch, a power of two: 16, 32 or 64.</param>
    /// <param name="ending">Written behind it.</param>
    public static string Fraction(Length length, int parts, string ending = "")
    {
        var count = (long)Math.Round(length.Inches * parts, MidpointRounding.AwayFromZero);
        var sign = count < 0 ? "-" : "";
        var (whole, rest) = Math.DivRem(Math.Abs(count), parts);
        var divisor = rest & -rest; // the greatest power of two in it
        return (whole, rest) switch
        {
            (_, 0) => string.Create(CultureInfo.InvariantCulture, $"{sign}{whole}{ending}"),
            (0, _) => string.Create(CultureInfo.InvariantCulture, $"{sign}{rest / divisor}/{parts / divisor}{ending}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{sign}{whole} {rest / divisor}/{parts / divisor}{ending}"),
        };
    }

    private static bool IsWhole(Length length, int parts)
    {
        var exact = length.Inches * parts;
        return Math.Abs(exact - Math.Round(exact)) < 1e-6;
    }
}
