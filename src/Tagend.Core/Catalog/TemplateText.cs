using System.Text.RegularExpressions;

namespace Tagend.Catalog;

/// <summary>How a value is written in TOML.</summary>
public enum TemplateValue
{
    /// <summary>In quotes.</summary>
    Text,

    /// <summary>A number, true or false.</summary>
    Plain,

    /// <summary>Several texts in brackets.</summary>
    List,
}

/// <summary>An entry of a template file, as it is written.</summary>
/// <param name="Section">The section's name; empty above the first one.</param>
/// <param name="Key">The key, without quotes.</param>
/// <param name="Value">The text in the quotes, the texts of a list with semicolons between them, or the number.</param>
/// <param name="Kind">How the value is written.</param>
/// <param name="Remark">What the comments beside it and below it say.</param>
/// <param name="Line">The line it is on, from 1.</param>
/// <param name="IsOff">It stands in a comment: the shop has not given it.</param>
public sealed record TemplateEntry(string Section, string Key, string Value, TemplateValue Kind, string Remark, int Line, bool IsOff);

/// <summary>
/// The text of a template file, to be changed entry by entry: comments, order and all other entries stay as they are. Entries
/// of one line are known; what spans lines is left alone. Immutable.
/// </summary>
/// <remarks>Whether the text means what it should is for the reader of the templates to say.</remarks>
public sealed partial class TemplateText
{
    private readonly string[] _lines;

    private TemplateText(string[] lines, IReadOnlyList<TemplateEntry> entries) => (_lines, Entries) = (lines, entries);

    /// <summary>The entries in the order of the file.</summary>
    public IReadOnlyList<TemplateEntry> Entries { get; }

    /// <summary>Reads a file's text, whatever is wrong with it.</summary>
    public static TemplateText Of(string text)
    {
        var lines = text.Split('\n');
        var entries = new List<TemplateEntry>();
        var section = "";
        for (var i = 0; i < lines.Length; i++)
        {
            if (SectionPattern().Match(lines[i]) is { Success: true } named)
            {
                section = Unquoted(named.Groups["name"].Value);
            }
            else if (EntryPattern().Match(lines[i]) is { Success: true } entry)
            {
                var more = lines.Skip(i + 1).TakeWhile(l => BelowPattern().IsMatch(l)).Select(l => l.Trim().TrimStart('#').Trim());
                var (value, kind) = Read(entry.Groups["value"].Value);
                entries.Add(new TemplateEntry(
                    section,
                    Unquoted(entry.Groups["key"].Value),
                    value,
                    kind,
                    string.Join(' ', more.Prepend(entry.Groups["remark"].Value.TrimStart('#').Trim()).Where(t => t.Length > 0)),
                    i + 1,
                    entry.Groups["off"].Success));
            }
        }

        return new TemplateText(lines, entries);
    }

    /// <summary>The text with another value in an entry, which is no comment from then on.</summary>
    /// <param name="entry">One of <see cref="Entries"/>.</param>
    /// <param name="value">As <see cref="TemplateEntry.Value"/>.</param>
    public string With(TemplateEntry entry, string value)
    {
        var match = EntryPattern().Match(_lines[entry.Line - 1]);
        var written = match.Groups["value"];
        var line = Written(value, entry.Kind);
        var before = _lines[entry.Line - 1][match.Groups["key"].Index..written.Index];
        var after = _lines[entry.Line - 1][(written.Index + written.Length)..];
        // The comment stays in its column where there is room.
        var slack = written.Length - line.Length;
        after = after.TrimStart().Length > 0 ? new string(' ', Math.Max(1, after.Length - after.TrimStart().Length + slack)) + after.TrimStart() : after;
        return WithLine(entry, before + line + after);
    }

    /// <summary>The text with an entry in a comment, as if the shop had not given it.</summary>
    /// <param name="entry">One of <see cref="Entries"/>.</param>
    public string Without(TemplateEntry entry) => WithLine(entry, entry.IsOff ? _lines[entry.Line - 1] : $"# {_lines[entry.Line - 1]}");

    private string WithLine(TemplateEntry entry, string line) => string.Join('\n', _lines.Select((l, i) => i == entry.Line - 1 ? line : l));

    private static (string Value, TemplateValue Kind) Read(string written) => written[0] switch
    {
        '"' => (Unquoted(written), TemplateValue.Text),
        '[' => (string.Join("; ", TextPattern().Matches(written).Select(m => Unquoted(m.Value))), TemplateValue.List),
        _ => (written, TemplateValue.Plain),
    };

    private static string Written(string value, TemplateValue kind) => kind switch
    {
        TemplateValue.Text => Quoted(value),
        TemplateValue.List => $"[{string.Join(", ", value.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Quoted))}]",
        _ => PlainPattern().IsMatch(value) ? value : Quoted(value),
    };

    private static string Quoted(string text) => $"\"{string.Concat(text.Select(Escaped))}\"";

    private static string Escaped(char c) => c is '"' or '\\' ? $"\\{c}"
        : char.IsControl(c) ? FormattableString.Invariant($"\\u{(int)c:X4}")
        : c.ToString();

    private static string Unquoted(string written) => written.Length > 1 && written[0] == '"'
        ? EscapePattern().Replace(written[1..^1], m => m.Value[1] is 'u' ? ((char)Convert.ToInt32(m.Value[2..], 16)).ToString() : m.Value[1..])
        : written;

    [GeneratedRegex(@"^\[(?<name>[^\[\]]+)\]\s*(#.*)?\r?$")]
    private static partial Regex SectionPattern();

    [GeneratedRegex(@"^(?<off># ?)?(?<key>[A-Za-z0-9_-]+|""[^""]*"")\s*=\s*(?<value>""(?:\\.|[^""\\])*""|\[(?:[^\]""]|""(?:\\.|[^""\\])*"")*\]|[^\s#""\[\]]+)\s*(?<remark>#.*)?\r?$")]
    private static partial Regex EntryPattern();

    /// <summary>A comment far to the right goes on about the entry above it.</summary>
    [GeneratedRegex(@"^ {8,}#")]
    private static partial Regex BelowPattern();

    [GeneratedRegex(@"""(?:\\.|[^""\\])*""")]
    private static partial Regex TextPattern();

    [GeneratedRegex(@"\\(u[0-9A-Fa-f]{4}|.)")]
    private static partial Regex EscapePattern();

    [GeneratedRegex(@"^(true|false|[+-]?\d+(\.\d+)?)$")]
    private static partial Regex PlainPattern();
}
