namespace Tagend.Tags.Text;

/// <summary>The first thing found wrong while a tag is read; reading goes on with blank values.</summary>
internal sealed class TagFault
{
    /// <summary>What is wrong, in words; null while nothing is.</summary>
    public string? Message { get; private set; }

    public void Report(string message) => Message ??= message;
}

/// <summary>All wording about tags of ours that are damaged, so that tests can hold it.</summary>
internal static class TagFaultWording
{
    public const string BadCheck = "the tag is damaged or was mistyped: its check does not match; scan it again, or scan the card";

    /// <param name="value">Such as "strand diameter".</param>
    public static string Impossible(string value) => $"the tag makes no sense: its {value} is none that a piece can have";

    public const string BagMismatch =
        "the tag of the bag does not carry the pieces it lists: scan it again";

    public static string BadField(string field, string expected) =>
        $"the tag makes no sense at \"{field}\": expected {expected}";
}
