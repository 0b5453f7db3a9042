using System.Text.Json;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary>Specs as JSON, one object a piece. Names and units: README. A length is <c>{ "in": …, "mm": … }</c>.</summary>
internal static class SpecJson
{
    private static readonly JsonWriterOptions Options = new() { Indented = true };

    public static void Write(Stream output, IEnumerable<PieceReport> pieces)
    {
        using var json = new Utf8JsonWriter(output, Options);
        json.WriteStartArray();
        foreach (var piece in pieces)
        {
            json.WriteStartObject();
            json.WriteString("order", piece.Order);
            json.WriteString("piece", piece.Piece);
            json.WriteNumber("line", piece.Line);
            WriteProblems(json, piece.Problems);
            if (piece.Spec is { } spec)
            {
                WriteSpec(json, spec);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>The properties of a spec after its order and piece, into an object that is open.</summary>
    public static void WriteSpec(Utf8JsonWriter json, BuildSpec spec)
    {
        json.WriteString("kind", spec.Kind);
        json.WriteNumber("revision", spec.Revision);
        json.WriteString("date", DateWriter.Iso(spec.Date));
        Write(json, "finishedLength", spec.FinishedLength);
        Write(json, "tolerance", spec.Tolerance);
        Write(json, "drawWeight", spec.DrawWeight);
        json.WriteString("material", spec.Bundle.Material);
        json.WriteNumber("strands", spec.Bundle.Strands);
        json.WriteNumber("turns", spec.Twist.Turns);
        json.WriteStartObject("takeUp");
        Write(json, "rule", spec.Twist.TakeUp.Rule);
        Write(json, "helix", spec.Twist.TakeUp.Helix);
        json.WriteNull("fitted");
        json.WriteString("used", spec.Twist.TakeUp.Used == TakeUpModel.Rule ? "rule" : "helix");
        json.WriteEndObject();
        Write(json, "bundleDiameter", spec.Bundle.Diameter);
        Write(json, "laidUpLength", spec.LaidUpLength);
        json.WriteStartObject("postSetting");
        Write(json, "outside", spec.Posts.Outside);
        Write(json, "centers", spec.Posts.Centers);
        Write(json, "tape", spec.Posts.Tape);
        Write(json, "residual", spec.Posts.Residual);
        json.WriteEndObject();
        json.WriteNumber("loops", spec.Layup.Loops);
        WriteLayup(json, spec.Layup);
        WritePlaces(json, spec);
        json.WriteStartObject("strength");
        Write(json, "breaking", spec.Strength.Breaking);
        Write(json, "floor", spec.Strength.Floor);
        json.WriteEndObject();
    }

    private static void WriteLayup(Utf8JsonWriter json, Layup layup)
    {
        json.WriteStartArray("colors");
        foreach (var color in layup.Colors)
        {
            json.WriteStartObject();
            json.WriteString("color", color.Color);
            json.WriteNumber("strands", color.Strands);
            json.WriteNumber("loops", color.Loops);
            json.WriteString("post", color.Post.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("tags");
        foreach (var tag in layup.EndTags)
        {
            json.WriteStartObject();
            json.WriteString("post", tag.Post.ToString());
            json.WriteBoolean("dummy", tag.IsDummy);
            json.WriteStartArray("colors");
            foreach (var color in tag.Colors)
            {
                json.WriteStringValue(color);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WritePlaces(Utf8JsonWriter json, BuildSpec spec)
    {
        json.WriteStartArray("separators");
        foreach (var separator in spec.Separators)
        {
            json.WriteStartObject();
            json.WriteString("name", separator.Name);
            Write(json, "finished", separator.Position);
            Write(json, "onJig", spec.OnJig(separator.Position));
            json.WriteNumber("strandsEachSide", separator.StrandsEachSide);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("servings");
        foreach (var serving in spec.Servings)
        {
            json.WriteStartObject();
            json.WriteString("name", SpecText.Role(serving.Role));
            Write(json, "fromA", serving.From);
            Write(json, "toA", serving.To);
            Write(json, "fromB", spec.FromB(serving.From));
            Write(json, "toB", spec.FromB(serving.To));
            Write(json, "length", serving.Length);
            json.WriteString("thread", serving.Thread);
            json.WriteString("color", serving.Color);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("marks");
        foreach (var mark in spec.Marks)
        {
            json.WriteStartObject();
            json.WriteString("name", mark.Kind == MarkKind.NockPoint ? "nock point" : "speed nock");
            Write(json, "fromA", mark.Position);
            Write(json, "fromB", spec.FromB(mark.Position));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteProblems(Utf8JsonWriter json, IEnumerable<Problem> problems)
    {
        json.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            json.WriteStartObject();
            json.WriteString("severity", problem.Severity == Severity.Refusal ? "problem" : "warning");
            json.WriteString("column", problem.At.Column);
            json.WriteString("text", problem.Text);
            json.WriteString("message", problem.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, string name, Length length)
    {
        json.WriteStartObject(name);
        json.WriteNumber("in", length.Inches);
        json.WriteNumber("mm", length.Millimeters);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, Force? force)
    {
        if (force is not { } given)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteNumber("lbf", Math.Round(given.Pounds, 6)); // what a micronewton can tell
        json.WriteNumber("N", given.Newtons);
        json.WriteEndObject();
    }
}
