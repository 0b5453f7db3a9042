using System.Globalization;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>Writes a spec's numbers as a card shows them. Each is rounded once, here.</summary>
internal sealed class CardWriter(LengthUnit unit)
{
    public LengthUnit Unit => unit;

    public string UnitSymbol => LengthWriter.Symbol(unit);

    public string UnitWord => unit == LengthUnit.Inch ? "inches" : "millimeters";

    public string Mark(Length length) => LengthWriter.Mark(length, unit);

    public string Bare(Length length) => LengthWriter.Bare(length, unit);

    /// <summary>To 1/16 in or 0.1 mm, without the unit.</summary>
    public string BareTape(Length length) => LengthWriter.Tape(length, unit)[..^UnitSymbol.Length].TrimEnd();

    public string Exact(Length length) => LengthWriter.Exact(length, unit);

    public string Fine(Length length) => LengthWriter.Fine(length, unit);

    public string Setting(Length mark) => LengthWriter.Setting(mark, unit);

    public string LoadSymbol => unit == LengthUnit.Inch ? "lbf" : "N";

    /// <summary>To whole pounds-force or newtons.</summary>
    public string Load(Force force) => unit == LengthUnit.Inch
        ? force.Pounds.ToString("#,0", CultureInfo.InvariantCulture) + " lbf"
        : force.Newtons.ToString("#,0", CultureInfo.InvariantCulture) + " N";

    /// <summary>To halves, without sign: <c>1/2</c>, <c>2</c>, <c>1 1/2</c>; empty for none.</summary>
    public static string HalfTurns(double turns)
    {
        var halves = (int)Math.Round(Math.Abs(turns) * 2, MidpointRounding.AwayFromZero);
        return (halves / 2, halves % 2) switch
        {
            (0, 0) => "",
            (0, _) => "1/2",
            (var whole, 0) => whole.ToString(CultureInfo.InvariantCulture),
            var (whole, _) => FormattableString.Invariant($"{whole} 1/2"),
        };
    }

    public static string Direction(TwistDirection direction) => direction switch
    {
        TwistDirection.Clockwise => "clockwise",
        TwistDirection.Counterclockwise => "counterclockwise",
        _ => throw new InvalidOperationException($"no word for {direction}"),
    };

    public static string Model(TakeUpModel model) => model switch
    {
        TakeUpModel.Rule => "rule",
        TakeUpModel.Helix => "helix",
        _ => throw new InvalidOperationException($"no word for {model}"),
    };

    public static string Role(ServingRole role) => role switch
    {
        ServingRole.EndA => "end A",
        ServingRole.Center => "center",
        ServingRole.EndB => "end B",
        ServingRole.Other => "serving",
        _ => throw new InvalidOperationException($"no word for {role}"),
    };

    public static string Kind(MarkKind kind) => kind switch
    {
        MarkKind.NockPoint => "nock point",
        MarkKind.SpeedNock => "speed nock",
        _ => throw new InvalidOperationException($"no word for {kind}"),
    };
}
