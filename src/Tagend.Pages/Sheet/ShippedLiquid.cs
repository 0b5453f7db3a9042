using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;
using Scriban.Syntax;

namespace Tagend.Pages.Sheet;

/// <summary>Liquid as the library sets it up, with the one filter of the shipped sheets.</summary>
/// <remarks>To gather all its filters takes the library a third of the time from a program's start to a checked order.</remarks>
internal sealed class ShippedLiquid : TemplateContext
{
    public const string Downcase = "downcase";

    public ShippedLiquid()
        : base(new ScriptObject { [Downcase] = new LowerCase() })
    {
        IsLiquid = true;
        Language = ScriptLang.Liquid;
        EnableBreakAndContinueAsReturnOutsideLoop = true;
        EnableRelaxedTargetAccess = true;
    }

    /// <summary>The filter. The library would make one of a delegate by reflection, which takes longer than to fill a sheet.</summary>
    private sealed class LowerCase : IScriptCustomFunction
    {
        public int RequiredParameterCount => 1;

        public int ParameterCount => 1;

        public ScriptVarParamKind VarParamKind => ScriptVarParamKind.None;

        public Type ReturnType => typeof(string);

        public ScriptParameterInfo GetParameterInfo(int index) => new(typeof(string), "text");

        public object? Invoke(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) =>
            context.ObjectToString(arguments[0])?.ToLowerInvariant();

        public ValueTask<object?> InvokeAsync(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) =>
            ValueTask.FromResult(Invoke(context, callerContext, arguments, blockStatement));
    }
}
