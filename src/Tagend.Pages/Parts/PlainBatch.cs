using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>A batch whose pages follow each other as their sets do.</summary>
/// <param name="compose">The pages of a set.</param>
/// <param name="bind">The sets that were kept and all their pages, drawn as the printer must be given them, to documents; of drafts no pages, to one document.</param>
internal sealed class PlainBatch(
    PageSetting setting, Fonts fonts, Func<BuildSet, IEnumerable<Composed>> compose, Func<IReadOnlyList<BuildSet>, IReadOnlyList<Page>, IEnumerable<Document>> bind) : IPageBatch
{
    private readonly List<BuildSet> _sets = [];
    private readonly List<Page> _pages = [];
    private readonly PdfDraft? _draft = setting.Draft is { } file ? new PdfDraft(fonts, file()) : null;

    /// <summary>Whether a bookmark leads to the first page of each set.</summary>
    public bool HasBookmarks { get; init; } = true;

    public LaidSet Lay(BuildSet set)
    {
        List<Composed> composed = [.. compose(set)];
        return new LaidSet([.. composed.SelectMany(c => c.Problems)], () =>
        {
            _sets.Add(set);
            foreach (var (i, page) in composed.SelectMany(c => c.Pages).Index())
            {
                Keep(setting.Scaled(HasBookmarks && i == 0 ? page with { Bookmarks = [Bookmark.Of(set)] } : page));
            }
        });
    }

    public Bound Bind(Lazy<BatchPull> pull) => new([.. bind(_sets, _pages).Select(d => d with { Draft = _draft })], []);

    private void Keep(Page page)
    {
        if (_draft is null)
        {
            _pages.Add(page);
        }
        else
        {
            _draft.Add(page);
        }
    }
}
