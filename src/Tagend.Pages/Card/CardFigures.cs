using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The key figures under the posts' setting: turns and their hand, finished length, strands.</summary>
internal static class CardFigures
{
    private const float Hairline = 0.6f;

    public static Row Of(BuildSpec spec, CardWriter write) => new(
        [
            new Column(Turns(spec, write), ColumnWidth.Shared(1.6f)),
            new Column(
                Figure(write.Language[PaperWord.CardFinishedLength], write.Mark(spec.FinishedLength), $"± {write.Mark(spec.Tolerance)}"),
                ColumnWidth.Shared(1.1f)),
            new Column(
                Figure(write.Language[PaperWord.CardStrands], $"{spec.Bundle.Strands}", write.Language.Say(PaperWord.CardLoops, ("count", $"{spec.Layup.Loops}"))),
                ColumnWidth.Shared(0.8f)),
        ],
        Gap: -Hairline,
        Level: Level.Equal);

    private static Box Turns(BuildSpec spec, CardWriter write)
    {
        var hook = write.Language.Say(PaperWord.CardHook, ("direction", write.Direction(spec.Twist.Direction)));
        var legs = spec.Yoke is { } yoke ? "; " + write.Language.Say(PaperWord.CardLegTurns, ("turns", write.Turns($"{yoke.LegTurns}"))) : "";
        var words = Lines(write.Language[PaperWord.CardTurns], $"{CardWriter.TurnsToPutIn(spec)} {spec.Twist.Hand}", hook + legs);
        return Framed(new Row(
            [new Column(words, ColumnWidth.Shared()), new Column(new TwistPicture(spec.Twist), ColumnWidth.Of(TwistPicture.Width))], Gap: 3));
    }

    private static Box Figure(string name, string value, string remark) => Framed(Lines(name, value, remark));

    private static Stack Lines(string name, string value, string remark) => new(
    [
        new Paragraph(name, TypeScale.Caption),
        new Paragraph(value.Replace(' ', '\u00A0'), TypeScale.Figure),
        new Paragraph(remark, TypeScale.Caption),
    ]);

    private static Box Framed(Block block) => new(block, Padding: 3, Border: Hairline);
}
