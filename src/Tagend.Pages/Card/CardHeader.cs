using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Qr.Encode;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>Top of a card: whose piece it is, and its QR code. As high on every card, so that what follows stands at the same place.</summary>
internal static class CardHeader
{
    /// <summary>
    /// In points: a code of version 14 with its name, which is more than a tag of four colors and nine servings takes (a
    /// test holds it). A name of several lines is left out under the code; only a larger code makes a header higher.
    /// </summary>
    public const float Height = 85;

    /// <summary>Smallest side of a module, in points: 0.33 mm, 4 dots of 12 dot/mm by printer guidance of the symbology's inventor.</summary>
    private const float SmallestModule = 0.33f / 25.4f * Points.PerInch;

    /// <summary>Wanted side of the code with its quiet zone, in points.</summary>
    private const float WantedSide = 76;

    /// <summary>Characters of a fact that are kept together.</summary>
    private const int MostJoined = 36;

    public static Block Of(Build build, string kindTitle, QrSymbol symbol, CardStyle style, CardWriter write)
    {
        var spec = build.Spec;
        var facts = FactsOf(build, style, write);
        Paragraph Joined(Func<TextStyle, TextStyle> type) =>
            new([.. facts.SelectMany(f => f.Spans.Append(new Span("\u00A0\u00A0 ", style.Body))).Select(s => s with { Style = type(s.Style) })]);
        Block Left(Block inFull) => new Stack(
        [
            new Paragraph($"{write.Language[PaperWord.CardTitle]}\u00A0\u00A0 {write.Issue(build)}", TypeScale.Heading with { HeadingLevel = 0 }),
            new Spacer(2),
            new Paragraph($"{spec.Order}\u00A0 {spec.Piece}", TypeScale.Title),
            style.Text(kindTitle),
            new Spacer(3),
            inFull,
        ]);

        var code = CodeWithName(write.Language, symbol, $"{spec.Order} {spec.Piece}, {write.Language.Say(PaperWord.Rev, ("revision", $"{spec.Revision}"))}");
        var left = facts.Count == 0 ? Left(new Spacer(0)) : new FirstThatFits([Left(new Stack(facts)), Left(Joined(t => t)), Left(Joined(t => TypeScale.TightBody with { Weight = t.Weight }))], Height);
        return new Top(new Row([new Column(left, ColumnWidth.Shared()), new Column(code.Block, ColumnWidth.Of(code.Side))], Gap: 10), Height);
    }

    private static List<Paragraph> FactsOf(Build build, CardStyle style, CardWriter write)
    {
        var facts = new List<Paragraph>();
        Add(PaperWord.CardCustomer, build.Slip.Customer);
        Add(PaperWord.CardDue, build.Slip.Due);
        Add(PaperWord.CardBow, build.Slip.Bow);
        Add(PaperWord.CardDrawWeight, build.Spec.DrawWeight is { } weight ? write.Load(weight) : "");
        return facts;

        void Add(PaperWord name, string value)
        {
            if (value.Length > 0)
            {
                facts.Add(style.Fact(Held(write.Language[name]), Held(value)));
            }
        }
    }

    private static (Block Block, float Side) CodeWithName(PaperLanguage words, QrSymbol symbol, string name)
    {
        var modules = symbol.Modules + (2 * QrSymbol.QuietModules);
        var code = new QrBlock(symbol, Math.Max(SmallestModule, WantedSide / modules)) { InWords = words.Say(PaperWord.TagCode, ("what", name)) };
        return (new FirstThatFits([new Stack([code, new Paragraph(name, TypeScale.Caption, Align.Center)]), code], Height), code.Side);
    }

    /// <summary>Kept on one line of running text, unless it would leave half of one empty.</summary>
    private static string Held(string text) => text.Length > MostJoined ? text : text.Replace(' ', '\u00A0');

    /// <summary>The first block that is no higher than wanted; the last one whatever its height.</summary>
    private sealed record FirstThatFits(IReadOnlyList<Block> Blocks, float Height) : Block
    {
        public override Placement Place(Fonts fonts, Room room)
        {
            foreach (var block in Blocks.SkipLast(1))
            {
                if (block.Place(fonts, room with { Height = Math.Min(room.Height, Height) }) is Placed placed)
                {
                    return placed;
                }
            }

            return Blocks[^1].Place(fonts, room);
        }
    }

    /// <summary>A block at the top of a height.</summary>
    private sealed record Top(Block Block, float Height) : Block
    {
        public override Placement Place(Fonts fonts, Room room) => Block.Place(fonts, room) switch
        {
            Placed placed => placed with { Height = Math.Max(placed.Height, Height) },
            var misfit => misfit,
        };
    }
}
