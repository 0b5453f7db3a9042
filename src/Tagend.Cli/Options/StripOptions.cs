using System.CommandLine;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Parts;

namespace Tagend.Options;

/// <summary>The options of <c>print</c> that marking strips have.</summary>
internal sealed class StripOptions
{
    private static readonly Length WidestRoll = Length.FromInches(36);

    private readonly Option<string?> _positions = new Option<string?>("--positions")
    {
        Description = "Whether marking strips show places on the finished piece or on the jig before twisting. Default: finished.",
        HelpName = "finished|jig",
    }.TakesOneOf("finished", "jig");

    private readonly Option<string?> _roll = new("--roll")
    {
        Description = "Print marking strips in one length on a roll this wide, such as \"2 in\". Default: in parts on sheets.",
        HelpName = "WIDTH",
    };

    public StripOptions() => _roll.Validators.Add(result =>
    {
        if (result.GetValueOrDefault<string?>() is { } text && WidthOf(text) is null)
        {
            result.AddError(
                $"--roll \"{text}\": expected the width of the roll with its unit, from "
                + $"{LengthWriter.Setting(StripStock.NarrowestRoll, LengthUnit.Millimeter)} to {LengthWriter.Setting(WidestRoll, LengthUnit.Inch)}");
        }
    });

    public void AddTo(Command command)
    {
        command.Options.Add(_positions);
        command.Options.Add(_roll);
    }

    public StripPositions PositionsOf(ParseResult parsed) =>
        parsed.GetValue(_positions) == "jig" ? StripPositions.OnJig : StripPositions.Finished;

    public StripStock StockOf(ParseResult parsed, PaperSet paper) => parsed.GetValue(_roll) is { } text
        ? StripStock.Roll(WidthOf(text)!.Value)
        : StripStock.Sheet(paper.Sheet);

    private static Length? WidthOf(string text) =>
        LengthReader.TryRead(text, LengthUnit.Inch, out var width) && width >= StripStock.NarrowestRoll && width <= WidestRoll
            ? width
            : null;
}
