using Tagend.Output;

namespace Tagend.Tests.Output;

/// <summary>The fonts as shipped, loaded once.</summary>
internal static class TestFonts
{
    public static Fonts Shipped { get; } = Fonts.Of(TestFiles.Templates);
}
