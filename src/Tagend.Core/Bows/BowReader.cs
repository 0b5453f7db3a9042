using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Bows;

/// <summary>Reads one bow: what all pieces have above, and a section a piece.</summary>
internal static class BowReader
{
    public static BowRecipe Read(TomlFile file, string name, LengthUnit bareUnit, ColorNames colors, List<Problem> problems)
    {
        var root = file.Root;
        var bow = root.Text("bow");
        var also = root.Texts("also") ?? [];
        var common = Cells(root);
        root.RefuseUnknown();
        if (file.Sections.Count == 0)
        {
            root.Report(null, null, BowWording.NoPieces);
        }

        var pieces = new List<BowPiece>();
        foreach (var section in file.Sections)
        {
            var own = Cells(section);
            section.RefuseUnknown();
            var hasLength = own.ContainsKey(OrderColumn.FinishedLength) || own.ContainsKey(OrderColumn.BowLength);
            var cells = common
                .Where(c => !own.ContainsKey(c.Key) && !(hasLength && c.Key == OrderColumn.BowLength))
                .Concat(own)
                .ToDictionary(c => c.Key, c => c.Value);
            if (!NameReader.TryReadName(section.Name, out var piece, out var error))
            {
                section.Report(null, section.Name, error);
                continue;
            }

            Check(file, section, cells, bareUnit, colors, problems);
            pieces.Add(new BowPiece(piece, cells));
        }

        return new BowRecipe(name, bow, also, pieces);
    }

    private static Dictionary<string, string> Cells(TomlSection section) => BowRecipe.Columns
        .Select(column => (Column: column, Text: section.Cell(column)))
        .Where(c => c.Text is { Length: > 0 })
        .ToDictionary(c => c.Column, c => c.Text!);

    /// <summary>Each cell must be one that an order may have.</summary>
    private static void Check(
        TomlFile file, TomlSection section, Dictionary<string, string> cells, LengthUnit bareUnit, ColorNames colors, List<Problem> problems)
    {
        string[] columns = [.. cells.Keys, OrderColumn.Order, OrderColumn.Piece];
        var row = new OrderRow(file.Name, section.Line, columns, [.. cells.Values, "0", "piece"]);
        var found = new List<Problem>();
        OrderCells.ReadLine(row, bareUnit, new KnownCells(colors), OrderSlip.Blank, found);
        problems.AddRange(found.Select(p => p with { At = p.At with { Column = $"[{section.Name}] {p.At.Column}" } }));
    }
}
