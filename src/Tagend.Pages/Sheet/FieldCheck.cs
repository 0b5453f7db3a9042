using Scriban;
using Scriban.Syntax;
using Tagend.Problems;

namespace Tagend.Pages.Sheet;

/// <summary>Walks a parsed template and finds each name that is no field, in branches not taken as well.</summary>
internal sealed class FieldCheck(string file) : ScriptVisitor
{
    private const string LoopState = "for";
    private const string Include = "include";

    /// <summary>Made when first asked for: it takes the library longer than all of a template.</summary>
    private static readonly Lazy<HashSet<string>> Filters = new(() => [.. new LiquidTemplateContext().BuiltinObject.Keys]);

    /// <summary>Names a template makes itself, and what they stand for: a loop's variable for a piece, others for nothing.</summary>
    private readonly Dictionary<string, string?> _own = new() { [LoopState] = null };

    private readonly List<Problem> _problems = [];

    private bool _hasOtherFilters;

    /// <returns>All problems, and whether the template calls other filters than those of the shipped ones.</returns>
    public static (IReadOnlyList<Problem> Problems, bool HasOtherFilters) Of(Template template, string file)
    {
        var check = new FieldCheck(file);
        check.Visit(template.Page);
        return (check._problems, check._hasOtherFilters);
    }

    public override void Visit(ScriptForStatement node)
    {
        if (node.Variable is ScriptVariable variable)
        {
            _own[variable.Name] = node.Iterator?.ToString() == SheetFields.Pieces ? SheetFields.Piece : null;
        }

        base.Visit(node);
    }

    public override void Visit(ScriptAssignExpression node)
    {
        if (node.Target is ScriptVariable variable)
        {
            _own[variable.Name] = null;
        }

        base.Visit(node);
    }

    public override void Visit(ScriptCaptureStatement node)
    {
        if (node.Target is ScriptVariable variable)
        {
            _own[variable.Name] = null;
        }

        base.Visit(node);
    }

    public override void Visit(ScriptFunctionCall node)
    {
        var name = (node.Target as ScriptVariable)?.Name;
        _hasOtherFilters |= name != ShippedLiquid.Downcase;
        if (name == Include)
        {
            Report(node, Include, "a sheet is one file: put the text here in its place");
        }
        else if (name is not (null or ShippedLiquid.Downcase) && !Filters.Value.Contains(name))
        {
            Report(node, name);
        }

        foreach (var argument in node.Arguments)
        {
            Visit(argument);
        }
    }

    public override void Visit(ScriptMemberExpression node)
    {
        var owner = node.Target?.ToString() ?? "";
        if (owner == LoopState)
        {
            return;
        }

        var listed = _own.TryGetValue(owner, out var known) && known is not null ? known : owner;
        if (!SheetFields.Names.Contains($"{listed}.{node.Member?.Name}"))
        {
            Report(node, $"{owner}.{node.Member?.Name}");
        }
    }

    public override void Visit(ScriptVariableGlobal node)
    {
        if (!_own.ContainsKey(node.Name) && !SheetFields.Names.Contains(node.Name))
        {
            Report(node, node.Name);
        }
    }

    private void Report(ScriptNode node, string name) =>
        Report(node, name, $"no such field; a sheet has {string.Join(", ", SheetFields.Names)}");

    private void Report(ScriptNode node, string text, string message) =>
        _problems.Add(new Problem(new Place(file, node.Span.Start.Line + 1), text, message));
}
