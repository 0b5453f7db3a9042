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

    /// <summary>In pounds-force, as near as a double comes.</summary>
    public double Pounds => Micronewtons / MicronewtonsPerPound;

    /// <summary>In newtons, as near as a double comes.</summary>
    public double Newtons => Micronewtons / MicronewtonsPerNewton;

    /// <summary>The force of an exact number of micronewtons.</summary>
    public static Force FromMicronewtons(long micronewtons) => new(micronewtons);

    /// <summary>The force nearest to a number of pounds-force, to the micronewton.</summary>
    /// <exception cref="OverflowException">Beyond 9 × 10¹² N, or not a number: a fault of the caller.</exception>
    public static Force FromPounds(double pounds) => new(checked((long)Math.Round(pounds * MicronewtonsPerPound)));

    /// <summary>The force nearest to a number of newtons, to the micronewton.</summary>
    /// <exception cref="OverflowException">Beyond 9 × 10¹² N, or not a number: a fault of the caller.</exception>
    public static Force FromNewtons(double newtons) => new(checked((long)Math.Round(newtons * MicronewtonsPerNewton)));

    /// <summary>A multiple, to the nearest micronewton.</summary>
    /// <exception cref="OverflowException">Beyond 9 × 10¹² N, or not a number: a fault of the caller.</exception>
    public static Force operator *(Force a, double factor) => new(checked((long)Math.Round(a.Micronewtons * factor)));

    /// <summary>How many times the second goes into the first; not a finite number where the second is zero.</summary>
    public static double operator /(Force a, Force b) => (double)a.Micronewtons / b.Micronewtons;

    /// <summary>Whether the first is the smaller one.</summary>
    public static bool operator <(Force a, Force b) => a.Micronewtons < b.Micronewtons;

    /// <summary>Whether the first is the greater one.</summary>
    public static bool operator >(Force a, Force b) => a.Micronewtons > b.Micronewtons;

    /// <summary>Whether the first is no greater than the second.</summary>
    public static bool operator <=(Force a, Force b) => a.Micronewtons <= b.Micronewtons;

    /// <summary>Whether the first is no smaller than the second.</summary>
    public static bool operator >=(Force a, Force b) => a.Micronewtons >= b.Micronewtons;

    /// <inheritdoc/>
    public int CompareTo(Force other) => Micronewtons.CompareTo(other.Micronewtons);
}
