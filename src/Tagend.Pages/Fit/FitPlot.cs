using System.Globalization;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Fit;

/// <summary>A build on the plot of a fit.</summary>
/// <param name="Predicted">The finished length that the fit expects of its posts and turns.</param>
/// <param name="Difference">Measured − predicted.</param>
/// <param name="Number">In the job book; written beside a build that is not like the others.</param>
public sealed record PlottedBuild(Length Predicted, Length Difference, Length Tolerance, PlotMark Mark, long Number);

public enum PlotMark
{
    Used,
    Outlier,
    LeftOut,
}

/// <summary>Draws what was measured against what a fit predicts, with the band of the tolerance.</summary>
/// <remarks>
/// Upward is the difference of the two, for on a plot of whole lengths a sixteenth of an inch cannot be seen.
/// Half a sheet, lying. All coordinates are points.
/// </remarks>
/// <param name="fit">What was fitted.</param>
/// <param name="words">Of the bench's language.</param>
public sealed class FitPlot(FittedTakeUp fit, LengthUnit unit, PaperLanguage words, Fonts fonts)
{
    private const float Margin = 24;
    private const float Left = 66;
    private const float Top = 82;
    private const float Bottom = 66;
    private const float Radius = 2.8f;
    private const byte Band = 226;
    private const byte Faint = 150;

    private readonly CardWriter _write = new(unit, words);

    private static TextStyle Small => TypeScale.Body;

    private string Title => words.Say(PaperWord.FitTitle, ("material", fit.Material), ("strands", $"{fit.Strands}"));

    private string Facts => words.Say(
        PaperWord.FitFacts,
        ("builds", $"{fit.Builds}"),
        ("amount", _write.Fine(fit.PerTurn)),
        ("error", _write.Error(fit.PerTurnError)),
        ("settle", Settle),
        ("scatter", _write.Exact(fit.Scatter)));

    private string Settle => fit.IsSettleFitted
        ? words.Say(PaperWord.FitSettle, ("settle", Number(fit.Settle, "0.00000")), ("error", Number(fit.SettleError, "0.00000")))
        : words.Say(PaperWord.FitSettleGiven, ("settle", Number(fit.Settle, "0.######")));

    /// <param name="builds">One at least.</param>
    /// <param name="paper">Half a sheet, upright; the plot lies on it.</param>
    public Page Of(IReadOnlyList<PlottedBuild> builds, Paper paper)
    {
        var (width, height) = (Points.Of(paper.Height), Points.Of(paper.Width));
        var across = PlotAxis.Covering(
            In(builds.Min(b => b.Predicted)), In(builds.Max(b => b.Predicted)), Left, width - Margin, LeastSpan(1));
        var reach = Math.Max(builds.Max(b => In(Length.Abs(b.Difference))), builds.Max(b => In(b.Tolerance)) * 1.2);
        var up = PlotAxis.Covering(-reach, reach, height - Bottom, Top, LeastSpan(0.02));
        return new Page(
            width,
            height,
            [
                .. Bands(builds, across, up),
                .. Frame(across, up),
                .. builds.SelectMany(b => Mark(b.Mark, across.At(In(b.Predicted)), up.At(In(b.Difference)))),
                .. builds.Where(b => b.Mark != PlotMark.Used).Select(b => Label(b, across, up)),
                .. Words(height),
            ]);
    }

    private IEnumerable<Ink> Words(float height)
    {
        yield return new TextInk(Margin, Margin + 10, Title, TypeScale.Figure);
        yield return new TextInk(Margin, Margin + 25, Facts, Small);
        var x = Left;
        foreach (var (mark, word) in new[] { (PlotMark.Used, PaperWord.FitBuild), (PlotMark.Outlier, PaperWord.FitOutlier), (PlotMark.LeftOut, PaperWord.FitLeftOut) })
        {
            foreach (var ink in Mark(mark, x + Radius, height - Margin - 3))
            {
                yield return ink;
            }

            yield return new TextInk(x + 10, height - Margin, words[word], Small);
            x += 26 + fonts.WidthOf(words[word], Small);
        }
    }

