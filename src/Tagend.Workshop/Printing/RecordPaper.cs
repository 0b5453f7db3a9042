using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Pages.Record;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop.Shops;

namespace Tagend.Workshop.Printing;

/// <summary>How the measured record of an order is printed.</summary>
public sealed record RecordPlan
{
    /// <summary>The folder for the files; it is made if need be.</summary>
    public required string Folder { get; init; }

    /// <summary>The paper of the record; null for the shop's own.</summary>
    public PaperSet? Paper { get; init; }

    /// <summary>As the files of words are named; null for the order's own, else the shop's.</summary>
    public string? Language { get; init; }

    /// <summary>The tags are printed again with the measured lengths.</summary>
    public bool HasTags { get; init; }

    /// <summary>The label stock of the tags; null for those of the shop.</summary>
    public string? Labels { get; init; }
}

/// <summary>What was measured of an order, on paper.</summary>
public static class RecordPaper
{
    /// <summary>The set of an order as the job book has it: the newest papers of each piece with the last build that stands.</summary>
    /// <param name="order">The order's number, in capitals as in the book.</param>
    /// <returns>Null where the book has no piece of it that is to be made.</returns>
    /// <exception cref="TagendException">The book cannot be used, or has a tag text that cannot be read.</exception>
    public static BuildSet? Of(string order, IJobBook book)
    {
        var newest = book.Find(new JobSearch { Order = order }).GroupBy(j => j.Piece).Select(p => p.Last()).Where(j => j.Mark != PieceState.Cancelled);
        var builds = newest.Select(Measured).ToValueList();
        return builds.Count == 0 ? null : new BuildSet(order, builds);
    }

    /// <summary>Prints the record, and the tags where they are wanted.</summary>
    /// <param name="set">As of <see cref="Of"/>.</param>
    /// <param name="date">The date of the documents.</param>
    /// <returns>The files; none, with the problems, where something does not fit.</returns>
    /// <exception cref="TagendException">There is no such language or stock, or a file cannot be written.</exception>
    public static (IReadOnlyList<PrintedPaper> Papers, IReadOnlyList<Problem> Problems) Print(BuildSet set, ShopCatalog catalog, RecordPlan plan, DateOnly date)
    {
        var problems = new List<Problem>();
        var slip = set.Builds[0].Slip;
        var name = plan.Language ?? (slip.Language.Length > 0 ? slip.Language : catalog.Shop.Language);
        var words = name == catalog.Words.Name ? catalog.Words : PaperLanguageReader.Read(catalog.Folder, name, problems);
        if (words is null)
        {
            return ([], problems);
        }

        var fonts = Fonts.Of(catalog.Folder);
        var paper = plan.Paper ?? catalog.Shop.Paper;
        var record = MeasuredRecord.Compose(set, catalog, words, slip.Units ?? catalog.Shop.Unit, paper.Sheet, fonts);
        problems.AddRange(record.Problems);
        List<Document> documents = [new Document($"{set.Order}-record", paper.Sheet, record.Pages) { Language = words.Tag }];
        if (plan.HasTags)
        {
            documents.AddRange(Tags(set, catalog, fonts, plan, problems).Select(d => d with { Name = $"{set.Order}-{d.Name}" }));
        }

        if (problems.Count > 0)
        {
            return ([], problems);
        }

        List<(PrintedPaper Paper, NewFile File)> files =
        [
            .. documents.Select(d =>
            {
                var made = new PrintedPaper(Path.Combine(plan.Folder, $"{FileNames.Safe(d.Name)}.pdf"), $"Tagend {d.Name}", d.PageCount, d.Paper);
                var note = new PdfNote(made.Title, date, d.Language ?? catalog.Words.Tag);
                return (made, new NewFile(made.Path, stream => d.Write(fonts, note, stream)));
            }),
        ];
        AtomicFiles.Write([.. files.Select(f => f.File)]);
        return ([.. files.Select(f => f.Paper)], []);
    }

    private static IReadOnlyList<Document> Tags(BuildSet set, ShopCatalog catalog, Fonts fonts, RecordPlan plan, List<Problem> problems)
    {
        var setting = new PageSetting
        {
            Paper = catalog.Shop.Paper,
            BagStock = LabelStocks.Named(plan.Labels ?? catalog.Shop.BagStock, catalog),
            LoopStock = LabelStocks.Named(plan.Labels ?? catalog.Shop.LoopStock, catalog),
            StripStock = StripStock.Sheet(catalog.Shop.Paper.Sheet),
        };
        var batch = new SetTags().Begin(catalog, fonts, setting);
        var laid = batch.Lay(set);
        problems.AddRange(laid.Problems);
        if (laid.Problems.Count > 0)
        {
            return [];
        }

        laid.Keep();
        return batch.Bind(new Lazy<BatchPull>(() => BatchPull.Of(set.Builds.Select(b => b.Spec), catalog.Shop)!)).Documents;
    }

    private static Build Measured(PrintedJob job)
    {
        if (TagReader.Read(job.Tag) is not TagReading.Piece { Spec: var spec })
        {
            throw new TagendException($"the tag text of {job.Order}/{job.Piece} in the job book cannot be read; print the piece again");
        }

        return new Build(spec, job.Slip)
        {
            Measured = job.Standing.LastOrDefault() is { Built: var built } logged
                ? new Measurement(
                    built.Measured, built.Turns, built.Load, built.Minutes, built.Lots, DateOnly.FromDateTime(logged.LoggedAt.UtcDateTime), built.Who)
                : null,
        };
    }
}
