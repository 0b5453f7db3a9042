using System.Text.Json;
using Tagend.Catalog;
using Tagend.Fits;

namespace Tagend.Commands;

/// <summary>Fits as JSON, one object a material and strand count. Names: README.</summary>
internal static class FitJson
{
    public static void Write(Stream output, IEnumerable<TakeUpFit> fits)
    {
        using var json = new Utf8JsonWriter(output, new JsonWriterOptions { Indented = true });
        json.WriteStartArray();
        foreach (var fit in fits)
        {
            json.WriteStartObject();
            json.WriteString("material", fit.Material);
            json.WriteNumber("strands", fit.Strands);
            if (fit.Fit is { } found)
            {
                Write(json, found);
            }

            json.WriteStartArray("points");
            foreach (var point in fit.Points)
            {
                Write(json, point);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, FittedTakeUp found)
    {
        json.WriteNumber("builds", found.Builds);
        json.WriteBoolean("enough", found.Builds >= FittedTakeUp.FewestBuilds);
        json.WriteLength("takeUpPerTurn", found.PerTurn);
        json.WriteLength("takeUpPerTurnError", found.PerTurnError);
        json.WriteNumber("settle", found.Settle);
        json.WriteNumber("settleError", found.SettleError);
        json.WriteBoolean("settleFitted", found.IsSettleFitted);
        json.WriteLength("jigOffset", found.Offset);
        json.WriteLength("jigOffsetError", found.OffsetError);
        json.WriteLength("scatter", found.Scatter);
    }

    private static void Write(Utf8JsonWriter json, FitPoint point)
    {
        json.WriteStartObject();
        json.WriteNumber("build", point.Build.Number);
        json.WriteString("order", point.Build.Order);
        json.WriteString("piece", point.Build.Piece);
        json.WriteLength("predicted", point.Predicted);
        json.WriteLength("measured", point.Build.Measured);
        json.WriteBoolean("outlier", point.IsOutlier);
        json.WriteBoolean("leftOut", point.Build.IsLeftOut);
        json.WriteEndObject();
    }
}
