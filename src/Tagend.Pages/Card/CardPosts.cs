using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The number a card is for, the posts' setting, and what is to be known of it.</summary>
internal static class CardPosts
{
    private const float Border = 1.6f;

    /// <summary>Of what stands in the box, in points: as high on every card of a set.</summary>
    private const float Inside = 50;

    public static Block Of(BuildSpec spec, CardWriter write)
    {
        var posts = spec.Posts;
        var number = new Row(
            [
                new Column(new BigReading(write.Setting(posts.Tape)), ColumnWidth.Natural),
                new Column(new Stack([.. Beside(spec, write)], 0.5f), ColumnWidth.Shared()),
            ],
            Gap: 12,
            Level: Level.Middle);
        var title = new Box(
            new Row(
                [
                    new Column(new Paragraph(write.Language[PaperWord.CardSetPosts], White(TypeScale.Heading)), ColumnWidth.Natural),
                    new Column(new Paragraph(write.Language.Say(PaperWord.CardPostsReading, ("setting", write.Setting(posts.Tape))), White(TypeScale.Caption), Align.Right), ColumnWidth.Shared()),
                ],
                Level: Level.Baseline),
            Padding: 2.5f,
            Fill: 0);
        return new Stack([title, new Box(new AtHeight(number, Inside), Padding: 5, Border: Border)]);
    }

    /// <summary>No exact length where the models disagree, and the plain rule where the posts are not given.</summary>
    private static IEnumerable<Block> Beside(BuildSpec spec, CardWriter write)
    {
        var (posts, words) = (spec.Posts, write.Language);
        var (name, value) = (TypeScale.Caption, TypeScale.Caption with { Weight = Weight.Bold });
        if (spec.IsSettingUncertain)
        {
            var (least, most) = spec.SettingRange();
            yield return new Paragraph(words[PaperWord.CardMeasureEarly], TypeScale.BodyBold);
            yield return new Paragraph(
                words.Say(PaperWord.CardRange, ("least", write.Setting(least)), ("most", write.Setting(most))), value);
        }
        else
        {
            yield return Fact(PaperWord.CardExact, write.Exact(posts.Outside));
        }

        yield return Fact(PaperWord.CardCenters, write.Setting(posts.CentersTape));
        if (posts.IsPostGiven)
        {
            yield return Fact(PaperWord.CardPosts, write.Setting(posts.PostDiameter));
            yield return Fact(PaperWord.CardPins, write.Setting(posts.PinDiameter));
        }
        else
        {
            yield return new Paragraph(words.Say(PaperWord.CardPlainRule, ("pin", write.Setting(posts.PinDiameter))), value);
        }

        Paragraph Fact(PaperWord word, string text) => new([new Span(words[word] + "\u00A0\u00A0", name), new Span(text, value)]);
    }

    private static TextStyle White(TextStyle style) => style with { Gray = 255 };
}
