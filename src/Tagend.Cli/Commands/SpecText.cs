using System.Globalization;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary>A spec as plain lines on the terminal: what the card says, in the card's order.</summary>
internal static class SpecText
{
    public static void Write(TextWriter output, BuildSpec spec, OrderSlip slip)
    {
        var unit = spec.Unit;
        output.WriteLine($"{spec.Order} / {spec.Piece}   {spec.Kind}, revision {spec.Revision}, {DateWriter.Iso(spec.Date)}");
        Line("for", string.Join(", ", new[] { slip.Customer, slip.Bow, slip.Due }.Where(t => t.Length > 0)));
        Line("finished length", $"{Mark(spec.FinishedLength)}, ± {Mark(spec.Tolerance)}");
        Line(
            "post setting",
            $"{LengthWriter.Mark(spec.Posts.Tape, unit)} on the tape, outside to outside (exact {Exact(spec.Posts.Outside)}, "
            + $"laid {Laid(spec.Posts.Residual)}); centers {Exact(spec.Posts.Centers)}");
        Line("laid-up length", Exact(spec.LaidUpLength));
        Line("turns", $"{spec.Twist.Turns}, taking up {Exact(spec.Twist.TakeUp.Amount)} {Source(spec.Twist.TakeUp)} "
            + $"(rule {Exact(spec.Twist.TakeUp.Rule)}, helix {Exact(spec.Twist.TakeUp.Helix)})");
        Line("a turn more", spec.Twist.Turns == 0 ? "" : $"{Fine(spec.TurnSensitivity)} shorter; {Residual(spec)}");
        Line("strands", $"{spec.Bundle.Strands} of {spec.Bundle.Material}, {spec.Layup.Loops} loops");
        foreach (var color in spec.Layup.Colors)
        {
            Line("", $"{color.Color}: {color.Strands} strands, {color.Loops} loops, starts and ends at post {color.Post}");
        }

        foreach (var tag in spec.Layup.EndTags())
        {
            Line($"tie at {tag.Post}", tag.IsDummy ? "a dummy tag" : string.Join(", ", tag.Colors));
        }

        foreach (var separator in spec.Separators)
        {
            Line(separator.Name, $"{Mark(separator.Position)} from A; on the jig {Exact(spec.FromPostA(separator.Position))} from the outside of post A; "
                + $"{separator.StrandsEachSide} strands each side");
        }

        foreach (var serving in spec.Servings)
        {
            Line(
                $"serving {Role(serving.Role)}",
                $"{Mark(serving.From)} to {Mark(serving.To)} from A, {Mark(spec.FromB(serving.From))} to {Mark(spec.FromB(serving.To))} "
                + $"from B; {Mark(serving.Length)} of {serving.Thread} {serving.Color}".TrimEnd());
        }

        foreach (var mark in spec.Marks)
        {
            Line(mark.Kind == MarkKind.NockPoint ? "nock point" : "speed nock", $"{Mark(mark.Position)} from A");
        }

        if (spec.NockFit is { } fit)
        {
            Line("nock fit", $"groove {Fine(fit.Groove)} over {fit.Thread}, {Fine(fit.Diameter)} thick: "
                + (fit.Clearance < Length.Zero ? $"{Fine(-fit.Clearance)} too tight" : $"{Fine(fit.Clearance)} clearance"));
        }

        Line("stretch", $"{Pounds(spec.Stretch.Load)} for {Counted.Of(spec.Stretch.Minutes, "minute")}, "
            + $"{Share(spec.StretchShare)} of the strength; should read about {Exact(spec.Stretch.Reading)} meanwhile");
        var floor = spec.Strength.Floor is { } f ? $", at least {Pounds(f)} is needed" : "";
        Line("strength", $"about {Pounds(spec.Strength.Breaking)}{floor}");
        Line("mass", FormattableString.Invariant(
            $"about {spec.Mass.Grains:0} gr, {spec.Mass.Grams:0.0} g; {PieceMass.ArrowShare(spec.Mass).Grains:0} gr of it count as arrow mass"));
        Line("notes", slip.Notes);
        output.WriteLine();

        void Line(string label, string text)
        {
            if (text.Length > 0)
            {
                output.WriteLine($"  {label,-16}{text.ReplaceLineEndings(" ")}");
            }
        }

        string Mark(Length length) => LengthWriter.Mark(length, unit);

        string Fine(Length length) => LengthWriter.Fine(length, unit);

        string Exact(Length length) => LengthWriter.Exact(length, unit);

        string Source(TakeUp takeUp) => takeUp.Fitted is { } fitted
            ? $"fitted from {Counted.Of(fitted.Builds, "build")}, ± {Exact(fitted.Error)}"
            : $"by {Model(takeUp.Used)}";

        string Laid(Length residual) => residual == Length.Zero ? "exactly"
            : Exact(Length.Abs(residual)) + (residual > Length.Zero ? " longer" : " shorter");
    }

    public static string Role(ServingRole role) => role switch
    {
        ServingRole.EndA => "end A",
        ServingRole.Center => "center",
        ServingRole.EndB => "end B",
        _ => "other",
    };

    /// <summary>What takes out the post setting's residual.</summary>
    private static string Residual(BuildSpec spec) => Math.Abs(spec.ResidualTurns) < 0.05
        ? "the tape needs no correction"
        : FormattableString.Invariant($"{Math.Abs(spec.ResidualTurns):0.0} turns {(spec.ResidualTurns > 0 ? "more" : "fewer")} cancel what the tape is off");

    private static string Share(double share) => share.ToString("0 %", CultureInfo.InvariantCulture);

    public static string Model(TakeUpModel model) => model switch
    {
        TakeUpModel.Rule => "rule",
        TakeUpModel.Helix => "helix",
        TakeUpModel.Fitted => "fitted",
        _ => throw new InvalidOperationException($"no word for {model}"),
    };

    private static string Pounds(Force force) => force.Pounds.ToString("0", CultureInfo.InvariantCulture) + " lbf";
}
