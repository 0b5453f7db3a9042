namespace Tagend.Measures;

/// <summary>A force, held as a whole number of micronewtons so that it comes back bit for bit.</summary>
/// <remarks>1 lbf = 4.4482216152605 N, exact: NIST SP 811, appendix B.8.</remarks>
public readonly record struct Force : IComparable<Force>
{
    private const double MicronewtonsPerPound = 4_448_221.6152605;
    private const double MicronewtonsPerNewton = 1_000_000;

    private Force(long micronewtons) => Micronewtons = micronewtons;

    /// <summary>The exact value, in micronewtons.</summary>
    public long Micronewtons { get; }

    public double Pounds => Micronewtons / MicronewtonsPerPound;

    public double Newtons => Micronewtons / MicronewtonsPerNewton;

    public static Force FromMicronewtons(long micronewtons) => new(micronewtons);

    /// <summary>The force nearest to a number of pounds-force.</summary>
    public static Force FromPounds(double pounds) => new(checked((long)Math.Round(pounds * MicronewtonsPerPound)));

    /// <summary>The force nearest to a number of newtons.</summary>
    public static Force FromNewtons(double newtons) => new(checked((long)Math.Round(newtons * MicronewtonsPerNewton)));

    public static Force operator *(Force a, double factor) => new(checked((long)Math.Round(a.Micronewtons * factor)));

    public static double operator /(Force a, Force b) => (double)a.Micronewtons / b.Micronewtons;

    public static bool operator <(Force a, Force b) => a.Micronewtons < b.Micronewtons;

    public static bool operator >(Force a, Force b) => a.Micronewtons > b.Micronewtons;

    public static bool operator <=(Force a, Force b) => a.Micronewtons <= b.Micronewtons;

    public static bool operator >=(Force a, Force b) => a.Micronewtons >= b.Micronewtons;

    public int CompareTo(Force other) => Micronewtons.CompareTo(other.Micronewtons);
}
