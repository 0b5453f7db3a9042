using System.Buffers;
using System.Globalization;
using System.Runtime.CompilerServices;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Workshop;
using Tagend.Workshop.Json;

namespace Tagend.Texts;

/// <summary>A spec as plain lines on the terminal: what the card says, in the card's order.</summary>
internal static class SpecText
{
    private static readonly SearchValues<char> LineEnds = SearchValues.Create("\r\n\f\u0085\u2028\u2029");

    public static void Write(TextWriter output, BuildSpec spec, OrderSlip slip)
    {
        var unit = spec.Unit;
        var lines = new LabeledLines(output);
        output.WriteLine($"{spec.Order} / {spec.Piece}   {spec.Kind}, revision {spec.Revision}, {DateWriter.Iso(spec.Date)}");
        lines.Add("for", string.Join(", ", new[] { slip.Customer, slip.Bow, slip.Due }.Where(t => t.Length > 0)));
        lines.Add("finished length", $"{Mark(spec.FinishedLength)}, ± {Mark(spec.Tolerance)}");
        lines.Add(
            "post setting",
            $"{LengthWriter.Mark(spec.Posts.Tape, unit)} on the tape, outside to outside "
            + $"{(spec.IsSettingUncertain ? Range() : $"(exact {Exact(spec.Posts.Outside)}, laid {Laid(spec.Posts.Residual)})")}"
            + $"; centers {(spec.IsSettingUncertain ? LengthWriter.Mark(spec.Posts.CentersTape, unit) : Exact(spec.Posts.Centers))}");
        lines.Add("", spec.Posts.IsPostGiven ? "" : "for posts as thick as the pins; give post_diameter in shop.toml if yours are not");
        lines.Add("laid-up length", Exact(spec.LaidUpLength));
        lines.Add("turns", $"{HalvesWriter.Write((int)(spec.TurnsToPutIn * 2))} of hand {spec.Twist.Hand} (either hook turned {Words.Of(spec.Twist.Direction)} as you face it), "
            + $"taking up {Exact(spec.Twist.TakeUp.Amount)} {Source(spec.Twist.TakeUp)} "
            + $"(rule {Exact(spec.Twist.TakeUp.Rule)}, helix {Exact(spec.Twist.TakeUp.Helix)})");
        lines.Add("one turn more", spec.Twist.Turns == 0 ? "" : $"{Fine(spec.TurnSensitivity)} shorter");
        lines.Add("strands", $"{spec.Bundle.Strands} of {spec.Bundle.Material}, {spec.Layup.Loops} loops");
        foreach (var color in spec.Layup.Colors)
        {
            lines.Add("", $"{color.Color}: {color.Strands} strands, {color.LoopCount()} loops, "
                + $"{(color.IsHalf ? $"starts at post {color.Post} and ends" : "starts and ends")} at post {color.EndPost}");
        }

        foreach (var (index, leg) in spec.Legs().Index())
        {
            lines.Add($"leg {index + 1}", $"{leg.Words()}; {Counted.Of(spec.Yoke!.LegTurns, "turn")}, {Mark(spec.Yoke.Split)} to the split");
        }

        foreach (var tag in spec.EndTags())
        {
            lines.Add(tag.Leg > 0 ? $"tie {tag.Post}, leg {tag.Leg}" : $"tie at {tag.Post}", tag.IsDummy ? "a dummy tag" : string.Join(", ", tag.Colors));
        }

        if (spec.EndLoops is { } loops)
        {
            lines.Add("end loops", (loops.A == loops.B ? Mark(loops.A) : $"{Mark(loops.A)} at A, {Mark(loops.B)} at B")
                + (loops.Serving is { } thread ? $", served with {thread.Thread} {thread.Color}" : ", bare"));
        }

        foreach (var separator in spec.Separators)
        {
            var (side, otherSide) = spec.Layup.Halves();
            lines.Add(separator.Name, $"{Mark(separator.Position)} from A; on the jig {Exact(spec.FromPostA(separator.Position))} from the outside of post A; "
                + $"{separator.StrandsEachSide} strands each side: {side.Words()} | {otherSide.Words()}");
        }

        foreach (var serving in spec.Servings)
        {
            lines.Add(
                $"serving {Words.Of(serving.Role)}",
                $"{Mark(serving.From)} to {Mark(serving.To)} from A, {Mark(spec.FromB(serving.From))} to {Mark(spec.FromB(serving.To))} "
                + $"from B; {Mark(serving.Length)} of {serving.Thread} {serving.Color}");
        }

        if (spec.Servings.Count > 0)
        {
            lines.Add("servings wound", $"hand {spec.Twist.ServingHand}: the spool goes {Words.Of(spec.Twist.SpoolDirection)} around the bundle as it moves away from you; "
                + $"each turn added {(spec.Twist.TurnsTightenServings ? "tightens" : "loosens")} them");
        }

        foreach (var mark in spec.Marks)
        {
            lines.Add(Words.Of(mark.Kind), $"{Mark(mark.Position)} from A");
        }

        if (spec.NockFit is { } fit)
        {
            lines.Add("nock fit", $"groove {Fine(fit.Groove)} over {fit.Thread}, {Fine(fit.Diameter)} thick: "
                + (fit.Clearance < Length.Zero ? $"{Fine(-fit.Clearance)} too tight" : $"{Fine(fit.Clearance)} clearance"));
        }

        lines.Add("stretch", $"{Pounds(spec.Stretch.Load)} for {Counted.Of(spec.Stretch.Minutes, "minute")}, "
            + $"{Share(spec.StretchShare)} of the strength"
            + $"{(spec.Stretch.Reading is { } reading ? $"; should read about {Exact(reading)} under load" : "")}");
        var floor = spec.Strength.Floor is { } f ? $", at least {Pounds(f)} is needed" : "";
        lines.Add("strength", $"about {Pounds(spec.Strength.Breaking)}{floor}");
        lines.Add("mass", spec.Mass is { } mass
            ? FormattableString.Invariant($"about {mass.Grains:0} gr, {mass.Grams:0.0} g; {PieceMass.ArrowShare(mass).Grains:0} gr of it counts as arrow mass")
            : "");
        lines.Add("lots", string.Join(", ", spec.Lots));
        lines.Add("notes", slip.Notes);
        output.WriteLine();

        string Range()
        {
            var (least, most) = spec.SettingRange();
            return $"({LengthWriter.Mark(least, unit)} to {LengthWriter.Mark(most, unit)}; rule and helix disagree: measure the first piece early)";
        }

        string Mark(Length length) => LengthWriter.Mark(length, unit);

        string Fine(Length length) => LengthWriter.Fine(length, unit);

        string Exact(Length length) => LengthWriter.Exact(length, unit);

        string Source(TakeUp takeUp) => takeUp.Fitted is { } fitted
            ? $"fitted from {Counted.Of(fitted.Builds, "build")}, ± {Exact(fitted.Error)}"
            : $"by {Words.Of(takeUp.Used)}";

        string Laid(Length residual) => residual == Length.Zero ? "exactly"
            : Exact(Length.Abs(residual)) + (residual > Length.Zero ? " longer" : " shorter");
    }

    private static string Share(double share) => share.ToString("0 %", CultureInfo.InvariantCulture);

    private static string Pounds(Force force) => force.Pounds.ToString("0", CultureInfo.InvariantCulture) + " lbf";

    /// <summary>Texts beside what they are: those of a season are some million, so that none becomes a string of its own.</summary>
    private readonly struct LabeledLines(TextWriter output)
    {
        private const string Margin = "                ";

        public void Add(string label, ref DefaultInterpolatedStringHandler text)
        {
            Add(label, text.Text);
            text.Clear();
        }

        /// <param name="text">Not written where it is empty; in one line where it has more.</param>
        public void Add(string label, ReadOnlySpan<char> text)
        {
            text = text.TrimEnd();
            if (text.IsEmpty)
            {
                return;
            }

            output.Write("  ");
            output.Write(label);
            output.Write(Margin.AsSpan(Math.Min(label.Length, Margin.Length)));
            if (text.ContainsAny(LineEnds))
            {
                output.WriteLine(text.ToString().ReplaceLineEndings(" "));
            }
            else
            {
                output.WriteLine(text);
            }
        }
    }
}
