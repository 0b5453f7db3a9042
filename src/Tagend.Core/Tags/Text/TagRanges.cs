using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Tags.Text;

/// <summary>
/// What the values of a piece can be, whatever version of the text they come from. A check that fits is no proof: a text may be
/// made up, and a force of nothing or a place beyond the end is no number that a page, a list or a fit can go on with.
/// </summary>
/// <remarks>Wider than what orders and templates take, so that no tag which was printed is refused.</remarks>
internal static class TagRanges
{
    /// <summary>What is shorter is no piece, and its places cannot be shown on a jig.</summary>
    private static readonly Length Shortest = Length.FromMillimeters(10);

    /// <summary>As orders have it, and the jig beyond it.</summary>
    private static readonly Length Longest = Length.FromMillimeters(20_000);

    /// <summary>Of strands, threads, posts and grooves.</summary>
    private static readonly Length Thickest = Length.FromMillimeters(250);

    /// <summary>Ten times what the strongest bundle bears.</summary>
    private static readonly Force Strongest = Force.FromPounds(100_000);

    private const int MostStrands = 1_000;
    private const int MostTurns = 10_000;
    private const int MostMinutes = 100_000;

    /// <summary>Reports the first value that cannot be.</summary>
    /// <param name="isOfVersion1">Its texts are read for ever: no length need fit the piece, and colors and servings are as they stand.</param>
    public static void Check(BuildSpec spec, TagFault fault, bool isOfVersion1 = false)
    {
        var thickest = isOfVersion1 ? Longest : Thickest;
        var end = isOfVersion1 ? Longest : spec.FinishedLength;
        var twist = spec.Twist;
        var takeUp = twist.TakeUp;

        Within("finished length", spec.FinishedLength, Shortest, Longest);
        Within("tolerance", spec.Tolerance, Length.Zero, end);
        Above("draw weight", spec.DrawWeight);
        Hold("number of strands", spec.Bundle.Strands is >= 2 and <= MostStrands && int.IsEvenInteger(spec.Bundle.Strands));
        Thick("strand diameter", spec.Bundle.Diameter);
        Hold("number of strands a color", spec.Layup.Colors.All(c => c.Strands is >= 1 and <= MostStrands)
            && (isOfVersion1 || spec.Layup.Colors.Count == 0 || spec.Layup.Colors.Sum(c => (long)c.Strands) == spec.Bundle.Strands));
        Hold("number of turns", twist.Turns <= MostTurns && spec.Yoke?.LegTurns is null or <= MostTurns);
        foreach (var amount in new[] { takeUp.Rule, takeUp.Helix, spec.Settle, takeUp.Fitted?.Amount, takeUp.Fitted?.Error }.OfType<Length>())
        {
            Within("take-up or settle", amount, end * -1, end);
        }

        Thick("post diameter", spec.Posts.PostDiameter);
        Thick("pin diameter", spec.Posts.PinDiameter);
        Thick("step of the tape", spec.Posts.TapeStep);
        Within("post setting", spec.Posts.Outside, Shortest, Longest);
        Within("tail", spec.Layup.Tail, Length.Zero, Longest);
        foreach (var serving in spec.Servings)
        {
            Within("serving", serving.From, Length.Zero, end);
            Within("serving", serving.To, isOfVersion1 ? Length.Zero : serving.From, end);
            Thick("thread diameter", serving.ThreadDiameter);
        }

        foreach (var place in spec.Separators.Select(s => s.Position).Concat(spec.Marks.Select(m => m.Position)))
        {
            Within("place", place, Length.Zero, end);
        }

        Above("breaking force", spec.Strength.Breaking);
        Above("stretch load", spec.Stretch.Load);
        Hold("stretch time", spec.Stretch.Minutes <= MostMinutes);
        Within("reading under load", spec.Stretch.Reading ?? Shortest, Shortest, Longest);
        Thick("nock groove", spec.NockGroove ?? Shortest);
        if (spec.EndLoops is { } loops)
        {
            Within("end loop", loops.A, Length.Zero, end);
            Within("end loop", loops.B, Length.Zero, end);
            Thick("thread diameter", loops.Serving?.ThreadDiameter ?? Shortest);
        }

        Within("split of the yoke", spec.Yoke?.Split ?? Length.Zero, Length.Zero, end);

        void Hold(string what, bool holds)
        {
            if (!holds)
            {
                fault.Report(TagFaultWording.Impossible(what));
            }
        }

        void Within(string what, Length value, Length least, Length most) => Hold(what, value >= least && value <= most);

        void Thick(string what, Length value) => Hold(what, value > Length.Zero && value <= thickest);

        void Above(string what, Force? value) => Hold(what, value is null || (value > default(Force) && value <= Strongest));
    }
}
