using System.Text.Json;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary>Specs as JSON, one object a piece. Names and units: README. A length is <c>{ "in": …, "mm": … }</c>.</summary>
internal static class SpecJson
{
    private static readonly JsonWriterOptions Options = new() { Indented = true };

    public static void Write(Stream output, IEnumerable<PieceReport> pieces, Shop shop)
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
                WriteStock(json, Stock.Of(spec, shop));
            }

            json.WriteEndObject();
            json.Flush(); // or all of it is held in memory
        }

        json.WriteEndArray();
    }

    /// <summary>The properties of a spec after its order and piece, into an object that is open.</summary>
    public static void WriteSpec(Utf8JsonWriter json, BuildSpec spec)
    {
        json.WriteString("kind", spec.Kind);
        json.WriteNumber("revision", spec.Revision);
        json.WriteString("date", DateWriter.Iso(spec.Date));
        json.WriteLength("finishedLength", spec.FinishedLength);
        json.WriteLength("tolerance", spec.Tolerance);
        json.WriteForce("drawWeight", spec.DrawWeight);
        json.WriteString("material", spec.Bundle.Material);
        json.WriteNumber("strands", spec.Bundle.Strands);
        WriteTwist(json, spec);
        WritePosts(json, spec);
        WriteLayup(json, spec);
        WriteLoops(json, spec);
        PlacesJson.Write(json, spec);
        WriteLoads(json, spec);
    }

    private static void WriteTwist(Utf8JsonWriter json, BuildSpec spec)
    {
        json.WriteNumber("turns", spec.Twist.Turns);
        json.WriteNumber("turnsToPutIn", spec.TurnsToPutIn);
        json.WriteString("twistHand", spec.Twist.Hand.ToString());
        json.WriteString("twistDirection", PlacesJson.Word(spec.Twist.Direction));
        json.WriteStartObject("takeUp");
        json.WriteLength("rule", spec.Twist.TakeUp.Rule);
        json.WriteLength("helix", spec.Twist.TakeUp.Helix);
        WriteFitted(json, spec.Twist.TakeUp.Fitted);
        json.WriteString("used", SpecText.Model(spec.Twist.TakeUp.Used));
        json.WriteBoolean("modelsDisagree", spec.ModelsDisagree);
        json.WriteEndObject();
        json.WriteLength("bundleDiameter", spec.Bundle.Diameter);
        json.WriteLength("settle", spec.Settle);
        json.WriteLength("laidUpLength", spec.LaidUpLength);
    }

    private static void WriteFitted(Utf8JsonWriter json, FittedAmount? fitted)
    {
        if (fitted is null)
        {
            json.WriteNull("fitted");
            return;
        }

        json.WriteLength("fitted", fitted.Amount);
        json.WriteLength("fittedError", fitted.Error);
        json.WriteNumber("fittedBuilds", fitted.Builds);
    }

    private static void WritePosts(Utf8JsonWriter json, BuildSpec spec)
    {
        json.WriteStartObject("postSetting");
        json.WriteLength("outside", spec.Posts.Outside);
        json.WriteLength("centers", spec.Posts.Centers);
        json.WriteLength("tape", spec.Posts.Tape);
        json.WriteLength("residual", spec.Posts.Residual);
        json.WriteNumber("residualTurns", spec.ResidualTurns);
        json.WriteBoolean("postGiven", spec.Posts.IsPostGiven);
        json.WriteLength("rangeLeast", spec.SettingRange().Least);
        json.WriteLength("rangeMost", spec.SettingRange().Most);
        json.WriteBoolean("measureFirstEarly", spec.IsSettingUncertain);
        json.WriteEndObject();
        json.WriteLength("turnSensitivity", spec.TurnSensitivity);
    }

    private static void WriteLoads(Utf8JsonWriter json, BuildSpec spec)
    {
        json.WriteStartObject("stretch");
        json.WriteForce("load", spec.Stretch.Load);
        json.WriteNumber("minutes", spec.Stretch.Minutes);
        json.WriteLength("readingUnderLoad", spec.Stretch.Reading);
        json.WriteNumber("shareOfStrength", spec.StretchShare);
        json.WriteEndObject();
        json.WriteStartObject("strength");
        json.WriteForce("breaking", spec.Strength.Breaking);
        json.WriteForce("floor", spec.Strength.Floor);
        if (spec.Strength.Ratio is { } ratio)
        {
            json.WriteNumber("ratio", ratio);
        }
        else
        {
            json.WriteNull("ratio");
        }

        json.WriteEndObject();
        if (spec.Mass is not { } mass)
        {
            json.WriteNull("mass");
            return;
        }

        json.WriteStartObject("mass");
        json.WriteNumber("grains", mass.Grains);
        json.WriteNumber("grams", mass.Grams);
        json.WriteNumber("arrowShareGrains", PieceMass.ArrowShare(mass).Grains);
        json.WriteEndObject();
    }

    private static void WriteStock(Utf8JsonWriter json, IEnumerable<StockNeed> stock)
    {
        json.WriteStartArray("stock");
        foreach (var need in stock)
        {
            json.WriteStartObject();
            json.WriteString("kind", need.Kind == StockKind.Strand ? "strand" : "thread");
            json.WriteString("name", need.Name);
            json.WriteString("color", need.Color);
            json.WriteLength("length", need.Length);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLayup(Utf8JsonWriter json, BuildSpec spec)
    {
        var layup = spec.Layup;
        json.WriteNumber("loops", layup.Loops);
        json.WriteStartArray("colors");
        foreach (var color in layup.Colors)
        {
            json.WriteStartObject();
            json.WriteString("color", color.Color);
            json.WriteNumber("strands", color.Strands);
            json.WriteNumber("loops", color.Strands / 2.0);
            json.WriteString("post", color.Post.ToString());
            json.WriteString("endPost", color.EndPost.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("tags");
        foreach (var tag in spec.EndTags())
        {
            json.WriteStartObject();
            json.WriteString("post", tag.Post.ToString());
            json.WriteNumber("leg", tag.Leg);
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

    private static void WriteLoops(Utf8JsonWriter json, BuildSpec spec)
    {
        if (spec.EndLoops is { } loops)
        {
            json.WriteStartObject("endLoops");
            json.WriteLength("a", loops.A);
            json.WriteLength("b", loops.B);
            json.WriteString("thread", loops.Serving?.Thread);
            json.WriteEndObject();
        }

        if (spec.Yoke is { } yoke)
        {
            json.WriteStartObject("yoke");
            json.WriteLength("split", yoke.Split);
            json.WriteNumber("legTurns", yoke.LegTurns);
            json.WriteStartArray("legs");
            foreach (var leg in spec.Legs())
            {
                PlacesJson.WriteStrands(json, leg);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }
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
}
