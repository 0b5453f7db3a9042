using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Workshop.Printing;

/// <summary>Makes the papers of sets; a set that does not fit one of them is on none. May be used by several threads.</summary>
/// <param name="draft">Makes the file of a draft; null where no pages are drafted.</param>
/// <param name="fonts">The shop's, where they are read already.</param>
internal sealed class PrintRun(ShopCatalog catalog, PrintPlan plan, Func<FileStream>? draft = null, Fonts? fonts = null)
{
    private readonly Fonts _fonts = fonts ?? Fonts.Of(catalog.Folder);

    /// <summary>A document, and what writes it as a PDF.</summary>
    private sealed record Drawn(Document Document, Action<Stream> Write);

    /// <returns>What became of the sets, and the files, ready to be written.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public (PrintedSets Printed, IReadOnlyList<NewFile> Files) Compose(IReadOnlyList<BuildSet> sets, Volume volume, CancellationToken stop)
    {
        var (good, papers, problems) = sets.Count == 1 && volume.Count == 1 ? DrawAlone(sets[0], stop) : DrawAll(sets, volume, stop);
        var whose = good.Count == 1 ? good[0].Order : Counted.Of(good.Count, "set");
        var printed = new PrintedSets(
            good,
            [.. sets.Except(good).Select(s => s.Order)],
            problems,
            [.. papers.Select(p => p.Document).Select(d => new PrintedPaper(PathOf($"{d.Name}.pdf"), TitleOf(d, whose), d.PageCount, d.Paper))]);
        IReadOnlyList<NewFile> files = [.. papers.SelectMany(Files)];
        var next = papers.SelectMany(p => p.Document.NextLabels).GroupBy(n => n.Key).ToDictionary(n => n.Key, n => n.Last().Value);
        return (printed with { Files = [.. files.Select(f => f.Path)], NextLabels = next }, files);
    }

