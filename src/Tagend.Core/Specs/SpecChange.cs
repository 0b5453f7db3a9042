using System.Globalization;
using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs;

/// <summary>What makes an issue of a piece another one than the issue before it.</summary>
public static class SpecChange
{
    /// <summary>What an order may say of a piece; its date, revision and customer are no part of what is built.</summary>
    private static readonly string[] Columns =
    [
        OrderColumn.Kind, OrderColumn.FinishedLength, OrderColumn.Material, OrderColumn.Strands, OrderColumn.Colors, OrderColumn.DrawWeight,
        OrderColumn.Servings, OrderColumn.CenterServing, OrderColumn.NockPoint, OrderColumn.Peep, OrderColumn.SpeedNocks, OrderColumn.NockGroove,
    ];

    /// <summary>Names what is built otherwise, each as <c>finished length 38 1/2 in (was 38 3/8 in)</c>.</summary>
    /// <returns>
    /// Empty where the papers of before are still right: another day, another unit of the papers, or a computed length that
    /// leaves the posts at the same mark of the tape, is no change.
    /// </returns>
    public static IReadOnlyList<string> Of(BuildSpec before, BuildSpec now)
    {
        var unit = now.Unit;
        var (then, today) = (Reorder.CellsOf(before with { Unit = unit }, OrderSlip.Blank), Reorder.CellsOf(now, OrderSlip.Blank));
        var wereAt = now.Posts.NearestMark(before.Posts.Outside);
        return
        [
            .. Columns.Where(c => then[c] != today[c]).Select(c => Changed(c.Replace('_', ' '), Shown(then[c]), Shown(today[c]))),
            .. Other("post setting", LengthWriter.Setting(wereAt, unit), LengthWriter.Setting(now.Posts.Tape, unit)),
            .. Other("turns", Plain(before.TurnsToPutIn), Plain(now.TurnsToPutIn)),
            .. Other("hand of twist", $"{before.Twist.Hand}", $"{now.Twist.Hand}"),
            .. Other("hand of servings", $"{before.Twist.ServingHand}", $"{now.Twist.ServingHand}"),
            .. Other("end loops", Loops(before.EndLoops ?? now.EndLoops), Loops(now.EndLoops)),
            .. Other("legs", Legs(before, unit), Legs(now, unit)),
            .. Other("tolerance", LengthWriter.Exact(before.Tolerance, unit), LengthWriter.Exact(now.Tolerance, unit)),
            .. Other("stretch load", Plain(before.Stretch.Load.Pounds), Plain(now.Stretch.Load.Pounds)),
            .. Other("minutes of stretch", Plain(before.Stretch.Minutes), Plain(now.Stretch.Minutes)),
        ];

        // A tag of version 1 says neither how end loops are built nor that there are legs.
        string Legs(BuildSpec spec, LengthUnit unit) => before.EndLoops is null || now.EndLoops is null ? ""
            : spec.Yoke is { } yoke ? $"{ExactNumber.Spelled(yoke.Split, unit)} with {yoke.LegTurns} turns each" : "none";

        static IEnumerable<string> Other(string name, string was, string now) => was == now ? [] : [Changed(name, was, now)];
    }

    private static string Changed(string name, string was, string now) => $"{name} {now} (was {was})";

    private static string Loops(EndLoops? loops) => loops?.Serving is { } serving ? $"served with {serving.Thread} {serving.Color}".TrimEnd() : "bare";

    private static string Shown(string cell) => cell.Length > 0 ? cell : "none";

    private static string Plain(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
