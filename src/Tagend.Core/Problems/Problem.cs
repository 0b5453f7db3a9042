namespace Tagend.Problems;

/// <summary>How much a problem stops.</summary>
public enum Severity
{
    /// <summary>Printed beside the result; nothing is held back.</summary>
    Warning,

    /// <summary>The piece, and with it its set, is not printed.</summary>
    Refusal,
}

/// <summary>Where a text stands: file, line (from 1; 0 where a whole file is meant) and column name or key.</summary>
public readonly record struct Place(string File, int Line = 0, string? Column = null)
{
    /// <summary>Compiler style: <c>orders.csv:14: finished_length</c>.</summary>
    public override string ToString() =>
        (Line > 0 ? $"{File}:{Line}" : File) + (Column is null ? "" : $": {Column}");
}

/// <summary>Wrong input, as a value: where it stands, the text at fault, and what was expected.</summary>
/// <param name="At">File, line and column.</param>
/// <param name="Text">The offending text as it was written; null where something is missing.</param>
/// <param name="Message">What is wrong and what to do, in words.</param>
public sealed record Problem(Place At, string? Text, string Message, Severity Severity = Severity.Refusal)
{
    /// <summary>In one line: <c>orders.csv:14: finished_length "6o 1/4": expected a length such as …</c></summary>
    public override string ToString()
    {
        var text = Text is null ? "" : $" \"{Text}\"";
        var warning = Severity == Severity.Warning ? "warning: " : "";
        return $"{At}{text}: {warning}{Message}".ReplaceLineEndings("⏎");
    }
}
