using System.Globalization;
using CsvHelper;
using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs;

/// <summary>An order that makes a piece again, from its spec alone.</summary>
/// <remarks>
/// Places near end B are measured from B, so that they stay where they are when the finished length is changed. What an
/// order does not hold (tolerance, end loops, the jig, separators other than a peep) comes from the templates.
/// </remarks>
public static class Reorder
{
    private static readonly CsvWriterOptions Csv = CsvWriterOptions.Default with { WriteByteOrderMark = true };

    /// <summary>The columns that <see cref="CellsOf"/> fills, in their order.</summary>
    private static readonly string[] Columns = [.. OrderColumn.All.Where(c => c != OrderColumn.BowLength)];

    /// <summary>The cells of the piece's row, by column. Lengths and forces are exact, with their unit.</summary>
    public static Dictionary<string, string> CellsOf(BuildSpec spec, OrderSlip slip)
    {
        var center = spec.Servings.FirstOrDefault(s => s.Role == ServingRole.Center);
        return new Dictionary<string, string>
        {
            [OrderColumn.Order] = spec.Order,
            [OrderColumn.Piece] = spec.Piece,
            [OrderColumn.Kind] = spec.Kind,
            [OrderColumn.Revision] = Plain(spec.Revision),
            [OrderColumn.FinishedLength] = Exact(spec.FinishedLength),
            [OrderColumn.Material] = spec.Bundle.Material,
            [OrderColumn.Strands] = Plain(spec.Bundle.Strands),
            [OrderColumn.Colors] = string.Join(' ', spec.Layup.Colors.Select(c => $"{c.Color}:{c.Strands}")),
            [OrderColumn.DrawWeight] = spec.DrawWeight is { } weight
                ? ExactNumber.Spelled(weight, spec.Unit)
                : "",
            [OrderColumn.Servings] = string.Join("; ", spec.Servings.Where(s => s != center).Select(Serving)),
            [OrderColumn.CenterServing] = center is null ? "" : Serving(center),
            [OrderColumn.NockPoint] = Places(spec.Marks.Where(m => m.Kind == MarkKind.NockPoint).Select(m => Exact(m.Position))),
            [OrderColumn.Peep] = Places(spec.Separators.Where(s => s.Name == OrderColumn.Peep).Select(s => Exact(s.Position))),
            [OrderColumn.SpeedNocks] = Places(spec.Marks.Where(m => m.Kind == MarkKind.SpeedNock).Select(m => Place(m.Position))),
            [OrderColumn.NockGroove] = spec.NockGroove is { } groove ? Exact(groove) : "",
            [OrderColumn.Twists] = (spec.Twist.Turns / spec.FinishedLength.Inches).ToString("0.######", CultureInfo.InvariantCulture),
            [OrderColumn.Customer] = slip.Customer,
            [OrderColumn.Bow] = slip.Bow,
            [OrderColumn.Due] = slip.Due,
            [OrderColumn.Notes] = slip.Notes,
            [OrderColumn.Language] = slip.Language,
            [OrderColumn.Units] = slip.Units is { } units ? LengthWriter.Symbol(units) : "",
            [OrderColumn.Accessories] = string.Join("; ", slip.Accessories),
        };

        string Serving(Serving s)
        {
            var isAtB = s.Role == ServingRole.EndB;
            var (from, to) = isAtB ? (spec.FromB(s.To), spec.FromB(s.From)) : (s.From, s.To);
            return $"{(isAtB ? "B " : "")}{Exact(from)}..{Exact(to)} {s.Thread} {s.Color}".TrimEnd();
        }

        string Place(Length fromA) => fromA > spec.FinishedLength / 2 ? $"B {Exact(spec.FromB(fromA))}" : Exact(fromA);

        string Exact(Length length) => ExactNumber.Spelled(length, spec.Unit);
    }

    /// <summary>A cell with another text: as it is given, but that a color alone, such as <c>green</c>, is that of all servings in it.</summary>
    /// <param name="cell">As <see cref="CellsOf"/> fills it.</param>
    public static string Changed(string cell, string column, string text)
    {
        var isColor = column is OrderColumn.CenterServing or OrderColumn.Servings
            && cell.Length > 0 && text.Length > 0 && text.All(c => char.IsLetter(c) || c is ' ' or '-');
        return isColor ? string.Join("; ", cell.Split("; ").Select(serving => $"{Uncolored(serving)} {text}")) : text;

        // The thread is the first word after the lengths, and what stands behind it is the color.
        static string Uncolored(string serving)
        {
            var words = serving.Split(' ');
            var thread = Array.FindLastIndex(words, w => w is "in" or "mm") + 1;
            return string.Join(' ', words.Take(thread + 1));
        }
    }

    /// <summary>An order file of rows of cells: RFC 4180, UTF-8 with its mark, safe to open in a spreadsheet.</summary>
    public static byte[] File(IEnumerable<IReadOnlyDictionary<string, string>> rows)
    {
        using var bytes = new MemoryStream();
        using (var csv = CsvWriter.Create(bytes, Csv, leaveOpen: true))
        {
            csv.WriteRecord(Columns);
            foreach (var cells in rows)
            {
                csv.WriteRecord([.. Columns.Select(c => SpreadsheetText.Guarded(cells.GetValueOrDefault(c, "")))]);
            }
        }

        return bytes.ToArray();
    }

    private static string Places(IEnumerable<string> places) => string.Join("; ", places);

    private static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);
}
