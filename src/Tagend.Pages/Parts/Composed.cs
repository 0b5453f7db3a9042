using Tagend.Blocks;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Pages.Parts;

/// <summary>What became of a model: its pages, or the problems that keep it off the paper.</summary>
public sealed record Composed(IReadOnlyList<Page> Pages, IReadOnlyList<Problem> Problems)
{
    /// <summary>For pages with text that no paragraph has looked at: no pages, but problems, where the font lacks some of it.</summary>
    internal Composed IfWritable(Fonts fonts, Place at)
    {
        var missing = Pages.SelectMany(p => p.Inks).OfType<TextInk>()
            .Select(t => Paragraph.Missing(t.Text, t.Style.Weight, fonts))
            .OfType<Misfit>()
            .SelectMany(m => m.Reasons)
            .Distinct()
            .Select(reason => new Problem(at, null, reason))
            .ToList();
        return missing.Count == 0 ? this : new Composed([], missing);
    }
}
