using System.Globalization;
using System.Text;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>The scales of a shop's printers: printers.toml in its templates folder, written by the program.</summary>
public static class PrinterScaleFile
{
    /// <summary>The file's name in the templates folder.</summary>
    public const string Name = "printers.toml";

    /// <summary>All scales in a templates folder; none where there is no file.</summary>
    /// <param name="problems">Every mistake in the file is added.</param>
    /// <exception cref="TagendException">The file cannot be opened.</exception>
    public static IReadOnlyList<PrinterScale> Read(string folder, ICollection<Problem> problems)
    {
        var path = Path.Combine(folder, Name);
        if (!File.Exists(path) || TomlFile.Read(path, Name, problems) is not { } file)
        {
            return [];
        }

        var scales = new List<PrinterScale>();
        foreach (var section in file.Sections)
        {
            var (across, along) = (Measured(section, "across"), Measured(section, "along"));
            scales.Add(new PrinterScale(section.Name, across, along));
            section.RefuseUnknown();
        }

        file.Root.RefuseUnknown();
        return scales;
    }

    /// <summary>The file's text with one printer's scale added, or put in place of its former one.</summary>
    public static string With(IReadOnlyList<PrinterScale> scales, PrinterScale scale)
    {
        var text = new StringBuilder("# Written by tagend ruler: what the bars of its page, 150 mm each, measured on each printer.\n");
        foreach (var each in scales.Where(s => s.Printer != scale.Printer).Append(scale).OrderBy(s => s.Printer, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[\"{each.Printer}\"]\n");
            text.Append(CultureInfo.InvariantCulture, $"across = \"{Written(each.MeasuredAcross)}\"\n");
            text.Append(CultureInfo.InvariantCulture, $"along = \"{Written(each.MeasuredAlong)}\"\n");
        }

        return text.ToString();
    }

    /// <summary>The file can hold the name as it is.</summary>
    public static bool CanName(string printer) =>
        printer.Trim() == printer && printer.Length is > 0 and <= 127 && !printer.Any(c => char.IsControl(c) || c is '"' or '\'' or '\\');

    private static Length Measured(TomlSection section, string key)
    {
        var measured = section.Length(key);
        if (measured > Length.Zero && PrinterScale.Refusal(measured) is { } refusal)
        {
            section.Report(key, Written(measured), refusal);
        }

        return measured;
    }

    private static string Written(Length length) =>
        length.Millimeters.ToString("0.######", CultureInfo.InvariantCulture) + " mm";
}
