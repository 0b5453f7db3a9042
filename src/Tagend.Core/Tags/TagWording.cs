namespace Tagend.Tags;

/// <summary>All wording about tags that do not read, so that tests can hold it.</summary>
internal static class TagWording
{
    public const string Foreign = "this is not a Tagend tag: those begin with BOWSTRING, or with TE or TB and a number";

    public const string LongerThanACode = "this is longer than any code: scan one tag at a time";

    public const string CapsLock = "the tag's letters arrived in lower case: turn Caps Lock off and scan it again";

    public static string Later(string version, string newest) =>
        $"the tag has version {version}, and this program reads up to version {newest}: use a later Tagend";

    /// <param name="languages">Those with which the text is what was scanned: a short one may be the same with several.</param>
    public static string Keyboard(IReadOnlyList<string> languages) =>
        $"the scanner types as if on a US keyboard, and this computer's keyboard is {(languages.Count == 0 ? "another one" : $"set to {string.Join(" or ", languages)}")}: "
        + "set the scanner to the computer's keyboard (a code in its manual), or the computer to US, and scan the tag again";
}
