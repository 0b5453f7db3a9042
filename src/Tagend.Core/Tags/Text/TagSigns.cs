namespace Tagend.Tags.Text;

/// <summary>The words and separators of a tag text, whatever its version.</summary>
internal static class TagSigns
{
    /// <summary>What a stranger's phone shows first of every text since version 2: words for people, which no check covers.</summary>
    public const string Words = "BOWSTRING ";

    public const string PieceWord = "TE";
    public const string BagWord = "TB";

    public const string DateFormat = "yyyyMMdd";

    public const char Field = '*';
    public const char Part = '/';
    public const char Item = '+';

    /// <summary>Between the texts on a bag.</summary>
    public const char Text = '$';
}
