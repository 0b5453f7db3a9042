using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages.Parts;

/// <summary>What the papers of a batch are printed on, and which of their forms is wanted.</summary>
public sealed record PageSetting
{
    public required PaperSet Paper { get; init; }

    public required LabelStock BagStock { get; init; }

    public required LabelStock LoopStock { get; init; }

    /// <summary>Of the first sheet of labels.</summary>
    public SheetUse Use { get; init; } = SheetUse.Whole;

    public required StripStock StripStock { get; init; }

    public StripPositions Positions { get; init; } = StripPositions.Finished;

    /// <summary>Of customer sheets; null for the shop's own.</summary>
    public string? Language { get; init; }

    /// <summary>Of the printer; null where it was not measured.</summary>
    public PrinterScale? Scale { get; init; }

    /// <summary>A document has one paper only, for it goes to a print queue.</summary>
    public bool HasOnePaperADocument { get; init; }

    /// <summary>The sets are single pieces out of their bags.</summary>
    public bool IsOfLoosePieces { get; init; }

    /// <summary>Makes the file of a draft: pages are written as they come and not kept, where the kind's follow each other as its sets do. Null where pages are kept.</summary>
    public Func<FileStream>? Draft { get; init; }

    /// <summary>The same of labels, whose pages are also kept where pictures of them are wanted.</summary>
    public Func<FileStream>? LabelDraft { get; init; }

    /// <summary>The page as the printer must be given it.</summary>
    internal Page Scaled(Page page) => Scale is { } scale ? page.Through(scale) : page;

    /// <summary>The pages as the printer must be given them.</summary>
    internal IReadOnlyList<Page> Scaled(IReadOnlyList<Page> pages) =>
        Scale is null ? pages : [.. pages.Select(Scaled)];
}
