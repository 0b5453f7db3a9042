using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;

namespace Tagend.Books;

/// <summary>Specs to fill books with, all of them the first of the demo orders under another number.</summary>
public sealed class Pieces
{
    private readonly BuildSpec _spec;

    /// <param name="root">The folder that holds Tagend.slnx.</param>
    public Pieces(string root)
    {
        var catalog = CatalogReader.Read(Path.Combine(root, "templates"), [])!;
        var file = OrderReader.Read(
            "demo.csv", File.ReadAllBytes(Path.Combine(root, "demo-orders", "demo.csv")), catalog.Shop.Unit, catalog.Shop.Columns);
        _spec = new SpecBuilder(catalog, catalog.Shop.Unit, new DateOnly(2026, 3, 14)).Build(file.Lines[0], [])!;
    }

    /// <summary>A piece as its order has it.</summary>
    public Build Of(string order, string customer = "", string bow = "", int day = 0) =>
        new(_spec with { Order = order, Date = _spec.Date.AddDays(day) }, new OrderSlip(customer, bow, "", ""));

    /// <summary>A build of it that takes a meter from spool 1.</summary>
    public AsBuilt Built(IEnumerable<string> lots) => BuiltQuestion.CardOf(_spec) with
    {
        Lots = lots.ToValueList(),
        Spools = [new SpoolUse(1, Length.FromMillimeters(1000))],
    };
}
