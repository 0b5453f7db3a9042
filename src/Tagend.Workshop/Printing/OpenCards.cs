using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop.Books;

namespace Tagend.Workshop.Printing;

/// <summary>A card that is printed and not built yet, and whose posts would be set otherwise today.</summary>
/// <param name="Change">The setting as it would be, and as the card has it: <c>61 5/16 in (card 61 3/8 in)</c>.</param>
public sealed record OpenCard(string Order, string Piece, int Revision, string Change);

/// <summary>Cards that wait to be built, held to what the shop's builds have taught since they were printed.</summary>
public static class OpenCards
{
    /// <summary>Issues that are looked at, the newest first: a card that is older is hardly waiting.</summary>
    private const int MostIssues = 2_000;

    /// <summary>The cards that would have another post setting if they were printed now.</summary>
    /// <param name="material">Only of this strand material, by its name in the catalog; null for all.</param>
    /// <param name="strands">Only with this many strands; null for all.</param>
    /// <param name="date">The day it is.</param>
    /// <exception cref="Problems.TagendException">The book cannot be used.</exception>
    public static IReadOnlyList<OpenCard> Moved(IJobBook book, ShopCatalog catalog, string? material, int? strands, DateOnly date)
    {
        var taught = catalog with { Fits = FitMemory.Read(book, catalog) };
        return
        [
            .. book.Find(new JobSearch { IsOpen = true, IsNewestFirst = true }).Take(MostIssues)
                .DistinctBy(j => (j.Order, j.Piece))
                .Where(j => j.State is PieceState.Printed or PieceState.Remade)
                .Where(j => (material is null || j.Material == material) && (strands is null || j.Strands == strands))
                .Select(j => MovedOf(j, taught, date)).OfType<OpenCard>(),
        ];
    }

    private static OpenCard? MovedOf(PrintedJob job, ShopCatalog catalog, DateOnly date)
    {
        if (TagReader.Read(job.Tag) is not TagReading.Piece { Spec: var printed })
        {
            return null;
        }

        var file = OrderReader.Read(job.Order, Reorder.File([Reorder.CellsOf(printed, job.Slip)]), printed.Unit, new Dictionary<string, string>());
        if (SetBuilder.Build(file, new SpecBuilder(catalog, printed.Unit, date)).Pieces is not [{ Spec: { } now }])
        {
            return null;
        }

        var was = now.Posts.NearestMark(printed.Posts.Outside);
        return was == now.Posts.Tape ? null : new OpenCard(
            job.Order, job.Piece, job.Revision,
            $"{LengthWriter.Setting(now.Posts.Tape, printed.Unit)} (card {LengthWriter.Setting(was, printed.Unit)})");
    }
}
