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

    public static Block Of(BuildSpec spec, ShopCatalog catalog, CardWriter write)
    {
        var posts = spec.Posts;
        var number = new Row(
            [
                new Column(new BigReading(write.Setting(posts.Tape)), ColumnWidth.Natural),
                new Column(new Stack([.. new StepTexts(spec, catalog, write).Posts().Select(Beside)], 0.5f), ColumnWidth.Shared()),
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

    private static Paragraph Beside(StepFact fact)
    {
        var (name, value) = (TypeScale.Caption, TypeScale.Caption with { Weight = Weight.Bold });
        return fact.Name.Length > 0 ? new Paragraph([new Span(fact.Name + "\u00A0\u00A0", name), new Span(fact.Value, value)])
            : new Paragraph(fact.Value, fact.IsLoud ? TypeScale.BodyBold : value);
    }

    private static TextStyle White(TextStyle style) => style with { Gray = 255 };
}
