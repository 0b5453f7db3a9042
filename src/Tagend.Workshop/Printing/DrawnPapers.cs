using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Workshop.Printing;

/// <summary>A paper that was drawn, to be looked at before it is printed.</summary>
/// <param name="Name">The name its file would have, without an ending.</param>
/// <param name="Paper">The paper of its first page.</param>
/// <param name="Pages">The number of its pages, 1 or more.</param>
public sealed record DrawnPaper(string Name, Paper Paper, int Pages);

/// <summary>The papers of sets as they would be printed: the same drawing that goes into the PDFs. May be used by several threads.</summary>
public sealed class DrawnPapers
{
    private readonly PrintRun _run;
    private readonly IReadOnlyList<Document> _documents;

    private DrawnPapers(PrintRun run, IReadOnlyList<Document> documents, IReadOnlyList<Problem> problems) =>
        (_run, _documents, Problems) = (run, documents, problems);

    /// <summary>What did not fit its paper, and how much room there is.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>The papers in the order of their kinds.</summary>
    public IReadOnlyList<DrawnPaper> Papers => [.. _documents.Select(d => new DrawnPaper(d.Name, d.Paper, d.Pages.Count))];

    /// <summary>Draws the papers of sets; what does not fit is on none.</summary>
    /// <exception cref="TagendException">A file that a paper needs cannot be read.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static DrawnPapers Of(IReadOnlyList<BuildSet> sets, ShopCatalog catalog, PrintPlan plan, CancellationToken stop)
    {
        var run = new PrintRun(catalog, plan);
        var (_, documents, problems) = run.Draw(sets, new Volume(1, 1), stop);
        return new DrawnPapers(run, documents, problems);
    }

    /// <summary>Writes a page as a PNG picture.</summary>
    /// <param name="paper">One of <see cref="Papers"/>, from 0.</param>
    /// <param name="page">From 0.</param>
    /// <param name="dotsPerInch">The picture's resolution.</param>
    /// <param name="output">Gets the picture.</param>
    public void WritePicture(int paper, int page, int dotsPerInch, Stream output) =>
        _run.WritePicture(_documents[paper].Pages[page], dotsPerInch, DotDepth.Gray, output);
}
