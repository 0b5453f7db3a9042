using Tagend.Measures;

namespace Tagend.Specs.Explained;

/// <summary>Each serving: where it lies, what it takes and makes; then the marks.</summary>
internal static class ExplainedServings
{
    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece) =>
    [
        .. piece.Spec.Servings.Index().SelectMany(s => Serving(piece, s.Item, Name(s.Index, s.Item))),
        .. Direction(piece),
        .. piece.Spec.Marks.Index().Select(m => FromB(
            piece, $"mark {m.Index + 1} ({(m.Item.Kind == MarkKind.NockPoint ? "nock point" : "speed nock")})", m.Item.Position)),
    ];

    /// <summary>A name no other serving of the piece has.</summary>
    public static string Name(int index, Serving serving) => $"serving {index + 1} ({serving.Role switch
    {
        ServingRole.EndA => "end A",
        ServingRole.Center => "center",
        ServingRole.EndB => "end B",
        _ => "other",
    }})";

    private static IEnumerable<ExplainedStep> Serving(ExplainedPiece piece, Serving serving, string name)
    {
        var work = piece.Spec.WorkOf(serving);
        var isOnLegs = piece.Spec.IsOnLegs(serving);
        var (bundle, thread) = (piece.Thickness(isOnLegs ? piece.Spec.Bundle.HalfDiameter : piece.Spec.Bundle.Diameter), piece.Given(serving.ThreadDiameter));
        yield return FromB(piece, $"{name} begins", serving.From);
        yield return FromB(piece, $"{name} ends", serving.To);
        yield return new ExplainedStep(
            $"{name} length",
            "w = to − from",
            $"{piece.Given(serving.To)} − {piece.Given(serving.From)}",
            piece.Worked(serving.Length),
            ExplainedSource.Geometry);
        yield return new ExplainedStep(
            $"{name} wraps",
            $"N = w / d, d the thread's diameter ({serving.Thread}), wraps close together",
            $"{piece.Given(serving.Length)} / {thread}",
            $"{ExplainedPiece.Fixed(work.Wraps, 3)} wraps",
            ExplainedSource.Geometry);
        yield return new ExplainedStep(
            $"{name} thread wound",
            "w / d × √((π × (D + d))² + d²)",
            $"{piece.Given(serving.Length)} / {thread} × √((π × ({bundle} + {thread}))² + ({thread})²)",
            piece.Thread(work.Thread),
            ExplainedSource.HelixLength);
        yield return new ExplainedStep(
            $"{name} diameter", "D + 2 × d", $"{bundle} + 2 × {thread}", piece.Thickness(work.Diameter), ExplainedSource.Geometry);
    }

    private static IEnumerable<ExplainedStep> Direction(ExplainedPiece piece)
    {
        if (piece.Spec.Servings.Count > 0)
        {
            var twist = piece.Spec.Twist;
            yield return new ExplainedStep(
                "servings wound",
                "wraps of the twist's own hand are drawn tighter by each turn added, wraps of the other hand by each turn that comes out",
                "",
                $"{twist.ServingHand} over an {twist.Hand} twist: each turn added {(twist.TurnsTightenServings ? "tightens" : "loosens")} them; "
                    + $"the spool goes around {Word(twist.SpoolDirection)}, seen from whom it moves away",
                "geometry; which hand is common practice, unless the shop chose its own (shop.toml)");
        }
    }

    private static ExplainedStep FromB(ExplainedPiece piece, string name, Length fromA) => new(
        name,
        "from end B = L − from end A",
        $"{piece.Given(piece.Spec.FinishedLength)} − {piece.Given(fromA)}",
        $"{piece.Worked(piece.Spec.FromB(fromA))} from end B",
        "geometry; the place is as ordered or planned");

    private static string Word(TwistDirection direction) =>
        direction == TwistDirection.Clockwise ? "clockwise" : "counterclockwise";
}
