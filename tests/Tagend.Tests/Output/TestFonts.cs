using System.Runtime.CompilerServices;
using Tagend.Output;

namespace Tagend.Tests.Output;

/// <summary>The fonts as shipped, loaded once.</summary>
internal static class TestFonts
{
    public static Fonts Shipped { get; } = Fonts.Load(Path.Combine(Root(), "templates", "fonts"));

    private static string Root([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", ".."));
}
