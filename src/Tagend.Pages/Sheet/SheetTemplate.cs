using Scriban;
using Scriban.Parsing;
using Scriban.Syntax;
using Tagend.Catalog;
using Tagend.Problems;

namespace Tagend.Pages.Sheet;

/// <summary>The text of a customer sheet: Markdown with Liquid fields, from templates/sheets.</summary>
internal sealed class SheetTemplate
{
    /// <summary>Of the filled-in text, with what Markdown and notes take: two pages hold far less.</summary>
    private const int MostCharacters = 20_000;

    /// <summary>Of all loops together.</summary>
    private const int MostTurns = 1_000;

    private readonly string _file;
    private readonly string[] _lines;
    private readonly Template _template;
    private readonly bool _hasOtherFilters;

    private SheetTemplate(string file, string text, Template template, bool hasOtherFilters)
    {
        _file = file;
        _hasOtherFilters = hasOtherFilters;
        _lines = text.Split('\n');
        _template = template;
    }

    /// <summary>Reads a template, or says all that is wrong with it.</summary>
    /// <exception cref="TagendException">The file cannot be read.</exception>
    public static (SheetTemplate? Template, IReadOnlyList<Problem> Problems) Read(string file)
    {
        var text = TemplateFiles.Text(file);
        var template = Template.ParseLiquid(text, file);
        if (template.HasErrors)
        {
            return (null, [.. template.Messages.Where(m => m.Type == ParserMessageType.Error).Select(m => Syntax(file, text, m))]);
        }

        var (problems, hasOtherFilters) = FieldCheck.Of(template, file);
        return problems.Count > 0 ? (null, problems) : (new SheetTemplate(file, text, template, hasOtherFilters), []);
    }

    /// <summary>The sheet's Markdown with every field filled in.</summary>
    /// <exception cref="TagendException">A filter got a value it cannot work with, or the text grows beyond all measure.</exception>
    public string Fill(SheetData data)
    {
        TemplateContext context = _hasOtherFilters ? new LiquidTemplateContext() : new ShippedLiquid();
        context.StrictVariables = true;
        context.LoopLimit = MostTurns;
        context.LimitToString = MostCharacters;
        context.OutputLimit = MostCharacters;
        context.OnStringLimit = ScriptLimitBehavior.Throw;
        context.OnOutputLimit = ScriptLimitBehavior.Throw;
        context.PushGlobal(SheetFields.Of(data));
        try
        {
            return _template.Render(context);
        }
        catch (ScriptRuntimeException e)
        {
            throw new TagendException($"{_file}:{e.Span.Start.Line + 1}: {Sentence(e.OriginalMessage)}", e);
        }
    }

    /// <summary>The library names its own limits, which mean nothing to a shop.</summary>
    private static string Sentence(string message) =>
        message.Contains(nameof(TemplateContext.LoopLimit), StringComparison.Ordinal) || message.Contains("iteration limit", StringComparison.Ordinal)
            ? $"the loops go around more than {MostTurns} times: loop over pieces only"
        : message.Contains(nameof(TemplateContext.LimitToString), StringComparison.Ordinal) || message.Contains(nameof(TemplateContext.OutputLimit), StringComparison.Ordinal)
            ? $"the text gets longer than {MostCharacters} characters, and a sheet has two pages: shorten what is repeated here"
        : message;

    /// <summary>Where a line of the filled text comes from; the whole file where fields have changed it.</summary>
    public Place Find(string filledLine) =>
        new(_file, Array.FindIndex(_lines, l => l.Trim() == filledLine) + 1);

    private static Problem Syntax(string file, string text, LogMessage message)
    {
        // The end of the text has no position of its own.
        var line = message.Span.Start.Line < 0 ? text.AsSpan().TrimEnd().Count('\n') : message.Span.Start.Line;
        return new Problem(new Place(file, line + 1), null, $"broken Liquid: {message.Message}");
    }
}
