using System.Collections.Frozen;
using System.Globalization;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>Reads the cells of one row: each a value, or null with a problem where it cannot be read.</summary>
internal sealed class OrderCells(OrderRow row, LengthUnit bareUnit, KnownCells known, List<Problem> problems)
{
    private static readonly Length LongestPiece = Length.FromMillimeters(10_000);
    private const string StrandsWord = "strands";

    private static readonly Length WidestNockGroove = Length.FromInches(0.5);

    /// <summary>Above that of any bow (common practice); a cable has no strength to hold a slip of the pen against.</summary>
    private static readonly Force GreatestDrawWeight = Force.FromPounds(2_000);

    // Made for the few rows that have any.
    private HashSet<string>? _unread = row.Unusable.Count == 0 ? null : [.. row.Unusable];

    private delegate bool Reader<T>(string text, out T value, out string? error);

    /// <returns>The row as far as it can be read, with problems added for the rest.</returns>
    public static OrderLine ReadLine(
        OrderRow row, LengthUnit bareUnit, KnownCells known, OrderSlip slip, List<Problem> problems)
    {
        var cells = new OrderCells(row, bareUnit, known, problems);
        var order = cells.Read<string>(OrderColumn.Order, NameReader.TryReadOrder, OrderWording.Order);
        var piece = cells.Read<string>(OrderColumn.Piece, NameReader.TryReadName, OrderWording.Piece);
        var (finished, bow) = cells.Lengths();
        cells.CheckUnits();
        return new OrderLine
        {
            Row = row,
            Order = order ?? "",
            Piece = piece ?? "",
            Kind = cells.Name(OrderColumn.Kind),
            Revision = cells.Revision(),
            FinishedLength = finished,
            BowLength = bow,
            Material = cells.Name(OrderColumn.Material),
            Strands = cells.Strands(),
            Colors = cells.Colors(),
            DrawWeight = cells.DrawWeight(),
            Servings = cells.Servings(),
            CenterServing = cells.CenterServing(),
            NockPoint = cells.Position(OrderColumn.NockPoint),
            Peep = cells.Position(OrderColumn.Peep),
            SpeedNocks = cells.Positions(OrderColumn.SpeedNocks),
            NockGroove = cells.LengthWithin(OrderColumn.NockGroove, WidestNockGroove, OrderWording.NockGroove),
            TurnsPerInch = cells.Twists(),
            Slip = row[OrderColumn.Accessories] is { } packed ? slip with { Accessories = Accessories(packed) } : slip,
            Unread = cells._unread as IReadOnlySet<string> ?? FrozenSet<string>.Empty,
        };
    }

    private string? Name(string column) => Read<string>(column, NameReader.TryReadName);

    private (Length? Finished, Length? Bow) Lengths()
    {
        var finished = LengthWithin(OrderColumn.FinishedLength, LongestPiece, OrderWording.LengthRange);
        var bow = LengthWithin(OrderColumn.BowLength, LongestPiece, OrderWording.LengthRange);
        switch (row[OrderColumn.FinishedLength], row[OrderColumn.BowLength])
        {
            case (null, null):
                Miss(OrderColumn.FinishedLength, OrderWording.NoLength);
                break;
            case (not null, not null):
                problems.Add(row.Problem(OrderColumn.BowLength, OrderWording.BothLengths));
                Lose(OrderColumn.BowLength);
                break;
        }

        return (finished, bow);
    }

    private void CheckUnits()
    {
        if (row[OrderColumn.Units] is { } text && !UnitsReader.TryRead(text, out _))
        {
            problems.Add(row.Problem(OrderColumn.Units, OrderWording.Units));
        }
    }

    private static ValueList<string> Accessories(string text) =>
        [.. text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    private int? Revision() => ReadValue<int>(OrderColumn.Revision, (text, out revision, out error) =>
    {
        error = OrderWording.Revision;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out revision) && revision is > 0 and < 1000;
    });

