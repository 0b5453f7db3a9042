namespace Tagend.Tags.Text;

/// <summary>The signs that part a tag text, whatever its version.</summary>
internal static class TagSigns
{
    public const string PieceWord = "TE";
    public const string BagWord = "TB";

    public const string DateFormat = "yyyyMMdd";

    public const char Field = '*';
    public const char Part = '/';
    public const char Item = '+';

    /// <summary>Between the texts on a bag.</summary>
    public const char Text = '$';
}
