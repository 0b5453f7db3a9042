using System.Text.Json;
using Tagend.Tags;

namespace Tagend.Commands;

/// <summary>Scans as JSON: a list, one object a code found, each written as it comes.</summary>
internal sealed class ScanJson : IDisposable
{
    private readonly Stream _output = Console.OpenStandardOutput();
    private readonly Utf8JsonWriter _json;

    public ScanJson()
    {
        _json = new Utf8JsonWriter(_output, new JsonWriterOptions { Indented = true });
        _json.WriteStartArray();
    }

    public void Write(TagScan scan)
    {
        if (scan.Reading is null)
        {
            return;
        }

        _json.WriteStartObject();
        _json.WriteString("source", scan.Source);
        _json.WriteString("text", scan.Reading.Text);
        _json.WriteString("reading", Word(scan.Reading));
        _json.WriteString("message", scan.Message);
        _json.WriteStartArray("specs");
        foreach (var spec in scan.Specs)
        {
            _json.WriteStartObject();
            _json.WriteString("order", spec.Order);
            _json.WriteString("piece", spec.Piece);
            SpecJson.WriteSpec(_json, spec);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
        _json.WriteEndObject();
        _json.Flush();
    }

    public void Dispose()
    {
        _json.WriteEndArray();
        _json.Dispose();
        _output.Dispose();
    }

    private static string Word(TagReading reading) => reading switch
    {
        TagReading.Piece => "piece",
        TagReading.Bag => "bag",
        TagReading.Damaged => "damaged",
        TagReading.Later => "later",
        _ => "foreign",
    };
}
