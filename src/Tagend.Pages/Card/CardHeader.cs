using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Qr.Encode;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>Top of a card: whose piece it is, and its QR code.</summary>
internal static class CardHeader
{
    /// <summary>Smallest side of a module, in points: 0.33 mm, 4 dots of 12 dot/mm by printer guidance of the symbology's inventor.</summary>
    private const float SmallestModule = 0.33f / 25.4f * Points.PerInch;

    /// <summary>Wanted side of the code with its quiet zone, in points.</summary>
    private const float WantedSide = 68;

    /// <summary>Characters of a fact that are kept together.</summary>
    private const int MostJoined = 36;

    public static Block Of(Build build, string kindTitle, QrSymbol symbol, CardStyle style, CardWriter write)
    {
        var spec = build.Spec;
        var facts = new List<Paragraph>();
        Add(write.Language[PaperWord.CardCustomer], build.Slip.Customer);
        Add(write.Language[PaperWord.CardDue], build.Slip.Due);
        Add(write.Language[PaperWord.CardBow], build.Slip.Bow);
        Add(write.Language[PaperWord.CardDrawWeight], spec.DrawWeight is { } weight ? write.Load(weight) : "");
        Add(write.Language[PaperWord.CardNotes], build.Slip.Notes);

        var left = new Stack(
        [
            new Paragraph($"{write.Language[PaperWord.CardTitle]}\u00A0\u00A0 {write.Issue(spec)}", TypeScale.Heading with { HeadingLevel = 0 }),
            new Spacer(3),
            new Paragraph($"{spec.Order}\u00A0 {spec.Piece}", TypeScale.Title),
            style.Text(kindTitle),
            new Spacer(4),
            style.IsClose && facts.Count > 0 ? new Paragraph([.. facts.SelectMany(f => f.Spans)]) : new Stack(facts),
        ]);
        var code = CodeWithName(symbol, $"{spec.Order} {spec.Piece}, {write.Language.Say(PaperWord.Rev, ("revision", $"{spec.Revision}"))}");
        return new Row([new Column(left, ColumnWidth.Shared()), new Column(code.Block, ColumnWidth.Of(code.Side))], Gap: 10);

        void Add(string name, string value)
        {
            if (value.Length > 0)
            {
                facts.Add(style.IsClose ? style.Fact(Joined(name), Joined(value) + "\u00A0\u00A0 ") : style.Fact(name, value));
            }
        }
    }

    private static (Block Block, float Side) CodeWithName(QrSymbol symbol, string name)
    {
        var modules = symbol.Modules + (2 * QrSymbol.QuietModules);
        var code = new QrBlock(symbol, Math.Max(SmallestModule, WantedSide / modules)) { InWords = $"QR: {name}" };
        return (new Stack([code, new Paragraph(name, TypeScale.Caption, Align.Center)]), code.Side);
    }

    /// <summary>Kept on one line of running text, unless it would leave half of one empty.</summary>
    private static string Joined(string text) => text.Length > MostJoined ? text : text.Replace(' ', '\u00A0');
}
