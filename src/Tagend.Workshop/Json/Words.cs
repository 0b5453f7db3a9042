using Tagend.Catalog;
using Tagend.Specs;

namespace Tagend.Workshop.Json;

/// <summary>The words that stand for choices, in JSON and on the terminal.</summary>
public static class Words
{
    public static string Of(TwistDirection direction) =>
        direction == TwistDirection.Clockwise ? "clockwise" : "counterclockwise";

    public static string Of(TakeUpModel model) => model switch
    {
        TakeUpModel.Rule => "rule",
        TakeUpModel.Helix => "helix",
        TakeUpModel.Fitted => "fitted",
        _ => throw new InvalidOperationException($"no word for {model}"),
    };

    public static string Of(ServingRole role) => role switch
    {
        ServingRole.EndA => "end A",
        ServingRole.Center => "center",
        ServingRole.EndB => "end B",
        _ => "other",
    };

    public static string Of(MarkKind kind) => kind == MarkKind.NockPoint ? "nock point" : "speed nock";
}
