using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>What a length in a template can be, and why.</summary>
/// <param name="Why">The end of a sentence: "a jig's posts are no thinner and no thicker".</param>
internal sealed record LengthRange(Length Least, Length Most, string Why)
{
    /// <summary>Posts of a jig: an assumption, wider than any the trade uses.</summary>
    public static readonly LengthRange Post = OfInches(0.1, 3, "no jig has thinner or thicker posts");

    /// <summary>Pins the finished length is measured over: 1/4 in by AMO Standards FP-3, 2000, and what replaces them at a bench.</summary>
    public static readonly LengthRange Pin = OfInches(0.05, 1, "pins are thinner than a loop; AMO Standards FP-3 has 1/4 in");

    /// <summary>Reach of a jig: an assumption.</summary>
    public static readonly LengthRange Reach = OfInches(4, 400, "no jig is shorter or longer");

    /// <summary>Marks of a tape: the coarsest is 1/4 in.</summary>
    public static readonly LengthRange TapeStep = OfInches(1.0 / 128, 0.25, "no tape has finer or coarser marks");

    /// <summary>Tails, dummy tags and ends of thread: an assumption.</summary>
    public static readonly LengthRange Tail = OfInches(0.25, 60, "nobody ties shorter or longer ends");

    /// <summary>Take-up of one turn: 0.012 in by common practice; a fifth of it and four times as much are beyond any bundle.</summary>
    public static readonly LengthRange TakeUpPerTurn = OfInches(0.002, 0.05, "a turn takes up about 0.012 in");

    /// <summary>Strands and threads: an assumption.</summary>
    public static readonly LengthRange Strand = OfInches(0.004, 0.06, "strands and threads are about 0.014 to 0.03 in thick");

    /// <summary>How much of a nock's groove a serving may leave: an assumption.</summary>
    public static readonly LengthRange Clearance = OfInches(0.0002, 0.06, "a nock's groove is about 1/8 in wide");

    /// <summary>Labels and their sheets: an assumption, wider than A2 paper and far within what a PDF's page can be (ISO 32000-1, annex C.2).</summary>
    public static readonly LengthRange LabelPage = OfInches(0.25, 24, "labels and their sheets are neither smaller nor larger");

    /// <summary>Whether a length is from the least to the most.</summary>
    public bool Holds(Length length) => length >= Least && length <= Most;

    private static LengthRange OfInches(double least, double most, string why) =>
        new(Length.FromInches(least), Length.FromInches(most), why);
}
