using Tagend.Measures;

namespace Tagend.Specs.Explained;

/// <summary>From the laid-up length to the posts: closing of the end loops, post setting, tape, residual.</summary>
internal static class ExplainedPosts
{
    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece)
    {
        var (spec, pin) = (piece.Spec, piece.Shop.PinDiameter);
        var loops = spec.EndLoops!;
        var (loopA, loopB) = (loops.AtA(pin, spec.Bundle, spec.Yoke), loops.AtB(pin, spec.Bundle));
        return
        [
            .. Leg(piece, loopA, loopB),
            .. spec.Yoke is null && loops.A == loops.B
                ? Closing(piece, "each end loop", piece.Plan.EndLoopA, loopA)
                : Closing(piece, "end loop A", piece.Plan.EndLoopA, loopA).Concat(Closing(piece, "end loop B", piece.Plan.EndLoopB, loopB)),
            .. Setting(piece, loopA.Closing, loopB.Closing),
            .. Correction(piece),
        ];
    }

    private static IEnumerable<ExplainedStep> Leg(ExplainedPiece piece, EndLoop loopA, EndLoop loopB)
    {
        if (loopA.IsOpen && loopB.IsOpen)
        {
            yield break;
        }

        var bundle = piece.Spec.Bundle;
        foreach (var (where, loop, diameter) in piece.Spec.Yoke is null
            ? [("", loopB, bundle.Diameter)]
            : new[] { (" at the yoke's legs", loopA, bundle.HalfDiameter), (" at end B", loopB, bundle.Diameter) })
        {
            yield return new ExplainedStep(
                $"half a leg{where}",
                loop.Thread == Length.Zero ? "h = D / √2 / 2, a leg having half of the strands" : "h = D / √2 / 2 + thread, a leg having half of the strands",
                $"{piece.Thickness(diameter)} / √2 / 2{Thread(piece, loop, "+")}",
                piece.Thickness(loop.HalfLeg),
                ExplainedSource.Geometry);
            yield return new ExplainedStep(
                $"leg around the pin{where}",
                "r = pin / 2 + h, to the middle of the leg",
                $"{piece.Given(piece.Shop.PinDiameter)} / 2 + {piece.Thickness(loop.HalfLeg)}",
                piece.Thickness(loop.Radius),
                ExplainedSource.Geometry);
        }
    }

    private static string Thread(ExplainedPiece piece, EndLoop loop, string sign) =>
        loop.Thread == Length.Zero ? "" : $" {sign} {piece.Given(loop.Thread)}";

    private static IEnumerable<ExplainedStep> Closing(ExplainedPiece piece, string name, Length length, EndLoop loop)
    {
        if (loop.IsOpen)
        {
            yield return new ExplainedStep(
                $"{name}, closing",
                $"k: none, for its legs do not meet (planned end loop: {piece.Given(length)})",
                "",
                piece.Worked(loop.Closing),
                ExplainedSource.Geometry);
            yield break;
        }

        var (half, radius, toAxis) = (piece.Thickness(loop.HalfLeg), piece.Thickness(loop.Radius), piece.Thickness(loop.ToPinAxis));
        var (straight, arc) = (piece.Thickness(loop.Straight), ExplainedPiece.Degrees(loop.Arc));
        yield return new ExplainedStep(
            $"{name}, to the pin's axis",
            "x = loop − pin / 2, the loop from the outside of the pin to where the legs meet",
            $"{piece.Given(length)} − {piece.Given(piece.Shop.PinDiameter)} / 2",
            toAxis,
            $"{ExplainedSource.Geometry}; the loop's length is common practice, unless the shop wrote its own (plans/{piece.Plan.Name}.toml)");
        yield return new ExplainedStep(
            $"{name}, straight part of a leg",
            "t = √(x² + h² − r²)",
            $"√(({toAxis})² + ({half})² − ({radius})²)",
            straight,
            ExplainedSource.Geometry);
        yield return new ExplainedStep(
            $"{name}, leg's way around the pin",
            "θ = 180° − arctan(h / x) − arccos(r / √(x² + h²))",
            $"180° − arctan({half} / {toAxis}) − arccos({radius} / √(({toAxis})² + ({half})²))",
            arc,
            ExplainedSource.Geometry);
        yield return new ExplainedStep(
            $"{name}, closing",
            loop.Thread == Length.Zero
                ? "k = t + r × π × θ / 180° − x − r × π / 2: more of each leg than an open loop takes"
                : "k = t + r × π × θ / 180° − x − (r − thread) × π / 2: more of each leg than an open, bare loop takes",
            $"{straight} + {radius} × π × {arc} / 180° − {toAxis} − {(loop.Thread == Length.Zero ? radius : $"({radius} − {piece.Given(loop.Thread)})")} × π / 2",
            piece.Worked(loop.Closing),
            ExplainedSource.Geometry);
    }

    private static IEnumerable<ExplainedStep> Setting(ExplainedPiece piece, Length closingA, Length closingB)
    {
        var posts = piece.Spec.Posts;
        yield return new ExplainedStep(
            "posts, outside to outside",
            "P = Q + k of A + k of B − (post − pin) × (π / 2 − 1)",
            $"{piece.Worked(piece.Spec.LaidUpLength)} + {piece.Thickness(closingA)} + {piece.Thickness(closingB)} "
                + $"− ({piece.Given(posts.PostDiameter)} − {piece.Given(posts.PinDiameter)}) × (π / 2 − 1)",
            piece.Worked(posts.Outside),
            posts.IsPostGiven
                ? "geometry: the same loop, laid around thicker posts"
                : "geometry; the shop has not given its posts, so they are taken to be as thick as the pins (post_diameter in shop.toml)");
        yield return new ExplainedStep(
            "posts, center to center",
            "P − post",
            $"{piece.Worked(posts.Outside)} − {piece.Given(posts.PostDiameter)}",
            piece.Worked(posts.Centers),
            ExplainedSource.Geometry);
        yield return new ExplainedStep(
            "posts on the tape",
            "P / finest mark of the tape",
            $"{piece.Worked(posts.Outside)} / {piece.Given(posts.TapeStep)}",
            $"{ExplainedPiece.Fixed(posts.Outside / posts.TapeStep, 3)}, to whole marks: {ExplainedPiece.Fixed(posts.Tape / posts.TapeStep, 0)}, "
                + $"which is {piece.Tape(posts.Tape)}",
            "the shop's tape (shop.toml)");
        yield return new ExplainedStep(
            "residual",
            "tape − P",
            $"{piece.Given(posts.Tape)} − {piece.Worked(posts.Outside)}",
            $"{piece.Worked(posts.Residual)}, laid {OfZero(posts.Residual, "shorter than", "as", "longer than")} wanted",
            ExplainedSource.Geometry);
    }

    private static IEnumerable<ExplainedStep> Correction(ExplainedPiece piece)
    {
        var spec = piece.Spec;
        var angle = Helix.SurfaceAngle(spec.Bundle.Diameter, spec.Twist.Turns, spec.FinishedLength);
        yield return new ExplainedStep(
            "turn sensitivity",
            "dL = π × D / 2 × sin α, for one turn more at this twist",
            $"π × {piece.Thickness(spec.Bundle.Diameter)} / 2 × sin({ExplainedPiece.Degrees(angle)})",
            $"{piece.Thickness(spec.TurnSensitivity)} shorter",
            ExplainedSource.Hearle);
        if (spec.TurnSensitivity != Length.Zero)
        {
            yield return new ExplainedStep(
                "turns that cancel the residual",
                "residual / dL",
                $"{piece.Worked(spec.Posts.Residual)} / {piece.Thickness(spec.TurnSensitivity)}",
                $"{ExplainedPiece.Fixed(spec.ResidualTurns, 2)} turns, so {OfZero(spec.Posts.Residual, "fewer", "none", "more")}",
                ExplainedSource.Hearle);
        }
    }

    private static string OfZero(Length length, string below, string at, string above) =>
        length < Length.Zero ? below : length > Length.Zero ? above : at;
}
