namespace Tagend.Measures;

/// <summary>A length, held as a whole number of nanometers.</summary>
/// <remarks>
/// Every sixty-fourth of an inch, every thousandth of an inch and every micrometer is exact
/// (1 in = 25.4 mm: NIST SP 811), and a length written on a tag comes back bit for bit.
/// A computed length is held to the nanometer, far below any tape.
/// </remarks>
public readonly record struct Length : IComparable<Length>
{
    private const long NanometersPerInch = 25_400_000;
    private const long NanometersPerMillimeter = 1_000_000;

    private Length(long nanometers) => Nanometers = nanometers;

    /// <summary>No length at all, which is also the default value.</summary>
    public static Length Zero => default;

    /// <summary>The exact value, in nanometers.</summary>
    public long Nanometers { get; }

    /// <summary>In inches, as near as a double comes.</summary>
    public double Inches => (double)Nanometers / NanometersPerInch;

    /// <summary>In millimeters, as near as a double comes.</summary>
    public double Millimeters => (double)Nanometers / NanometersPerMillimeter;

    /// <summary>The length of an exact number of nanometers; below zero for a difference.</summary>
    public static Length FromNanometers(long nanometers) => new(nanometers);

    /// <summary>The length nearest to a number of inches.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km, or not a number: a fault of the caller.</exception>
    public static Length FromInches(double inches) => new(checked((long)Math.Round(inches * NanometersPerInch)));

    /// <summary>The length nearest to a number of millimeters.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km, or not a number: a fault of the caller.</exception>
    public static Length FromMillimeters(double millimeters) =>
        new(checked((long)Math.Round(millimeters * NanometersPerMillimeter)));

    /// <summary>The exact sum.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km: a fault of the caller.</exception>
    public static Length operator +(Length a, Length b) => new(checked(a.Nanometers + b.Nanometers));

    /// <summary>The exact difference, below zero where the second is longer.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km: a fault of the caller.</exception>
    public static Length operator -(Length a, Length b) => new(checked(a.Nanometers - b.Nanometers));

    /// <summary>The same length in the other direction.</summary>
    public static Length operator -(Length a) => new(-a.Nanometers);

    /// <summary>A multiple, to the nearest nanometer.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km, or not a number: a fault of the caller.</exception>
    public static Length operator *(Length a, double factor) => new(checked((long)Math.Round(a.Nanometers * factor)));

    /// <summary>How many times the second goes into the first; not a finite number where the second is zero.</summary>
    public static double operator /(Length a, Length b) => (double)a.Nanometers / b.Nanometers;

    /// <summary>A part, to the nearest nanometer.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km, or the divisor is zero or not a number: a fault of the caller.</exception>
    public static Length operator /(Length a, double divisor) => a * (1 / divisor);

    /// <summary>Whether the first is the shorter one.</summary>
    public static bool operator <(Length a, Length b) => a.Nanometers < b.Nanometers;

    /// <summary>Whether the first is the longer one.</summary>
    public static bool operator >(Length a, Length b) => a.Nanometers > b.Nanometers;

    /// <summary>Whether the first is no longer than the second.</summary>
    public static bool operator <=(Length a, Length b) => a.Nanometers <= b.Nanometers;

    /// <summary>Whether the first is no shorter than the second.</summary>
    public static bool operator >=(Length a, Length b) => a.Nanometers >= b.Nanometers;

    /// <summary>The length without its direction: zero or more.</summary>
    public static Length Abs(Length a) => a < Zero ? -a : a;

    /// <summary>The shorter of two.</summary>
    public static Length Min(Length a, Length b) => a < b ? a : b;

    /// <summary>The longer of two.</summary>
    public static Length Max(Length a, Length b) => a > b ? a : b;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Nanometers.CompareTo(other.Nanometers);
}
