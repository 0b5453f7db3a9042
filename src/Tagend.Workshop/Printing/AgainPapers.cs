using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Workshop.Shops;

namespace Tagend.Workshop.Printing;

/// <summary>The papers of tags, in files named after order and piece; those of one run never take each other's names.</summary>
internal sealed class AgainPapers(ShopCatalog catalog, AgainPlan plan)
{
    private readonly Dictionary<string, (string Order, string Piece)> _taken = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="isBag">Bag and pieces, not one piece out of its bag.</param>
    /// <param name="problems">What does not fit is added; then nothing is written.</param>
    /// <exception cref="TagendException">A file cannot be written.</exception>
    public IReadOnlyList<PrintedPaper> Print(BuildSet set, bool isBag, List<Problem> problems)
    {
        if (plan.Kinds.Count == 0 || problems.Exists(p => p.Severity == Severity.Refusal))
        {
            return [];
        }

        var fonts = Fonts.Of(catalog.Folder);
        var setting = SettingOf(isBag);
        var documents = plan.Kinds
            .SelectMany(kind => Parts(set, kind).Select(part => (Name: NameOf(part, isBag && !kind.IsOfPieces, kind), Bound: Compose(part, kind, fonts, setting))))
            .ToList();
        problems.AddRange(documents.SelectMany(d => d.Bound.Problems));
        if (documents.Exists(d => d.Bound.Problems.Count > 0))
        {
            return [];
        }

        var date = set.Builds[0].Spec.Date;
        List<(PrintedPaper Paper, NewFile File)> files =
        [
            .. documents.SelectMany(d => d.Bound.Documents.Select(document =>
            {
                var path = Path.Combine(plan.Folder, $"{d.Name}.pdf");
                var title = $"Tagend {d.Name}";
                return (
                    new PrintedPaper(path, title, document.PageCount, document.Paper),
                    new NewFile(path, stream => document.Write(fonts, new PdfNote(title, date, document.Language ?? catalog.Words.Tag), stream)));
            })),
        ];
        using var turn = FolderTurn.Take(plan.Folder);
        AtomicFiles.Write([.. files.Select(f => f.File)]);
        return [.. files.Select(f => f.Paper)];
    }

    private PageSetting SettingOf(bool isBag)
    {
        var paper = plan.Paper ?? catalog.Shop.Paper;
        return new PageSetting
        {
            Paper = paper,
            BagStock = LabelStocks.Named(plan.Labels ?? catalog.Shop.BagStock, catalog),
            LoopStock = LabelStocks.Named(plan.Labels ?? catalog.Shop.LoopStock, catalog),
            StripStock = StripStock.Sheet(paper.Sheet),
            IsOfLoosePieces = !isBag,
        };
    }

    /// <summary>The set, or its pieces one by one where the kind is of pieces.</summary>
    private static IEnumerable<BuildSet> Parts(BuildSet set, IPageKind kind) =>
        kind.IsOfPieces ? set.Builds.Select(b => set with { Builds = [b] }) : [set];

    private Bound Compose(BuildSet set, IPageKind kind, Fonts fonts, PageSetting setting)
    {
        var batch = kind.Begin(catalog, fonts, setting);
        var laid = batch.Lay(set);
        if (laid.Problems.Count > 0)
        {
            return new Bound([], laid.Problems);
        }

        laid.Keep();
        return batch.Bind(new Lazy<BatchPull>(() => BatchPull.Of(set.Builds.Select(b => b.Spec), catalog.Shop)!));
    }

    /// <summary>A file's name without its ending: what a tag says must not lead to another folder, nor onto another piece's file.</summary>
    private string NameOf(BuildSet set, bool isBag, IPageKind kind)
    {
        var piece = isBag ? "" : set.Builds[0].Spec.Piece;
        var name = FileNames.Safe(isBag ? $"{set.Order}-{kind.FromTag}" : $"{set.Order}-{piece}-{kind.FromTag}");
        var (free, number) = (name, 1);
        while (!_taken.TryAdd(free, (set.Order, piece)) && _taken[free] != (set.Order, piece))
        {
            free = $"{name}-{++number}";
        }

        return free;
    }
}
