using System.Text.Json;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary>Where things are on a piece, as JSON: separators, servings, marks, nock fit.</summary>
internal static class PlacesJson
{
    public static void Write(Utf8JsonWriter json, BuildSpec spec)
    {
        json.WriteStartArray("separators");
        foreach (var separator in spec.Separators)
        {
            json.WriteStartObject();
            json.WriteString("name", separator.Name);
            json.WriteLength("finished", separator.Position);
            json.WriteLength("onJig", spec.OnJig(separator.Position));
            json.WriteLength("fromPostA", spec.FromPostA(separator.Position));
            json.WriteNumber("strandsEachSide", separator.StrandsEachSide);
            json.WriteStartArray("sides");
            WriteStrands(json, spec.Layup.Halves().First);
            WriteStrands(json, spec.Layup.Halves().Second);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("servingHand", spec.Twist.ServingHand.ToString());
        json.WriteString("servingDirection", Word(spec.Twist.ServingDirection));
        json.WriteStartArray("servings");
        foreach (var serving in spec.Servings)
        {
            WriteServing(json, spec, serving);
        }

        json.WriteEndArray();
        json.WriteStartArray("marks");
        foreach (var mark in spec.Marks)
        {
            json.WriteStartObject();
            json.WriteString("name", mark.Kind == MarkKind.NockPoint ? "nock point" : "speed nock");
            json.WriteLength("fromA", mark.Position);
            json.WriteLength("fromB", spec.FromB(mark.Position));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteNockFit(json, spec.NockFit);
    }

    public static string Word(TwistDirection direction) =>
        direction == TwistDirection.Clockwise ? "clockwise" : "counterclockwise";

    /// <summary>Colors and strands of half a layup.</summary>
    public static void WriteStrands(Utf8JsonWriter json, Layup half)
    {
        json.WriteStartArray();
        foreach (var color in half.Colors)
        {
            json.WriteStartObject();
            json.WriteString("color", color.Color);
            json.WriteNumber("strands", color.Strands);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteServing(Utf8JsonWriter json, BuildSpec spec, Serving serving)
    {
        var work = spec.WorkOf(serving);
        json.WriteStartObject();
        json.WriteString("name", SpecText.Role(serving.Role));
        json.WriteLength("fromA", serving.From);
        json.WriteLength("toA", serving.To);
        json.WriteLength("fromB", spec.FromB(serving.From));
        json.WriteLength("toB", spec.FromB(serving.To));
        json.WriteLength("length", serving.Length);
        json.WriteString("thread", serving.Thread);
        json.WriteString("color", serving.Color);
        json.WriteNumber("wraps", work.Wraps);
        json.WriteLength("threadLength", work.Thread);
        json.WriteLength("diameter", work.Diameter);
        json.WriteEndObject();
    }

    private static void WriteNockFit(Utf8JsonWriter json, NockFit? fit)
    {
        if (fit is null)
        {
            json.WriteNull("nockFit");
            return;
        }

        json.WriteStartObject("nockFit");
        json.WriteLength("groove", fit.Groove);
        json.WriteString("thread", fit.Thread);
        json.WriteLength("diameter", fit.Diameter);
        json.WriteLength("clearance", fit.Clearance);
        json.WriteEndObject();
    }
}
