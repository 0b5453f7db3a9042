using System.Text.Json.Serialization;
using Tagend.Qr.Read;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Json;

/// <summary>A code that was found, and the specs it carries.</summary>
/// <param name="Reading"><c>piece</c>, <c>bag</c>, <c>spool</c>, <c>damaged</c>, <c>later</c> or <c>foreign</c>.</param>
/// <param name="Message">What was wrong; null where it was read.</param>
/// <param name="Places">Of each code with this text the four corners, clockwise from the symbol's top left, as x and y in pixels.</param>
internal sealed record ScanContract(
    string Source, string Text, string Reading, string? Message, IReadOnlyList<ScannedSpecContract> Specs, IReadOnlyList<IReadOnlyList<int>> Places)
{
    internal static ScanContract Of(TagScan scan, TagReading reading) =>
        new(scan.Source, reading.Text, Word(reading), scan.Message, [.. scan.Specs.Select(s => new ScannedSpecContract(s))], [.. scan.Places.Select(Corners)]);

    private static IReadOnlyList<int> Corners(Quadrilateral place) =>
        [.. new[] { place.TopLeft, place.TopRight, place.BottomRight, place.BottomLeft }.SelectMany(c => new[] { (int)MathF.Round(c.X), (int)MathF.Round(c.Y) })];

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
