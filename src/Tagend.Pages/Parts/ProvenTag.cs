using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Pages.Parts;

/// <summary>Texts for codes, each read again before it is printed: a paper whose code is refused, or says another piece, looks right and is not.</summary>
internal static class ProvenTag
{
    /// <summary>The text of a piece's tag.</summary>
    /// <param name="at">The paper that it is for.</param>
    /// <param name="problem">What a reader would say of it; null where it says the piece, or is longer than any code and refused for that.</param>
    public static string Of(BuildSpec spec, Place at, out Problem? problem)
    {
        var text = TagWriter.Write(spec);
        problem = text.Length > TagReader.LongestText ? null : TagReader.Read(text) switch
        {
            TagReading.Piece { Spec: var read } when read == spec || SpecChange.Of(read, spec).Count == 0 => null,
            TagReading.Damaged damaged => new Problem(at, null, $"its code would not be read: {damaged.Message}"),
            _ => new Problem(at, null, "its code would be read as another piece"),
        };
        return text;
    }
}
