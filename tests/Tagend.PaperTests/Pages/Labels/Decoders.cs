using System.Text.Json;
using System.Text.RegularExpressions;
using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Pages;

/// <summary>Decoders of QR codes that are not ours: what they read in all of some pictures, in ordinal order.</summary>
internal static class Decoders
{
    public static List<string> ByZbar(IReadOnlyList<string> pictures)
    {
        var said = OutsideTool.Run("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", .. pictures]).Output;
        return [.. said.Split('\n', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal)];
    }

    public static List<string> ByZxing(IReadOnlyList<string> pictures)
    {
        var said = OutsideTool.Run("ZXingReader", ["-1", "-format", "QRCode", .. pictures]).Output;
        return [.. Regex.Matches(said, "QRCode \"(.*)\"").Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal)];
    }

    /// <summary>At most one a picture.</summary>
    public static List<string> ByJsqr(IReadOnlyList<string> pictures)
    {
        var modules = Path.Combine(TagendProgram.Root, "out", "jsqr", "node_modules");
        Assert.SkipUnless(Directory.Exists(modules), "jsQR is not installed: ./build.sh test does that where npm is");
        var script = Path.Combine(TagendProgram.Root, "tests", "Tagend.PaperTests", "Pages", "read-qr.js");
        var said = OutsideTool.Run("env", [$"NODE_PATH={modules}", "node", script, .. pictures]);
        Assert.True(said.ExitCode == 0, said.Errors);
        return
        [
            .. said.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => JsonSerializer.Deserialize<string?>(line))
                .OfType<string>()
                .Order(StringComparer.Ordinal),
        ];
    }

    /// <summary>All three read exactly these texts.</summary>
    public static void AssertAllRead(IEnumerable<string> texts, IReadOnlyList<string> pictures)
    {
        var expected = texts.Order(StringComparer.Ordinal).ToList();
        Assert.Equal(expected, ByZbar(pictures));
        Assert.Equal(expected, ByZxing(pictures));
        Assert.Equal(expected, ByJsqr(pictures));
    }
}
