using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>Both ends of a piece over its measuring pins at true size, under the bars to check that they are.</summary>
internal static class CardEnds
{
    private const float UnderBars = 4;
    private const float BetweenEnds = 8;

    public static Block Of(BuildSpec spec, EndLoops loops, CardWriter write)
    {
        var a = new CardEnd(spec, "A", loops.AtA(spec.Posts.PinDiameter, spec.Bundle, spec.Yoke), loops.A, write);
        var b = new CardEnd(spec, "B", loops.AtB(spec.Posts.PinDiameter, spec.Bundle), loops.B, write);
        var words = new Stack([new Spacer(CardEnd.TitleHeight + UnderBars), new Paragraph(write.Language[PaperWord.CardTrueSize], TypeScale.Caption)]);
        return new Stack(
        [
            CheckBar.Block,
            new Spacer(UnderBars),
            new Row(
                [
                    new Column(a.Block, ColumnWidth.Of(a.Width)),
                    new Column(words, ColumnWidth.Shared()),
                    new Column(b.Block, ColumnWidth.Of(b.Width)),
                ],
                BetweenEnds),
        ]);
    }
}
