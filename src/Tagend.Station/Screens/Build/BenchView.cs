using System.Globalization;
using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Steps;
using Tagend.Specs;
using Tagend.Station.Desk;
using Tagend.Tags;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Station.Screens.Build;

/// <summary>Makes of a piece, its steps and the job book what the screens of building show.</summary>
internal static class BenchView
{
    /// <summary>Widths of the drawing of a piece, in points: of a phone and of all else.</summary>
    private static readonly float[] Widths = [250, 460];

    public static BuildModel Of(BenchPiece piece, BuildSpec spec, string device, ShopDesk shop, IJobBook book, BenchLog bench)
    {
        var catalog = shop.Catalog;
        var steps = BenchSteps.Of(spec, catalog);
        var fonts = Fonts.Of(catalog.Folder);
        var isHeld = book.Newest(spec.Order, spec.Piece) is { } newest && (newest.Revision > spec.Revision || newest.State == PieceState.Cancelled);
        return new BuildModel
        {
            Id = piece.Id,
            Spec = spec,
            Tag = piece.Tag,
            Steps = steps,
            Step = Math.Min(piece.Step, steps.Count),
            Moves = piece.Moves,
            News =
            [
                .. PieceNews.Of(PieceIssue.Of(spec), book),
                .. piece is { Moves: > 0, IsDone: false } && piece.Device != device ? new[] { Elsewhere(piece) } : [],
                .. bench.Before(spec) is { } before ? new[] { BuildWording.Before(before, catalog.Shop.Unit) } : [],
            ],
            IsHeld = isHeld,
            Drawings = [.. Widths.Select(w => StepDrawing.Of(spec, steps, catalog, w, fonts)).OfType<StepDrawing>()],
            Twist = StepDrawing.TwistOf(spec, fonts),
            Fields = [.. bench.Questions(spec, bench.LastBuilder()).Where(q => q.AsCarded is not null).Select(q => new BuildField(q.Name, LabelOf(q.Name, catalog.Words), q.AsCarded!))],
            LengthLabel = catalog.Words[PaperWord.CardMeasured],
            Unit = catalog.Shop.Unit,
        };
    }

    /// <summary>Null where its tag cannot be read any more.</summary>
    public static BegunPiece? Begun(BenchPiece piece, ShopDesk shop) => TagReader.Read(piece.Tag) is TagReading.Piece { Spec: var spec }
        ? new BegunPiece(
            piece.Id,
            $"{spec.Order}/{spec.Piece}",
            StepOf(piece.Step, BenchSteps.Of(spec, shop.Catalog).Count),
            Clock(piece.At, "yyyy-MM-dd HH:mm"))
        : null;

    public static string Elsewhere(BenchPiece piece) =>
        $"Another device has this piece at step {piece.Step + 1} since {Clock(piece.At, "HH:mm")}.";

    public static VerdictModel Judged(BuildSpec spec, BuildReading reading, LengthUnit unit)
    {
        if (reading.Built is not { } built)
        {
            return new VerdictModel($"{reading.Question} {reading.Error}", null, "", reading.Meant);
        }

        var advice = TurnAdvice.Of(spec, built) is { } turns ? BuildWording.Advice(turns) : "";
        return new VerdictModel(BuildWording.Measured(spec, built, unit), BuildWording.IsWithin(spec, built), advice, null);
    }

    private static string StepOf(int step, int steps) => step >= steps ? "measure and save" : string.Create(CultureInfo.InvariantCulture, $"step {step + 1} of {steps}");

    private static string Clock(DateTimeOffset at, string format) => at.ToLocalTime().ToString(format, CultureInfo.InvariantCulture);

    private static string LabelOf(string question, PaperLanguage words) => question switch
    {
        "posts" => words[PaperWord.CardPostsSet],
        "turns" => words[PaperWord.CardTurnsIn],
        "load" => words[PaperWord.CardStretchLoad],
        "minutes" => words[PaperWord.CardStretchTime],
        "who" => words[PaperWord.CardInitials],
        "lots" => words[PaperWord.RecordLots],
        "spools" => words[PaperWord.PullSpools],
        _ => question,
    };
}
