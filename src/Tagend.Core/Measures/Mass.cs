namespace Tagend.Measures;

/// <summary>A mass, held as a whole number of milligrams: 0.015 gr.</summary>
/// <remarks>1 gr = 64.79891 mg, exact: NIST SP 811, appendix B.8.</remarks>
public readonly record struct Mass
{
    private const double MilligramsPerGrain = 64.79891;
    private const double MilligramsPerGram = 1_000;

    private Mass(long milligrams) => Milligrams = milligrams;

    /// <summary>The exact value, in milligrams.</summary>
    public long Milligrams { get; }

    /// <summary>In grains, as near as a double comes.</summary>
    public double Grains => Milligrams / MilligramsPerGrain;

    /// <summary>In grams, as near as a double comes.</summary>
    public double Grams => Milligrams / MilligramsPerGram;

    /// <summary>The mass of an exact number of milligrams.</summary>
    public static Mass FromMilligrams(long milligrams) => new(milligrams);

    /// <summary>The mass nearest to a number of grams, to the milligram.</summary>
    /// <exception cref="OverflowException">Beyond 9 × 10¹² kg, or not a number: a fault of the caller.</exception>
    public static Mass FromGrams(double grams) => new(checked((long)Math.Round(grams * MilligramsPerGram)));

    /// <summary>The exact sum.</summary>
    /// <exception cref="OverflowException">Beyond 9 × 10¹² kg: a fault of the caller.</exception>
    public static Mass operator +(Mass a, Mass b) => new(checked(a.Milligrams + b.Milligrams));

    /// <summary>A part, to the nearest milligram.</summary>
    /// <exception cref="OverflowException">The divisor is zero or not a number: a fault of the caller.</exception>
    public static Mass operator /(Mass a, double divisor) => new(checked((long)Math.Round(a.Milligrams / divisor)));
}