    /// <summary>The least tolerance as a gray band; each tolerance as a pair of dashed lines with its value.</summary>
    private IEnumerable<Ink> Bands(IReadOnlyList<PlottedBuild> builds, PlotAxis across, PlotAxis up)
    {
        var tolerances = builds.Select(b => b.Tolerance).Distinct().Order().ToList();
        var least = In(tolerances[0]);
        yield return new BoxInk(across.Start, up.At(least), across.End - across.Start, up.At(-least) - up.At(least), Fill: Band);
        foreach (var tolerance in tolerances)
        {
            foreach (var (sign, value) in new[] { ("+", In(tolerance)), ("−", -In(tolerance)) })
            {
                var label = words.Say(PaperWord.FitTolerance, ("amount", $"{sign}{_write.Setting(tolerance)}"));
                yield return new LineInk(across.Start, up.At(value), across.End, up.At(value), 0.7f, Dash: 3);
                yield return new TextInk(across.End - fonts.WidthOf(label, Small) - 4, up.At(value) + (value > 0 ? -3 : 9), label, Small);
            }
        }
    }

    private IEnumerable<Ink> Frame(PlotAxis across, PlotAxis up)
    {
        yield return new LineInk(across.Start, up.At(0), across.End, up.At(0), 0.8f);
        yield return new LineInk(across.Start, up.End, across.Start, up.Start, 0.8f);
        yield return new LineInk(across.Start, up.Start, across.End, up.Start, 0.8f);
        foreach (var tick in across.Ticks)
        {
            var text = Number(tick, "0.####");
            yield return new LineInk(across.At(tick), up.Start, across.At(tick), up.Start + 4, 0.8f);
            yield return new TextInk(across.At(tick) - (fonts.WidthOf(text, Small) / 2), up.Start + 14, text, Small);
        }

        foreach (var tick in up.Ticks)
        {
            var text = (tick < 0 ? "−" : tick > 0 ? "+" : "") + Number(Math.Abs(tick), "0.####");
            yield return new LineInk(across.Start - 4, up.At(tick), across.Start, up.At(tick), 0.8f);
            yield return new TextInk(across.Start - 7 - fonts.WidthOf(text, Small), up.At(tick) + (Small.CapHeight / 2), text, Small);
        }

        var symbol = ("unit", _write.UnitSymbol);
        var name = words.Say(PaperWord.FitPredicted, symbol);
        yield return new TextInk(((across.Start + across.End) / 2) - (fonts.WidthOf(name, Small) / 2), up.Start + 27, name, Small);
        yield return new TextInk(Margin, up.End - 8, words.Say(PaperWord.FitDifference, symbol), Small);
    }

    private static IEnumerable<Ink> Mark(PlotMark mark, float x, float y) => mark switch
    {
        PlotMark.Used => [new OvalInk(x, y, Radius, Radius, Fill: 0)],
        PlotMark.Outlier => [new BoxInk(x - 3.4f, y - 3.4f, 6.8f, 6.8f, Stroke: 1.3f, Fill: 255)],
        PlotMark.LeftOut =>
        [
            new LineInk(x - 3, y - 3, x + 3, y + 3, 1.2f, Faint),
            new LineInk(x - 3, y + 3, x + 3, y - 3, 1.2f, Faint),
        ],
        _ => throw new InvalidOperationException($"no mark for {mark}"),
    };

    private TextInk Label(PlottedBuild build, PlotAxis across, PlotAxis up)
    {
        var label = words.Say(PaperWord.FitBuildNumber, ("number", $"{build.Number}"));
        var (x, width) = (across.At(In(build.Predicted)), fonts.WidthOf(label, Small));
        return new TextInk(x + 6 + width > across.End ? x - 6 - width : x + 6, up.At(In(build.Difference)) + (Small.CapHeight / 2), label, Small);
    }

    private string Number(double number, string format) => _write.Decimal(number.ToString(format, CultureInfo.InvariantCulture));

    private double In(Length length) => unit == LengthUnit.Inch ? length.Inches : length.Millimeters;

    private double LeastSpan(double inches) => In(Length.FromInches(inches));
}
