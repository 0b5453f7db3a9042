using Tagend.Catalog;
using Tagend.Problems;

namespace Tagend.Station.Screens.Shop;

/// <summary>A setting in a form.</summary>
/// <param name="File">As <c>shop.toml</c>.</param>
/// <param name="Typed">What was typed and not taken; null for nothing.</param>
/// <param name="Mistakes">Of what was typed.</param>
/// <param name="Said">What a change did; null before one.</param>
public sealed record SettingView(string File, TemplateEntry Entry, string? Typed, IReadOnlyList<Problem> Mistakes, string? Said)
{
    /// <summary>As the file has it now.</summary>
    public string Value => Entry.IsOff ? "" : Entry.Value;

    public string Label => Entry.Key.Replace('_', ' ');

    public string Id => $"s-{Entry.Line}";
}

/// <summary>A section of a file.</summary>
public sealed record SettingGroup(string Name, IReadOnlyList<SettingView> Settings);

/// <summary>A file of settings in the list of them.</summary>
public sealed record SettingFile(string Name, bool IsShown)
{
    public string Title => Path.GetFileNameWithoutExtension(Name).Replace('-', ' ');

    public string Link => $"/shop?file={Uri.EscapeDataString(Name)}";
}

/// <summary>The screen of the shop.</summary>
/// <param name="Mistakes">Of all files: somebody edited them by hand.</param>
/// <param name="Sheets">Label sheets that have an outline to print.</param>
public sealed record ShopModel(
    string File,
    IReadOnlyList<SettingFile> Files,
    IReadOnlyList<SettingGroup> Groups,
    IReadOnlyList<Problem> Mistakes,
    IReadOnlyList<string> Sheets,
    string Folder,
    string Book);

/// <summary>What was said to something the shop asked for.</summary>
public sealed record ShopAnswer(string Sentence, bool IsGood);
