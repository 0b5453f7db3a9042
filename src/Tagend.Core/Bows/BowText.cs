using System.Globalization;
using System.Text;
using Tagend.Catalog;
using Tagend.Orders;
using Tagend.Specs;

namespace Tagend.Bows;

/// <summary>Writes pieces that were built or ordered as a bow of the book.</summary>
public static class BowText
{
    /// <summary>What all pieces of a bow may have in common.</summary>
    private static readonly string[] Common = [OrderColumn.DrawWeight, OrderColumn.Material, OrderColumn.Strands, OrderColumn.Twists];

    /// <summary>The file of a bow. Strand colors are the customer's choice and are not kept.</summary>
    /// <param name="bow">As its owners call it.</param>
    /// <param name="catalog">Of the shop: the twist that it gives a piece anyway, a bow need not repeat.</param>
    public static string Of(string bow, IEnumerable<BuildSpec> specs, ShopCatalog catalog)
    {
        var pieces = specs.Select(s => (s.Piece, Cells: CellsOf(s, catalog))).ToList();
        var common = Common
            .Where(c => pieces.TrueForAll(p => p.Cells.TryGetValue(c, out var text) && text == pieces[0].Cells[c]))
            .ToList();
        var text = new StringBuilder("# A bow as its orders name it: what is here, an order need not say. An order's own cells win.\n");
        text.Append(CultureInfo.InvariantCulture, $"bow = {Quoted(bow)}\nalso = []    # other names of it\n");
        common.ForEach(c => text.Append(CultureInfo.InvariantCulture, $"{c} = {Written(pieces[0].Cells[c])}\n"));
        foreach (var (piece, cells) in pieces)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[{(piece.All(char.IsAsciiLetterOrDigit) ? piece : Quoted(piece))}]\n");
            foreach (var (column, cell) in cells.Where(c => !common.Contains(c.Key)))
            {
                text.Append(CultureInfo.InvariantCulture, $"{column} = {Written(cell)}\n");
            }
        }

        return text.ToString();
    }

    private static Dictionary<string, string> CellsOf(BuildSpec spec, ShopCatalog catalog) => Reorder.CellsOf(spec, OrderSlip.Blank)
        .Where(c => c.Value.Length > 0 && c.Key != OrderColumn.Colors && BowRecipe.Columns.Contains(c.Key))
        .Where(c => c.Key != OrderColumn.Twists || !IsUsual(spec, catalog))
        .ToDictionary(c => c.Key, c => c.Value);

    private static bool IsUsual(BuildSpec spec, ShopCatalog catalog) =>
        catalog.Plans.TryGetValue(spec.Kind, out var plan)
        && catalog.Materials.TryGetValue(spec.Bundle.Material, out var material)
        && Twist.TurnsFor(catalog.TurnsPerInch(plan, material), spec.FinishedLength) == spec.Twist.Turns;

    /// <summary>A whole number as it is, such as strands; all else is a text.</summary>
    private static string Written(string cell) => cell.All(char.IsAsciiDigit) ? cell : Quoted(cell);

    private static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
