using System.Globalization;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Record;

/// <summary>The tables of a measured record.</summary>
internal sealed class RecordTables(ShopCatalog catalog, CardWriter write)
{
    private static readonly TextStyle Header = new(Weight.Regular, 8.5f, Leading: 1.2f);

    /// <summary>Of all running text.</summary>
    public static TextStyle Text { get; } = new(Weight.Regular, 9.5f, Leading: 1.3f);

    /// <summary>What must not be overlooked.</summary>
    public static TextStyle Strong => Text with { Weight = Weight.Bold };

    private PaperLanguage Words => write.Language;

    /// <summary>Each piece as it was ordered and measured, and whether it is in tolerance.</summary>
    public Table Lengths(BuildSet set) => TableOf(
        [
            new TableColumn(Words[PaperWord.PullPiece], ColumnWidth.Shared(1.2f)),
            new TableColumn(Words[PaperWord.RecordOrdered], ColumnWidth.Natural, Align.Right),
            new TableColumn(Words[PaperWord.RecordTolerance], ColumnWidth.Natural, Align.Right),
            new TableColumn(Words[PaperWord.RecordMeasured], ColumnWidth.Natural, Align.Right),
            new TableColumn(Words[PaperWord.RecordOff], ColumnWidth.Natural, Align.Right),
            new TableColumn(Words[PaperWord.RecordResult], ColumnWidth.Shared(1.6f)),
        ],
        set.Builds.Select<Build, IReadOnlyList<Block>>(build =>
        [
            Piece(build),
            new Paragraph(Held(write.Mark(build.Spec.FinishedLength)), Text),
            new Paragraph(Held($"± {write.Mark(build.Spec.Tolerance)}"), Text),
            new Paragraph(build.Measured is { } measured ? Held(write.Mark(measured.Length)) : "–", Strong),
            new Paragraph(build.Measured is { } m ? Held(Signed(m.Off(build.Spec))) : "–", Text),
            Result(build),
        ]));

    /// <summary>Each piece as it was built.</summary>
    public Table Builds(BuildSet set) => TableOf(
        [
            new TableColumn(Words[PaperWord.PullPiece], ColumnWidth.Shared()),
            new TableColumn(Words[PaperWord.RecordLoad], ColumnWidth.Natural, Align.Right),
            new TableColumn(Words[PaperWord.RecordTime], ColumnWidth.Natural, Align.Right),
            new TableColumn(Words[PaperWord.RecordTurns], ColumnWidth.Natural, Align.Right),
            new TableColumn(Words[PaperWord.RecordLots], ColumnWidth.Shared()),
            new TableColumn(Words[PaperWord.RecordDate], ColumnWidth.Natural),
            new TableColumn(Words[PaperWord.CardInitials], ColumnWidth.Natural),
        ],
        set.Builds.Where(b => b.Measured is not null).Select<Build, IReadOnlyList<Block>>(build =>
        [
            Piece(build),
            new Paragraph(Held(write.Load(build.Measured!.Load)), Text),
            new Paragraph(Held(Words.Say(PaperWord.Minutes, ("count", Number(build.Measured.Minutes)))), Text),
            new Paragraph($"{Number(build.Measured.Turns)} {build.Spec.Twist.Hand}".Replace(' ', '\u00A0'), Text),
            new Paragraph(string.Join(", ", build.Measured.Lots.Select(Held)), Text),
            new Paragraph(Held(DateWriter.Iso(build.Measured.Date)), Text),
            new Paragraph(build.Measured.Who, Text),
        ]));

    /// <summary>Two cables compared, in a sentence.</summary>
    public Paragraph Pair(MeasuredPair pair)
    {
        (string, string)[] names = [("first", pair.First), ("second", pair.Second)];
        (string, string)[] lengths = [.. names, ("length", Held(write.Mark(pair.Difference))), ("tolerance", Held(write.Mark(pair.Tolerance)))];
        return pair.Difference == Length.Zero ? new Paragraph(Words.Say(PaperWord.RecordPairSame, names), Text)
            : pair.IsWithin ? new Paragraph(Words.Say(PaperWord.RecordPairWithin, lengths), Text)
            : new Paragraph(Words.Say(PaperWord.RecordPairOutside, lengths), Strong);
    }

    private static Table TableOf(IReadOnlyList<TableColumn> columns, IEnumerable<IReadOnlyList<Block>> rows) =>
        new(columns, [.. rows], Header) { Gap = 9, WidestGap = 16, Padding = 3.5f };

    private Paragraph Piece(Build build)
    {
        var kind = catalog.Plans.GetValueOrDefault(build.Spec.Kind) is { } plan ? Words.Term(plan.Title) : build.Spec.Kind;
        var name = new Span(build.Spec.Piece, Strong);
        return kind == build.Spec.Piece ? new Paragraph([name]) : new Paragraph([name, new Span($"\n{kind}", Text with { Size = 8.5f })]);
    }

    private Paragraph Result(Build build)
    {
        if (build.Measured is not { } measured)
        {
            return new Paragraph(Words[PaperWord.RecordMissing], Strong);
        }

        var off = measured.Off(build.Spec);
        return measured.IsWithin(build.Spec)
            ? new Paragraph(Words[PaperWord.RecordIn], Text)
            : new Paragraph(
                Words.Say(off > Length.Zero ? PaperWord.RecordTooLong : PaperWord.RecordTooShort, ("length", Held(write.Mark(Length.Abs(off))))), Strong);
    }

    /// <summary><c>+ 1/32 in</c>, <c>− 0.4 mm</c>, <c>0</c>.</summary>
    private string Signed(Length off) => off == Length.Zero ? "0" : $"{(off > Length.Zero ? "+" : "−")} {write.Mark(Length.Abs(off))}";

    private string Number(double number) => write.Decimal(number.ToString("0.##", CultureInfo.InvariantCulture));

    private static string Held(string text) => text.Replace(' ', '\u00A0').Replace('-', '\u2011');
}
