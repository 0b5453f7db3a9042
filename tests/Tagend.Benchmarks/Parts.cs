using System.Text;
using BenchmarkDotNet.Attributes;
using Tagend.Output;
using Tagend.Qr.Encode;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop;

namespace Tagend.Benchmarks;

/// <summary>The steps of the program in one process, for BenchmarkDotNet.</summary>
[MemoryDiagnoser]
public class Parts
{
    private readonly string _small = Path.Combine(Path.GetTempPath(), $"tagend-bench-{Environment.ProcessId}-1.jpg");
    private readonly string _large = Path.Combine(Path.GetTempPath(), $"tagend-bench-{Environment.ProcessId}-12.jpg");
    private Bench _bench = null!;
    private byte[] _rows = [];
    private Build _build = null!;
    private Page _card = null!;
    private string _tag = "";

    [GlobalSetup]
    public void Prepare()
    {
        _bench = new Bench(Path.Combine(Layout.Root, "templates"));
        _rows = Encoding.UTF8.GetBytes(Season.Csv(1000));
        _build = _bench.Sets(_rows)[0].Builds[0];
        _card = _bench.Card(_build)[0];
        _tag = TagWriter.Write(_build.Spec);
        Bench.Photograph(_tag, 1152, 864, _small);
        Bench.Photograph(_tag, 4000, 3000, _large);
    }

    [GlobalCleanup]
    public void TidyUp()
    {
        File.Delete(_small);
        File.Delete(_large);
    }

    [Benchmark(Description = "1,000 order rows, read and computed")]
    public int Rows() => _bench.Sets(_rows).Count;

    [Benchmark(Description = "a card page, composed")]
    public int Card() => _bench.Card(_build).Sum(p => p.Inks.Count);

    [Benchmark(Description = "a card page, written as PDF with its fonts cut")]
    public long Pdf()
    {
        using var output = new MemoryStream();
        PdfFile.Write([_card], _bench.Fonts, new PdfNote("A card", new DateOnly(2026, 3, 14)), output);
        return output.Length;
    }

    [Benchmark(Description = "a tag's QR code, made")]
    public int Code() => QrSymbol.Of(_tag)!.Modules;

    [Benchmark(Description = "a tag's text, read into its spec")]
    public bool Text() => TagReader.Read(_tag) is TagReading.Piece;

    [Benchmark(Description = "a tag's picture of 1 megapixel, read")]
    public int Small() => Read(_small);

    [Benchmark(Description = "a tag's picture of 12 megapixels, read")]
    public int Large() => Read(_large);

    private int Read(string picture) => TagPictures.Read(picture) is [var code] && code.Text == _tag
        ? code.Text.Length
        : throw new InvalidOperationException($"the code of {picture} was not read");
}