    /// <summary>Makes the papers of sets, and no file.</summary>
    /// <returns>The sets that are on every paper, their papers, and what did not fit.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public (IReadOnlyList<BuildSet> Sets, IReadOnlyList<Document> Documents, IReadOnlyList<Problem> Problems) Draw(
        IReadOnlyList<BuildSet> sets, Volume volume, CancellationToken stop)
    {
        var drafts = volume.Count > 1 && plan.PreviewDpi is null ? draft : null; // where there is one, all cores write its files
        var batches = Begin(plan.Setting with
        {
            Use = volume.Number == 1 ? plan.Setting.Use : SheetUse.Whole,
            Draft = drafts,
            LabelDraft = plan.LabelDpi is null ? drafts : null,
        });
        var problems = new List<Problem>();
        var good = new List<BuildSet>();
        foreach (var set in sets)
        {
            stop.ThrowIfCancellationRequested();
            var laid = volume.Count > 1 ? batches.ConvertAll(batch => batch.Lay(set)) : Lay(set, batches);
            var found = laid.SelectMany(l => l.Problems).ToList();
            problems.AddRange(found.Except(problems));
            if (found.Count == 0)
            {
                good.Add(set);
                laid.ForEach(l => l.Keep());
            }
        }

        return (good, [.. Bind(good, batches, volume, problems).Select(d => d with { Name = volume.FileOf(d.Name) })], problems);
    }

    /// <summary>Writes a page as it is read on a screen.</summary>
    public void WritePicture(Page page, int dotsPerInch, DotDepth depth, Stream output) =>
        PngFile.Write(page.Readable, _fonts, dotsPerInch, depth, output);

    private List<IPageBatch> Begin(PageSetting setting) => plan.Kinds.Select(kind => kind.Begin(catalog, _fonts, setting)).ToList();

    private (IReadOnlyList<BuildSet> Sets, IReadOnlyList<Drawn> Papers, IReadOnlyList<Problem> Problems) DrawAll(
        IReadOnlyList<BuildSet> sets, Volume volume, CancellationToken stop)
    {
        var (good, documents, problems) = Draw(sets, volume, stop);
        return (good, [.. documents.Select(d => new Drawn(d, pdf => d.Write(_fonts, NoteOf(d, good[0]), pdf)))], problems);
    }

    /// <summary>A set that is all there is to print: no kind waits for another one, and its PDF is made while others are laid out. What does not fit one of them is on none.</summary>
    private (IReadOnlyList<BuildSet> Sets, IReadOnlyList<Drawn> Papers, IReadOnlyList<Problem> Problems) DrawAlone(BuildSet set, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        var pull = PullOf([set], plan.Shelf);
        var kinds = Begin(plan.Setting).ConvertAll(batch => Task.Run(() => OfKind(batch)));
        var written = kinds.ConvertAll(kind => kind.ContinueWith(
            k => k.Result.Documents.Select(Written).ToList(), default, TaskContinuationOptions.PreferFairness, TaskScheduler.Default)); // after kinds that wait
        var drawn = kinds.ConvertAll(kind => kind.GetAwaiter().GetResult());
        List<Problem> misfits = [.. drawn.SelectMany(d => d.Misfits).Distinct()];
        return misfits.Count > 0
            ? ([], [], misfits)
            : ([set], [.. Enumerable.Range(0, kinds.Count).SelectMany(PapersOf)], [.. drawn.SelectMany(d => d.Problems)]);

        IEnumerable<Drawn> PapersOf(int kind) => drawn[kind].Documents.Select(
            (document, i) => new Drawn(document, pdf => pdf.Write(written[kind].GetAwaiter().GetResult()[i])));

        (IReadOnlyList<Problem> Misfits, IReadOnlyList<Document> Documents, IReadOnlyList<Problem> Problems) OfKind(IPageBatch batch)
        {
            var laid = batch.Lay(set);
            if (laid.Problems.Count > 0)
            {
                return (laid.Problems, [], []);
            }

            laid.Keep();
            var bound = batch.Bind(pull);
            return ([], [.. bound.Documents.Where(d => d.PageCount > 0)], bound.Problems);
        }

        byte[] Written(Document document)
        {
            using var pdf = new MemoryStream();
            document.Write(_fonts, NoteOf(document, set), pdf);
            return pdf.ToArray();
        }
    }

    private static string TitleOf(Document document, string whose) => $"Tagend {document.Name}, {whose}";

    private PdfNote NoteOf(Document document, BuildSet first) =>
        new($"Tagend {document.Name}", first.Builds[0].Spec.Date, document.Language ?? catalog.Words.Tag);

    private Lazy<BatchPull> PullOf(IReadOnlyList<BuildSet> sets, IReadOnlyList<ShelfSpool> shelf) =>
        new(() => BatchPull.Of(sets.SelectMany(s => s.Builds).Select(b => b.Spec), catalog.Shop, shelf)!);

    /// <summary>As many kinds at the same time as there are cores, for a thread more takes longer to start than it gains; of several volumes each has a core to itself.</summary>
    private static List<LaidSet> Lay(BuildSet set, List<IPageBatch> batches)
    {
        var (laid, next) = (new LaidSet[batches.Count], -1);
        var others = Enumerable.Range(1, Math.Min(Environment.ProcessorCount, batches.Count) - 1).Select(_ => Task.Run(LayNext)).ToList();
        LayNext();
        others.ForEach(other => other.GetAwaiter().GetResult());
        return [.. laid];

        void LayNext()
        {
            for (var i = Interlocked.Increment(ref next); i < laid.Length; i = Interlocked.Increment(ref next))
            {
                laid[i] = batches[i].Lay(set);
            }
        }
    }

    private IEnumerable<Document> Bind(List<BuildSet> good, List<IPageBatch> batches, Volume volume, List<Problem> problems)
    {
        if (good.Count == 0)
        {
            return [];
        }

        // What the first volume leaves on the spools is not known while others are made beside it.
        var pull = PullOf(good, volume.Number == 1 ? plan.Shelf : []);
        var bound = batches.Select(batch => batch.Bind(pull)).ToList();
        problems.AddRange(bound.SelectMany(b => b.Problems));
        return bound.SelectMany(b => b.Documents).Where(d => d.PageCount > 0);
    }

    private IEnumerable<NewFile> Files(Drawn drawn)
    {
        var document = drawn.Document;
        yield return new NewFile(PathOf($"{document.Name}.pdf"), drawn.Write);
        foreach (var (number, page) in document.Pages.Index())
        {
            if (plan.PreviewDpi is { } preview)
            {
                yield return Picture($"{document.Name}-{number + 1:00}.png", page, preview, DotDepth.Gray);
            }

            if (plan.LabelDpi is { } dpi && document.IsOfLabels)
            {
                yield return Picture($"{document.Name}-{dpi}dpi-{number + 1:00}.png", page, dpi, DotDepth.BlackOrWhite);
            }
        }
    }

    private NewFile Picture(string file, Page page, int dotsPerInch, DotDepth depth) =>
        new(PathOf(file), stream => WritePicture(page, dotsPerInch, depth, stream));

    private string PathOf(string file) => Path.Combine(plan.Folder, file);
}
