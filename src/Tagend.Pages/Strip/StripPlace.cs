using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Strip;

/// <summary>What stands at a place of a strip.</summary>
internal enum StripSymbol
{
    None,
    End,
    ServingEdge,
    Separator,
    NockPoint,
    SpeedNock,
}

/// <summary>A line across a strip and its words.</summary>
/// <param name="At">From the strip's start, end A.</param>
/// <param name="Figure">Written large: the distance from end A, or the end's letter.</param>
internal sealed record StripPlace(StripSymbol Symbol, Length At, string Figure, string Words);

/// <summary>The places of a piece as a strip shows them.</summary>
internal sealed class StripPlaces(BuildSpec spec, (string A, string B) ends, StripPositions positions, CardWriter write)
{
    private bool IsOnJig => positions == StripPositions.OnJig;

    /// <summary>From end A to end B; on the jig from the outside of post A to that of post B.</summary>
    public Length StripLength => IsOnJig ? spec.Posts.Outside : spec.FinishedLength;

    /// <summary>A place of the finished piece on the strip; on the jig as the card has it: from the outside of post A.</summary>
    public Length At(Length fromA) => IsOnJig
        ? Length.Max(Length.Zero, Length.Min(StripLength, spec.FromPostA(fromA)))
        : fromA;

    /// <summary>A distance on the strip: as a tape reads it on the jig, else as it was ordered.</summary>
    public string Read(Length onStrip) => IsOnJig ? write.BareTape(onStrip) : write.Bare(onStrip);

    /// <summary>What is to be done at a serving's bar: nothing yet on the jig.</summary>
    public string Serve(Serving serving) =>
        $"{write.Language[IsOnJig ? PaperWord.StripServing : PaperWord.StripServe]}  {write.Thread(serving.Thread, serving.Color)}"
        + (spec.IsOnLegs(serving) ? $", {write.Language[PaperWord.StripEachLeg]}" : "");

    /// <summary>In order from end A.</summary>
    public IReadOnlyList<StripPlace> All() =>
    [
        .. Ends()
            .Concat(Edges())
            .Concat(CardPlaces.PlacesOf(spec, write).Select(p => Place(SymbolOf(p), p.Position, p.Name)))
            .OrderBy(p => p.At),
    ];

    private static StripSymbol SymbolOf(CardPlace place) => place.Mark?.Kind switch
    {
        MarkKind.NockPoint => StripSymbol.NockPoint,
        MarkKind.SpeedNock => StripSymbol.SpeedNock,
        _ => StripSymbol.Separator,
    };

    private IEnumerable<StripPlace> Ends()
    {
        var (a, b) = IsOnJig ? (Post("A"), Post("B")) : ends;
        var loop = spec.EndLoops?.Serving is { } thread
            ? ", " + write.Language.Say(PaperWord.StripLoopServed, ("thread", write.Thread(thread.Thread, thread.Color)))
            : "";
        yield return new StripPlace(StripSymbol.End, Length.Zero, "A", a + loop);
        yield return new StripPlace(StripSymbol.End, StripLength, "B", $"{b}, A {Read(StripLength)}{loop}");
    }

    private IEnumerable<StripPlace> Edges()
    {
        foreach (var serving in spec.Servings)
        {
            var name = ("serving", write.Serving(serving.Role));
            if (serving.From > Length.Zero)
            {
                yield return Place(StripSymbol.ServingEdge, serving.From, write.Language.Say(PaperWord.StripStarts, name));
            }

            if (serving.To < spec.FinishedLength)
            {
                yield return Place(StripSymbol.ServingEdge, serving.To, write.Language.Say(PaperWord.StripEnds, name));
            }
        }
    }

    private string Post(string end) =>
        $"{write.Language.Say(PaperWord.StripPost, ("post", end))}, {write.Language[PaperWord.StripPostOutside]}";

    private StripPlace Place(StripSymbol symbol, Length fromA, string name) =>
        new(symbol, At(fromA), Read(At(fromA)), $"{name}, B {Read(StripLength - At(fromA))}");
}
