using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>Both ends of a piece over its measuring pins at true size, under the bars to check that they are.</summary>
internal static class CardEnds
{
    private const float UnderBars = 4;
    private const float BetweenEnds = 8;

    /// <param name="loopA">From the outside of the pin to where the legs meet; zero where the loop is left open.</param>
    /// <param name="loopB">The same at end B.</param>
    public static Block Of(BuildSpec spec, Length loopA, Length loopB, CardWriter write)
    {
        var a = new CardEnd(spec, "A", loopA, write);
        var b = new CardEnd(spec, "B", loopB, write);
        var words = new Stack([new Spacer(UnderBars), new Paragraph(write.Language[PaperWord.CardTrueSize], TypeScale.Caption)]);
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
