namespace Tagend.Tags.Text;

/// <summary>The first thing found wrong while a tag is read; reading goes on with blank values.</summary>
internal sealed class TagFault
{
    /// <summary>What is wrong, in words; null while nothing is.</summary>
    public string? Message { get; private set; }

    public void Report(string message) => Message ??= message;
}
