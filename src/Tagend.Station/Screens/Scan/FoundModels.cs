using Tagend.Jobs;
using Tagend.Specs;

namespace Tagend.Station.Screens.Scan;

/// <summary>The screen of scanning, before anything was found.</summary>
public sealed record ScanModel;

/// <summary>What was found in one picture, or with one line of a scanner.</summary>
/// <param name="Items">One at least.</param>
/// <param name="Title">Of several.</param>
public sealed record FoundModel(IReadOnlyList<FoundItem> Items, string Title = "");

/// <summary>A code that was found, or that none was.</summary>
public abstract record FoundItem;

/// <summary>The tag of a piece.</summary>
/// <param name="Job">The issue in the job book that it is; null where the book does not have it.</param>
/// <param name="News">What must be known of it, the gravest first.</param>
/// <param name="IsHeld">It must not be built from these papers.</param>
/// <param name="Setting">Of the posts, on the shop's tape.</param>
public sealed record FoundPiece(BuildSpec Spec, string Tag, PrintedJob? Job, IReadOnlyList<string> News, bool IsHeld, string Setting) : FoundItem;

/// <summary>The tag of a bag.</summary>
/// <param name="Pieces">Each with its revision.</param>
/// <param name="News">What must be known of them.</param>
public sealed record FoundBag(string Order, IReadOnlyList<(string Piece, int Revision)> Pieces, IReadOnlyList<string> News) : FoundItem;

/// <summary>A sentence: of a spool that was taken to the bench, of what cannot be read, or of nothing that was.</summary>
/// <param name="Text">What a code of others says; empty for none.</param>
public sealed record FoundMessage(string Sentence, string Text) : FoundItem
{
    /// <summary>It went well.</summary>
    public bool IsGood { get; init; }
}
