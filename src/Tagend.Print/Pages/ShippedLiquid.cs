using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;

namespace Tagend.Pages;

/// <summary>Liquid as the library sets it up, with the one filter of the shipped sheets.</summary>
/// <remarks>To gather all its filters takes the library a third of the time from a program's start to a checked order.</remarks>
internal sealed class ShippedLiquid : TemplateContext
{
    public const string Downcase = "downcase";

    public ShippedLiquid()
        : base(new ScriptObject { [Downcase] = DelegateCustomFunction.CreateFunc((string text) => text.ToLowerInvariant()) })
    {
        IsLiquid = true;
        Language = ScriptLang.Liquid;
        EnableBreakAndContinueAsReturnOutsideLoop = true;
        EnableRelaxedTargetAccess = true;
    }
}
