using Tagend.Pages.Card;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Pages.Pull;
using Tagend.Pages.Sheet;
using Tagend.Pages.Strip;

namespace Tagend.Pages;

/// <summary>The kinds of paper there are for sets. A new kind is an entry here.</summary>
public static class PageKinds
{
    /// <summary>In the order their files are named and sent to a printer.</summary>
    public static IReadOnlyList<IPageKind> All { get; } = [new JigCards(), new SetTags(), new CustomerSheets(), new PullSheets(), new MarkingStrips(), new PackingLists()];
}
