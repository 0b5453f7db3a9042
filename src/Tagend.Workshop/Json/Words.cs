using Tagend.Catalog;
using Tagend.Specs;

namespace Tagend.Workshop.Json;

/// <summary>The words that stand for choices, in JSON and on the terminal.</summary>
public static class Words
{
    /// <summary><c>clockwise</c> or <c>counterclockwise</c>.</summary>
    public static string Of(TwistDirection direction) =>
        direction == TwistDirection.Clockwise ? "clockwise" : "counterclockwise";

    /// <summary><c>rule</c>, <c>helix</c> or <c>fitted</c>.</summary>
    public static string Of(TakeUpModel model) => model switch
    {
        TakeUpModel.Rule => "rule",
        TakeUpModel.Helix => "helix",
        TakeUpModel.Fitted => "fitted",
        _ => throw new InvalidOperationException($"no word for {model}"),
    };

    /// <summary><c>end A</c>, <c>center</c>, <c>end B</c> or <c>other</c>.</summary>
    public static string Of(ServingRole role) => role switch
    {
        ServingRole.EndA => "end A",
        ServingRole.Center => "center",
        ServingRole.EndB => "end B",
        _ => "other",
    };

    /// <summary><c>nock point</c> or <c>speed nock</c>.</summary>
    public static string Of(MarkKind kind) => kind == MarkKind.NockPoint ? "nock point" : "speed nock";
}