    private int? Strands() => ReadValue<int>(OrderColumn.Strands, (text, out strands, out error) =>
    {
        var number = text.EndsWith(StrandsWord, StringComparison.OrdinalIgnoreCase) ? text[..^StrandsWord.Length].TrimEnd() : text;
        var isNumber = int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out strands);
        error = strands % 2 == 0 ? OrderWording.Strands : OrderWording.OddStrands(strands);
        return isNumber && strands > 0 && strands % 2 == 0 && strands < 1000;
    });

    private ValueList<OrderedColor>? Colors() => Read<ValueList<OrderedColor>>(
        OrderColumn.Colors, (text, out colors, out error) => ColorsReader.TryRead(text, out colors, out error, known.Names));

    private Force? DrawWeight() => ReadValue<Force>(OrderColumn.DrawWeight, (text, out force, out error) =>
    {
        var isForce = ForceReader.TryRead(text, out force);
        error = isForce ? OrderWording.DrawWeight : OrderWording.Force;
        return isForce && force > default(Force) && force < GreatestDrawWeight;
    });

    private double? Twists() => ReadValue<double>(OrderColumn.Twists, (text, out twists, out error) =>
    {
        var scanner = new QuantityScanner(QuantityScanner.Plain(text));
        var isNumber = scanner.TryReadDecimal(out var number, out _) && scanner.Rest.IsEmpty;
        twists = (double)number;
        error = OrderWording.Twists;
        return isNumber && number <= 5;
    });

    private ValueList<OrderedServing>? Servings() => Read<ValueList<OrderedServing>>(
        OrderColumn.Servings, (text, out servings, out error) =>
            ServingsReader.TryRead(text, bareUnit, out servings, out error, known.Names));

    private OrderedServing? CenterServing() => Read<OrderedServing>(
        OrderColumn.CenterServing, (text, out serving, out error) =>
            ServingsReader.TryReadOne(text, bareUnit, out serving, out error, known.Names));

    private Position? Position(string column) => ReadValue<Position>(column, (text, out position, out error) =>
    {
        error = OrderWording.Position;
        return PositionReader.TryRead(text, bareUnit, out position);
    });

    private ValueList<Position>? Positions(string column) => Read<ValueList<Position>>(
        column, (text, out positions, out error) =>
            PositionReader.TryReadAll(text, bareUnit, out positions, out error));

    private Length? LengthWithin(string column, Length limit, string range) =>
        ReadValue<Length>(column, (text, out length, out error) =>
        {
            var isLength = LengthReader.TryRead(text, bareUnit, out length);
            var other = bareUnit == LengthUnit.Inch ? LengthUnit.Millimeter : LengthUnit.Inch;
            var isOther = LengthReader.IsBare(text) && LengthReader.TryRead(text, other, out var asOther) && asOther < limit;
            error = isLength ? range + (isOther ? OrderWording.UnitMeant(text, other) : "") : OrderWording.Length;
            return isLength && length > Length.Zero && length < limit;
        });

    private T? ReadValue<T>(string column, Reader<T> reader)
        where T : struct =>
        TryRead(column, reader, null, out var value) ? value : null;

    private T? Read<T>(string column, Reader<T?> reader, string? missing = null)
        where T : class =>
        TryRead(column, reader, missing, out var value) ? value : null;

    private bool TryRead<T>(string column, Reader<T> reader, string? missing, out T? value)
    {
        value = default;
        if (row[column] is not { } text)
        {
            if (missing is not null)
            {
                Miss(column, missing);
            }

            return false;
        }

        if (known.TryGet(column, bareUnit, text, out var before))
        {
            value = (T?)before;
            return true;
        }

        if (reader(text, out value, out var error))
        {
            known.Keep(column, bareUnit, text, value);
            return true;
        }

        problems.Add(row.Problem(column, DueDate.IsEatenFraction(text) ? OrderWording.EatenFraction : error ?? ""));
        Lose(column);
        return false;
    }

    /// <summary>Says that a cell is needed, unless that is told already.</summary>
    private void Miss(string column, string message)
    {
        if (Lose(column))
        {
            problems.Add(row.Problem(column, message));
        }
    }

    private bool Lose(string column) => (_unread ??= []).Add(column);
}
