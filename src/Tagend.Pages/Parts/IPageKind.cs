using Tagend.Catalog;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>A kind of paper that sets are printed on.</summary>
public interface IPageKind
{
    /// <summary>As the command line and the files name it: <c>cards</c>.</summary>
    string Name { get; }

    /// <summary>One of them, in words: <c>jig card</c>.</summary>
    string Title { get; }

    /// <summary>Printed where nothing is chosen.</summary>
    bool IsUsual { get; }

    /// <summary>Lengths are taken from it, so that a printer should have been measured.</summary>
    bool IsMeasuredBy => false;

    /// <summary>What it is called when it is printed again from a tag alone, one of them: <c>card</c>. Null where a tag does not serve.</summary>
    string? FromTag => null;

    /// <summary>Printed again, it is a file a piece, and not one a set.</summary>
    bool IsOfPieces => false;

    /// <summary>Begins a batch, and reads what it needs for all of its sets.</summary>
    /// <exception cref="TagendException">A file it needs cannot be read.</exception>
    IPageBatch Begin(ShopCatalog catalog, Fonts fonts, PageSetting setting);
}

/// <summary>The papers of one kind for one batch of sets.</summary>
public interface IPageBatch
{
    /// <summary>Lays a set out; other kinds may do so at the same time.</summary>
    LaidSet Lay(BuildSet set);

    /// <summary>The documents of all sets that were kept, one at least.</summary>
    /// <param name="pull">Of these sets.</param>
    Bound Bind(Lazy<BatchPull> pull);
}

/// <summary>A set on one kind of paper.</summary>
/// <param name="Problems">Of what does not fit; then it is not kept.</param>
/// <param name="Keep">Adds it to its batch: called in the order of the file for what is good on every paper.</param>
public sealed record LaidSet(IReadOnlyList<Problem> Problems, Action Keep);

/// <summary>The documents of a batch, or what keeps a paper of the whole batch from being made.</summary>
public sealed record Bound(IReadOnlyList<Document> Documents, IReadOnlyList<Problem> Problems);
