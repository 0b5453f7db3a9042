using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Pages;

/// <summary>What became of a model: its pages, or the problems that keep it off the paper.</summary>
public sealed record Composed(IReadOnlyList<Page> Pages, IReadOnlyList<Problem> Problems);
