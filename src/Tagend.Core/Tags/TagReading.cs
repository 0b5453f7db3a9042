using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Tags;

/// <summary>What a scanned text turned out to be.</summary>
/// <param name="Text">As it was scanned.</param>
public abstract record TagReading(string Text)
{
    /// <summary>A piece, whole.</summary>
    public sealed record Piece(string Text, BuildSpec Spec) : TagReading(Text);

    /// <summary>A bag: what is in it, and the pieces' specs unless the bag's tag had no room for them.</summary>
    public sealed record Bag(string Text, string Order, ValueList<BagEntry> Contents, ValueList<BuildSpec> Specs)
        : TagReading(Text);

    /// <summary>A spool of material or thread.</summary>
    public sealed record Spool(string Text, ReceivedSpool Received) : TagReading(Text);

    /// <summary>One of ours, but damaged: the check does not fit, or a part of it makes no sense.</summary>
    public sealed record Damaged(string Text, string Message) : TagReading(Text);

    /// <summary>One of ours, of a version that this program does not know.</summary>
    public sealed record Later(string Text, string Message) : TagReading(Text);

    /// <summary>Somebody else's code.</summary>
    public sealed record Foreign(string Text, string Message) : TagReading(Text);
}

/// <summary>A piece on a bag's tag.</summary>
public sealed record BagEntry(string Piece, int Revision);
