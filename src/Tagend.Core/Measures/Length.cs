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

    public static Length Zero => default;

    /// <summary>The exact value, in nanometers.</summary>
    public long Nanometers { get; }

    public double Inches => (double)Nanometers / NanometersPerInch;

    public double Millimeters => (double)Nanometers / NanometersPerMillimeter;

    public static Length FromNanometers(long nanometers) => new(nanometers);

    /// <summary>The length nearest to a number of inches.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km, or not a number: a fault of the caller.</exception>
    public static Length FromInches(double inches) => new(checked((long)Math.Round(inches * NanometersPerInch)));

    /// <summary>The length nearest to a number of millimeters.</summary>
    /// <exception cref="OverflowException">Beyond 9,000 km, or not a number: a fault of the caller.</exception>
    public static Length FromMillimeters(double millimeters) =>
        new(checked((long)Math.Round(millimeters * NanometersPerMillimeter)));

    public static Length operator +(Length a, Length b) => new(checked(a.Nanometers + b.Nanometers));

    public static Length operator -(Length a, Length b) => new(checked(a.Nanometers - b.Nanometers));

    public static Length operator -(Length a) => new(-a.Nanometers);

    public static Length operator *(Length a, double factor) => new(checked((long)Math.Round(a.Nanometers * factor)));

    public static double operator /(Length a, Length b) => (double)a.Nanometers / b.Nanometers;

    public static Length operator /(Length a, double divisor) => a * (1 / divisor);

    public static bool operator <(Length a, Length b) => a.Nanometers < b.Nanometers;

    public static bool operator >(Length a, Length b) => a.Nanometers > b.Nanometers;

    public static bool operator <=(Length a, Length b) => a.Nanometers <= b.Nanometers;

    public static bool operator >=(Length a, Length b) => a.Nanometers >= b.Nanometers;

    public static Length Abs(Length a) => a < Zero ? -a : a;

    public static Length Min(Length a, Length b) => a < b ? a : b;

    public static Length Max(Length a, Length b) => a > b ? a : b;

    public int CompareTo(Length other) => Nanometers.CompareTo(other.Nanometers);
}
