namespace Tagend.Measures;

/// <summary>A mass, held as a whole number of micrograms.</summary>
/// <remarks>1 gr = 64.79891 mg, exact: NIST SP 811, appendix B.8.</remarks>
public readonly record struct Mass
{
    private const double MicrogramsPerGrain = 64_798.91;
    private const double MicrogramsPerGram = 1_000_000;

    private Mass(long micrograms) => Micrograms = micrograms;

    /// <summary>The exact value, in micrograms.</summary>
    public long Micrograms { get; }

    public double Grains => Micrograms / MicrogramsPerGrain;

    public double Grams => Micrograms / MicrogramsPerGram;

    public static Mass FromMicrograms(long micrograms) => new(micrograms);

    /// <summary>The mass nearest to a number of grams.</summary>
    public static Mass FromGrams(double grams) => new(checked((long)Math.Round(grams * MicrogramsPerGram)));

    public static Mass operator +(Mass a, Mass b) => new(checked(a.Micrograms + b.Micrograms));

    public static Mass operator /(Mass a, double divisor) => new(checked((long)Math.Round(a.Micrograms / divisor)));
}
