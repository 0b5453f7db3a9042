using Tagend.Output;
using Xunit;

namespace Tagend.PaperTests.Pages;

/// <summary>Labels from a simulated thermal head, 3° askew, are read by three decoders.</summary>
public sealed class ThermalHeadTests
{
    private const float Skew = 3;

    private static readonly ThermalHead[] Heads =
    [
        new("too hot", Gained: 0.2, Lost: 0, Dead: 0),
        new("too cold", Gained: 0, Lost: 0.2, Dead: 0),
        new("uneven, with dead dots", Gained: 0.1, Lost: 0.1, Dead: 0.01),
    ];

    private static readonly int[] Printers = [203, 300, 600];

    public static TheoryData<string, int> Prints => new(
        from head in Heads
        from dotsPerInch in Printers
        select (head.Name, dotsPerInch));

    [Theory]
    [MemberData(nameof(Prints))]
    public void Codes_OfAPoorPrint_AreReadByThreeDecoders(string head, int dotsPerInch)
    {
        using var sample = new Sample();
        var tags = PrintedTags.Of("roll-4x2", "roll-3x1.25", dotsPerInch, "1002");
        var labels = tags.Pages.Select((_, i) => sample.Place($"label-{i}.png")).ToList();
        AtomicFiles.Write([.. tags.Pages.Select((page, i) => new NewFile(
            labels[i], s => PngFile.Write(page, Sample.Fonts, dotsPerInch, DotDepth.BlackOrWhite, s)))]);
        var seen = labels.Select((_, i) => sample.Place($"seen-{i}.png")).ToList();
        foreach (var (label, i) in labels.Select((l, i) => (l, i)))
        {
            Array.Find(Heads, h => h.Name == head)!.Print(label, dotsPerInch, seen[i], Skew, seed: i);
        }

        Decoders.AssertAllRead(tags.Texts, seen);
    }
}
