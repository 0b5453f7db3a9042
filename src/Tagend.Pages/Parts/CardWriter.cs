using System.Globalization;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>Writes a spec's numbers and words as the bench's papers show them. Each number is rounded once, here.</summary>
internal sealed class CardWriter(LengthUnit unit, PaperLanguage language)
{
    public PaperLanguage Language => language;

    public LengthUnit Unit => unit;

    public string UnitSymbol => unit == LengthUnit.Inch ? language.Inch : language.Millimeter;

    public string UnitWord => language[unit == LengthUnit.Inch ? PaperWord.Inches : PaperWord.Millimeters];

    public string Mark(Length length) => Local(LengthWriter.Mark(length, unit));

    public string Bare(Length length) => Decimal(LengthWriter.Bare(length, unit));

    /// <summary>To 1/16 in or 0.1 mm, without the unit.</summary>
    public string BareTape(Length length) => Decimal(LengthWriter.Tape(length, unit)[..^LengthWriter.Symbol(unit).Length].TrimEnd());

    public string Exact(Length length) => Local(LengthWriter.Exact(length, unit));

    public string Fine(Length length) => Local(LengthWriter.Fine(length, unit));

    public string Error(Length error) => Local(LengthWriter.Error(error, unit));

    public string Setting(Length mark) => Local(LengthWriter.Setting(mark, unit));

    /// <summary>As <see cref="Setting"/>, without the unit.</summary>
    public string BareSetting(Length mark) => Setting(mark)[..^UnitSymbol.Length].TrimEnd();

    /// <summary>As much as to take from a spool, rounded up to a foot or 0.1 m.</summary>
    public string Spool(Length length) => Decimal(LengthWriter.Spool(length, unit));

    public string LoadSymbol => unit == LengthUnit.Inch ? "lbf" : "N";

    /// <summary>To whole pounds-force or newtons.</summary>
    public string Load(Force force) => unit == LengthUnit.Inch
        ? $"{Thousands(force.Pounds)} lbf"
        : $"{Thousands(force.Newtons)} N";

    /// <summary>The turns to put in, to halves: <c>45</c>, <c>45 1/2</c>.</summary>
    public static string TurnsToPutIn(BuildSpec spec) =>
        HalvesWriter.Write((int)Math.Round(spec.TurnsToPutIn * 2, MidpointRounding.AwayFromZero));

    /// <summary>What the ends are on the bow; their letters where the plan is not there.</summary>
    public (string A, string B) Ends(PiecePlan? plan) => plan is null
        ? (language[PaperWord.RoleEndA], language[PaperWord.RoleEndB])
        : (language.Term(plan.EndA), language.Term(plan.EndB));

    /// <summary>A number of turns with the word for them: <c>1/2 turn</c>, <c>1 1/2 turns</c>.</summary>
    public string Turns(string turns) =>
        language.Say(turns is "1" or "1/2" ? PaperWord.TurnOne : PaperWord.TurnMany, ("count", turns));

    /// <summary>Revision and date of a piece's papers, and whether they are the newest: <c>rev 1, 2026-03-14 · SUPERSEDED by rev 2</c>.</summary>
    public string Issue(Build build) =>
        $"{language.Say(PaperWord.Rev, ("revision", $"{build.Spec.Revision}"))}, {DateWriter.Iso(build.Spec.Date)}"
        + (Superseded(build) is { Length: > 0 } mark ? $" · {mark}" : "");

    /// <summary>That a piece's papers are not the newest; empty for those that are.</summary>
    public string Superseded(Build build) => build.SupersededBy is { } newest
        ? language.Say(PaperWord.Superseded, ("revision", $"{newest}")).Replace(' ', '\u00A0')
        : "";

    public string Direction(TwistDirection direction) => language[direction switch
    {
        TwistDirection.Clockwise => PaperWord.Clockwise,
        TwistDirection.Counterclockwise => PaperWord.Counterclockwise,
        _ => throw new InvalidOperationException($"no word for {direction}"),
    }];

    /// <summary>Take-up, and the model it is from.</summary>
    public string TakeUp(TakeUpModel model) => language[model switch
    {
        TakeUpModel.Rule => PaperWord.CardTakeUpRule,
        TakeUpModel.Helix => PaperWord.CardTakeUpHelix,
        _ => throw new InvalidOperationException($"no word for {model}"),
    }];

    /// <summary>Where a serving is, in a column of servings.</summary>
    public string Role(ServingRole role) => language[role switch
    {
        ServingRole.EndA => PaperWord.RoleEndA,
        ServingRole.Center => PaperWord.RoleCenter,
        ServingRole.EndB => PaperWord.RoleEndB,
        ServingRole.Other => PaperWord.RoleOther,
        _ => throw new InvalidOperationException($"no word for {role}"),
    }];

    /// <summary>A serving by where it is.</summary>
    public string Serving(ServingRole role) => language[role switch
    {
        ServingRole.EndA => PaperWord.ServingEndA,
        ServingRole.Center => PaperWord.ServingCenter,
        ServingRole.EndB => PaperWord.ServingEndB,
        ServingRole.Other => PaperWord.ServingOther,
        _ => throw new InvalidOperationException($"no word for {role}"),
    }];

    public string Kind(MarkKind kind) => language[kind switch
    {
        MarkKind.NockPoint => PaperWord.MarkNockPoint,
        MarkKind.SpeedNock => PaperWord.MarkSpeedNock,
        _ => throw new InvalidOperationException($"no word for {kind}"),
    }];

    public string Separator(string name) => name == OrderColumn.Peep ? language[PaperWord.Peep] : language.Term(name);

    /// <summary>A color; what the word for any is, where none was ordered.</summary>
    public string Color(string color) => color.Length == 0 ? language[PaperWord.Any] : language.Term(color);

    /// <summary>A thread and its color: <c>t021 black</c>; the thread alone where the shop's stock decides.</summary>
    public string Thread(string thread, string color) => color.Length == 0 ? thread : $"{thread} {Color(color)}";

    /// <summary>The lots a piece is built of; empty where the spec has none.</summary>
    public string Lots(BuildSpec spec) => spec.Lots.Count == 0 ? "" : language.Say(PaperWord.TagLots, ("lots", string.Join(", ", spec.Lots)));

    /// <summary>Colors with their strands, each held together: <c>12 black, 12 red</c>.</summary>
    public string Colors(Layup layup) =>
        string.Join(", ", layup.Colors.Select(c => $"{c.Strands}\u00A0{Color(c.Color).Replace(' ', '\u00A0')}"));

    /// <summary>With a comma only beside inches in a language without decimal commas: no one takes it for a decimal there.</summary>
    private string Thousands(double number)
    {
        var text = number.ToString("#,0", CultureInfo.InvariantCulture);
        return language.DecimalSign == "," || unit == LengthUnit.Millimeter ? text.Replace(',', '\u00A0') : text;
    }

    private string Local(string written) => $"{Decimal(written[..^LengthWriter.Symbol(unit).Length])}{UnitSymbol}";

    public string Decimal(string number) => number.Replace(".", language.DecimalSign, StringComparison.Ordinal);
}
