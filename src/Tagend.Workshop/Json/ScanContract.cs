using System.Text.Json.Serialization;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Json;

/// <summary>A code that was found, and the specs it carries.</summary>
/// <param name="Reading"><c>piece</c>, <c>bag</c>, <c>spool</c>, <c>damaged</c>, <c>later</c> or <c>foreign</c>.</param>
/// <param name="Message">What was wrong; null where it was read.</param>
internal sealed record ScanContract(string Source, string Text, string Reading, string? Message, IReadOnlyList<ScannedSpecContract> Specs)
{
    internal static ScanContract Of(TagScan scan, TagReading reading) =>
        new(scan.Source, reading.Text, Word(reading), scan.Message, [.. scan.Specs.Select(s => new ScannedSpecContract(s))]);

    private static string Word(TagReading reading) => reading switch
    {
        TagReading.Piece => "piece",
        TagReading.Bag => "bag",
        TagReading.Spool => "spool",
        TagReading.Damaged => "damaged",
        TagReading.Later => "later",
        _ => "foreign",
    };
}

/// <summary>A spec that a tag carries.</summary>
internal sealed record ScannedSpecContract : SpecContract
{
    internal ScannedSpecContract(BuildSpec spec)
        : base(spec) => (Order, Piece) = (spec.Order, spec.Piece);

    [JsonPropertyOrder(-2)]
    public string Order { get; }

    [JsonPropertyOrder(-1)]
    public string Piece { get; }
}
