using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Qr.Encode;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The sides of a card: the front is the work in its order, the back what it rests on and where all sits.</summary>
internal sealed class CardSides(Build build, ShopCatalog catalog, QrSymbol symbol, Fonts fonts)
{
    /// <summary>The same however close a card stands, in points.</summary>
    private const float UnderHeader = 4;

    private readonly BuildSpec _spec = build.Spec;
    private readonly CardWriter _write = new(build.Spec.Unit, catalog.Words);

    private PiecePlan? Plan => catalog.Plans.GetValueOrDefault(_spec.Kind);

    public Block Front(CardStyle style) => new Stack(
        [
            .. Head(style),
            .. Steps(style),
            Grow.Space,
            .. style.BoxesAreOnBack ? [] : (IEnumerable<Block>)[CardBoxes.AsBuilt(_spec, style, _write)],
            CardBoxes.Cautions(style, catalog.Words),
        ],
        style.Gap);

    public Block Back(CardStyle style) => new Stack(
        [
            new Paragraph(
            [
                new Span($"{catalog.Words[PaperWord.CardTitleBack]}\u00A0\u00A0 ", TypeScale.Heading),
                new Span($"{_spec.Order}\u00A0 {_spec.Piece}", TypeScale.Title),
                new Span($"\u00A0\u00A0 {_write.Issue(build)}", TypeScale.Heading),
            ]),
            .. OrderNotes(style),
            .. Drawings(style),
            .. Places(style),
            CardNumbers.Of(_spec, columns: 2, style, _write),
            .. style.BoxesAreOnBack ? [CardBoxes.AsBuilt(_spec, style, _write)] : (IEnumerable<Block>)[],
            CardBoxes.Notes(_write),
        ],
        style.Gap);

    public Block Sheet(CardStyle style) => new Stack(
        [
            .. Head(style),
            .. Steps(style),
            .. Drawings(style),
            CardNumbers.Of(_spec, columns: 3, style, _write),
            CardBoxes.AsBuilt(_spec, style, _write),
            CardBoxes.Notes(_write),
            CardBoxes.Cautions(style, catalog.Words),
        ],
        style.Gap);

    private IEnumerable<Block> Head(CardStyle style)
    {
        yield return new Stack(
        [
            CardHeader.Of(build, catalog.Words.Kind(Plan?.Title ?? _spec.Kind), symbol, style, _write),
            new Spacer(UnderHeader),
            CardPosts.Of(_spec, catalog, _write),
            CardFigures.Of(_spec, _write),
        ]);
        foreach (var notes in OrderNotes(style))
        {
            yield return style.NotesAreOnBack ? style.Bold(catalog.Words[PaperWord.CardNotesOnBack]) : notes;
        }
    }

    private IEnumerable<Block> Steps(CardStyle style) => [new Stack(new CardSteps(_spec, catalog, fonts, style, _write).Blocks())];

    private IEnumerable<Block> OrderNotes(CardStyle style)
    {
        if (build.Slip.Notes.Length > 0)
        {
            yield return style.Fact(catalog.Words[PaperWord.CardNotes], build.Slip.Notes);
        }
    }

    private IEnumerable<Block> Drawings(CardStyle style)
    {
        yield return new PieceDrawing(_spec, _write.Ends(Plan), _write).Of(style);
        if (style.HasEnds)
        {
            yield return CardEnds.Of(_spec, _spec.EndLoops ?? new EndLoops(Plan?.EndLoopA ?? default, Plan?.EndLoopB ?? default, null), _write);
        }
    }

    private IEnumerable<Block> Places(CardStyle style)
    {
        if (_spec.Servings.Count + _spec.Separators.Count + _spec.Marks.Count > 0)
        {
            var remark = catalog.Words.Say(PaperWord.CardMarksRemark, ("unit", _write.UnitWord));
            yield return CardStyle.Section(
                $"{catalog.Words[PaperWord.CardServings]}, {catalog.Words[PaperWord.CardMarks]}", remark, new PlaceTables(_spec, fonts, style, _write).All());
        }
    }
}
