using System.Text;
using Tagend.Measures;

namespace Tagend.Imports;

/// <summary>Writes a proposed map as the TOML that <see cref="MapReader"/> reads.</summary>
internal static class MapText
{
    public static string Of(MapDraft draft, string title)
    {
        var text = new StringBuilder();
        text.Append("# How the files of one source are read as orders. Proposed from a file: look it through.\n");
        text.Append($"title = {Quoted(title)}\n");
        if (draft.Unit is { } unit)
        {
            text.Append($"unit = \"{(unit == LengthUnit.Inch ? "in" : "mm")}\"    # of a length that names none\n");
        }

        List(text, "blank", draft.Blank, "texts that mean an empty cell");
        List(text, "carry", draft.Carry, "an empty cell here means the same as in the order's first row");
        Section(text, "columns", "Headers of the file, and what each is: a column of an order, PIECE.COLUMN, or \"never\" for what is printed nowhere.");
        foreach (var (header, targets) in draft.Columns)
        {
            Entry(text, header, targets, draft.NotUnderstood.Contains(header) ? "not understood" : null);
        }

        if (draft.Joins.Count > 0)
        {
            Section(text, "join", "Several cells in one text.");
            foreach (var (target, template) in draft.Joins)
            {
                text.Append($"{Key(target.ToString())} = {Quoted(template)}\n");
            }
        }

        foreach (var (header, labels) in draft.Options)
        {
            Section(text, $"options.{Quoted(header)}", "Labels in this column, and what stands behind each. Others become notes.");
            foreach (var (label, targets) in labels)
            {
                Entry(text, label, targets, null);
            }
        }

        if (draft.Constants.Count > 0)
        {
            Section(text, "constants", "What every row has.");
            foreach (var (target, value) in draft.Constants)
            {
                text.Append($"{Key(target.ToString())} = {Quoted(value)}\n");
            }
        }

        foreach (var (target, values) in draft.Values)
        {
            Section(text, $"values.{Key(target)}", "Texts of the file, and what is read instead.");
            foreach (var (theirs, ours) in values)
            {
                text.Append($"{Quoted(theirs)} = {Quoted(ours)}\n");
            }
        }

        foreach (var rule in draft.LeaveOut)
        {
            text.Append($"\n[[leave_out]]\ncolumn = {Quoted(rule.Header)}\n");
            text.Append($"{(rule.Is is null ? "is_not" : "is")} = [{string.Join(", ", (rule.Is ?? rule.IsNot)!.Select(Quoted))}]\n");
            text.Append($"why = {Quoted(rule.Why)}\n");
        }

        return text.ToString();
    }

    /// <summary>A map with more constants, in the section that it has or in a new one behind all others.</summary>
    public static string WithConstants(string toml, IEnumerable<(MapTarget Target, string Value)> constants)
    {
        var section = new StringBuilder();
        Section(section, "constants", "What every row has.");
        var lines = string.Concat(constants.Select(c => $"{Key(c.Target.ToString())} = {Quoted(c.Value)}\n"));
        return toml.Contains(section.ToString(), StringComparison.Ordinal)
            ? toml.Replace(section.ToString(), section + lines, StringComparison.Ordinal)
            : toml + section + lines;
    }

    private static void Section(StringBuilder text, string name, string comment) => text.Append($"\n[{name}]\n# {comment}\n");

    private static void List(StringBuilder text, string key, List<string> items, string comment) => text.Append(
        items.Count == 0 ? "" : $"{key} = [{string.Join(", ", items.Select(Quoted))}]    # {comment}\n");

    private static void Entry(StringBuilder text, string key, List<MapTarget> targets, string? comment)
    {
        var shown = targets.ConvertAll(t => Quoted(t.ToString()));
        text.Append($"{Quoted(key)} = {(shown.Count == 1 ? shown[0] : $"[{string.Join(", ", shown)}]")}{(comment is null ? "" : $"    # {comment}")}\n");
    }

    private static string Key(string name) => name.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-') ? name : Quoted(name);

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            _ = c switch
            {
                '"' or '\\' => quoted.Append('\\').Append(c),
                _ when char.IsControl(c) => quoted.Append($"\\u{(int)c:X4}"),
                _ => quoted.Append(c),
            };
        }

        return quoted.Append('"').ToString();
    }
}
