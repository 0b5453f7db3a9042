using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;

namespace Tagend.Workshop.Books;

/// <summary>Spools as they are written down when they come, all texts.</summary>
/// <param name="Name">Of a material or a thread in the catalog.</param>
/// <param name="Color">By any of its names; empty for none.</param>
/// <param name="Lot">As it stands on the spool.</param>
/// <param name="Length">On each, with its unit; empty for what the catalog says of a full one.</param>
/// <param name="Count">How many that are alike.</param>
public sealed record SpoolForm(string Name, string Color, string Lot, string Length, int Count);

/// <summary>What is wrong with a value of a form.</summary>
/// <param name="Field">The value: <c>name</c>, <c>color</c>, <c>lot</c>, <c>length</c> or <c>count</c>.</param>
public sealed record SpoolFault(string Field, string Message);

/// <summary>Reads what is written down when spools come.</summary>
public static class SpoolReception
{
    private const int MostAtOnce = 100;

    /// <summary>The spools of a form, or everything that is wrong with it.</summary>
    public static (IReadOnlyList<NewSpool> Spools, IReadOnlyList<SpoolFault> Faults) Read(SpoolForm form, ShopCatalog catalog, DateOnly today)
    {
        var faults = new List<SpoolFault>();
        var name = form.Name.Trim().ToLowerInvariant();
        var kind = catalog.Materials.ContainsKey(name) ? StockKind.Strand : StockKind.Thread;
        if (kind == StockKind.Thread && !catalog.Threads.ContainsKey(name))
        {
            faults.Add(new SpoolFault("name", $"\"{form.Name}\": expected a material or thread of the catalog: {string.Join(", ", catalog.Materials.Keys.Concat(catalog.Threads.Keys))}"));
        }

        var color = form.Color.Trim().Length == 0 ? "" : catalog.Colors.Of(form.Color);
        if (color.Length > 0 && !NameReader.TryReadName(color, out _, out var colorError))
        {
            faults.Add(new SpoolFault("color", $"\"{form.Color}\": {colorError}"));
        }

        var lot = form.Lot.Trim().ToUpperInvariant();
        if (BuiltQuestion.LotFault(lot) is { } lotError)
        {
            faults.Add(new SpoolFault("lot", $"\"{form.Lot}\": {lotError}"));
        }

        if (form.Count is < 1 or > MostAtOnce)
        {
            faults.Add(new SpoolFault("count", FormattableString.Invariant($"{form.Count}: expected 1 to {MostAtOnce} spools")));
        }

        var length = LengthOf(form, kind, name, catalog);
        if (length is null)
        {
            faults.Add(new SpoolFault("length", form.Length.Trim().Length == 0
                ? "what is on the spool is needed, with its unit, such as 1000 yd or 900 m: the catalog does not say what a full one holds"
                : $"\"{form.Length}\": expected what is on the spool with its unit, such as 1000 yd or 900 m"));
        }

        return faults.Count > 0
            ? ([], faults)
            : ([.. Enumerable.Repeat(new NewSpool(kind, name, color, lot, length!.Value, today), form.Count)], faults);
    }

    /// <returns>To whole millimeters; null where it cannot be read, or the catalog does not say it.</returns>
    private static Length? LengthOf(SpoolForm form, StockKind kind, string name, ShopCatalog catalog)
    {
        if (form.Length.Trim().Length > 0)
        {
            return SpoolLengthReader.TryRead(form.Length, out var read) && read > Length.Zero ? read : null;
        }

        var full = kind == StockKind.Strand ? catalog.Materials.GetValueOrDefault(name)?.Spool : catalog.Threads.GetValueOrDefault(name)?.Spool;
        return full is { } length ? Length.FromMillimeters(Math.Round(length.Millimeters)) : null;
    }
}
