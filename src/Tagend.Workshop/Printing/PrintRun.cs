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
    private readonly Fonts _fonts = fonts ?? FontsOf(catalog);

    /// <summary>Reads the shop's fonts.</summary>
    /// <exception cref="TagendException">A file is missing or no font.</exception>
    public static Fonts FontsOf(ShopCatalog catalog) => Fonts.Load(Path.Combine(catalog.Folder, "fonts"));

    /// <returns>What became of the sets, and the files, ready to be written.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public (PrintedSets Printed, IReadOnlyList<NewFile> Files) Compose(IReadOnlyList<BuildSet> sets, Volume volume, CancellationToken stop)
    {
        var (good, documents, problems) = Draw(sets, volume, stop);
        var whose = good.Count == 1 ? good[0].Order : Counted.Of(good.Count, "set");
        var printed = new PrintedSets(
            good,
            [.. sets.Except(good).Select(s => s.Order)],
            problems,
            [.. documents.Select(d => new PrintedPaper(PathOf($"{d.Name}.pdf"), TitleOf(d, whose), d.PageCount, d.Paper))]);
        IReadOnlyList<NewFile> files = [.. documents.SelectMany(d => Files(d, NoteOf(d, good)))];
        var next = documents.SelectMany(d => d.NextLabels).GroupBy(n => n.Key).ToDictionary(n => n.Key, n => n.Last().Value);
        return (printed with { Files = [.. files.Select(f => f.Path)], NextLabels = next }, files);
    }

    /// <summary>Makes the papers of sets, and no file.</summary>
    /// <returns>The sets that are on every paper, their papers, and what did not fit.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public (IReadOnlyList<BuildSet> Sets, IReadOnlyList<Document> Documents, IReadOnlyList<Problem> Problems) Draw(
        IReadOnlyList<BuildSet> sets, Volume volume, CancellationToken stop)
    {
        var drafts = volume.Count > 1 && plan.PreviewDpi is null ? draft : null; // where there is one, all cores write its files
        var setting = plan.Setting with
        {
            Use = volume.Number == 1 ? plan.Setting.Use : SheetUse.Whole,
            Draft = drafts,
            LabelDraft = plan.LabelDpi is null ? drafts : null,
        };
        var batches = plan.Kinds.Select(kind => kind.Begin(catalog, _fonts, setting)).ToList();
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

    private static string TitleOf(Document document, string whose) => $"Tagend {document.Name}, {whose}";

    private PdfNote NoteOf(Document document, IReadOnlyList<BuildSet> sets) =>
        new($"Tagend {document.Name}", sets[0].Builds[0].Spec.Date, document.Language ?? catalog.Words.Tag);

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
        var shelf = volume.Number == 1 ? plan.Shelf : [];
        var pull = new Lazy<BatchPull>(() => BatchPull.Of(good.SelectMany(s => s.Builds).Select(b => b.Spec), catalog.Shop, shelf)!);
        var bound = batches.Select(batch => batch.Bind(pull)).ToList();
        problems.AddRange(bound.SelectMany(b => b.Problems));
        return bound.SelectMany(b => b.Documents).Where(d => d.PageCount > 0);
    }

    private IEnumerable<NewFile> Files(Document document, PdfNote note)
    {
        yield return new NewFile(PathOf($"{document.Name}.pdf"), stream => document.Write(_fonts, note, stream));
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
