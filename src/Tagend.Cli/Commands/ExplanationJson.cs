using System.Text.Encodings.Web;
using System.Text.Json;
using Tagend.Specs.Explained;

namespace Tagend.Commands;

/// <summary>An explanation as JSON, one object a step.</summary>
internal static class ExplanationJson
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // × and √ as they are: the output is UTF-8
    };

    public static void Write(Stream output, IEnumerable<ExplainedStep> steps)
    {
        using var json = new Utf8JsonWriter(output, Options);
        json.WriteStartArray();
        foreach (var step in steps)
        {
            json.WriteStartObject();
            json.WriteString("name", step.Name);
            json.WriteString("formula", step.Formula);
            json.WriteString("numbers", step.Numbers);
            json.WriteString("result", step.Result);
            json.WriteString("source", step.Source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
