using Tagend.Measures;
using Tagend.Specs;
using Tagend.Specs.Explained;

namespace Tagend.Texts;

/// <summary>An explanation on the terminal: a block a step, wrapped.</summary>
internal static class ExplanationText
{
    private const int Width = 100;
    private const int Indent = 7;

    public static void Write(TextWriter output, BuildSpec spec, IEnumerable<ExplainedStep> steps)
    {
        output.WriteLine($"{spec.Order} / {spec.Piece}   {spec.Kind}, revision {spec.Revision}, {DateWriter.Iso(spec.Date)}");
        output.WriteLine("Numbers have more digits here than a tape has marks, so that each line follows from those above it.");
        foreach (var step in steps)
        {
            output.WriteLine();
            output.WriteLine(step.Name);
            Lines(output, "", step.Formula);
            if (step.Numbers.Length > 0)
            {
                Lines(output, "=", step.Numbers);
            }

            Lines(output, step.Numbers.Length > 0 ? "=" : "so", step.Result);
            Lines(output, "from", step.Source);
        }
    }

    private static void Lines(TextWriter output, string sign, string text)
    {
        foreach (var line in Wrapped(text))
        {
            output.WriteLine($"{sign.PadLeft(Indent - 1)} {line}");
            sign = "";
        }
    }

    private static IEnumerable<string> Wrapped(string text)
    {
        while (text.Length > Width - Indent && text.LastIndexOf(' ', Width - Indent) is > 0 and var at)
        {
            yield return text[..at];
            text = text[(at + 1)..];
        }

        yield return text;
    }
}
