using System.Text.Json;
using Tagend.Jobs;
using Tagend.Measures;

namespace Tagend.Commands;

/// <summary>Jobs as JSON, one object a piece with its builds. Names: README.</summary>
internal static class JobsJson
{
    public static void Write(Stream output, IEnumerable<PrintedJob> jobs)
    {
        using var json = new Utf8JsonWriter(output, new JsonWriterOptions { Indented = true });
        json.WriteStartArray();
        foreach (var job in jobs)
        {
            json.WriteStartObject();
            json.WriteString("order", job.Order);
            json.WriteString("piece", job.Piece);
            json.WriteNumber("revision", job.Revision);
            json.WriteString("date", DateWriter.Iso(job.Issued));
            json.WriteString("kind", job.Kind);
            json.WriteString("material", job.Material);
            json.WriteNumber("strands", job.Strands);
            json.WriteLength("finishedLength", job.FinishedLength);
            json.WriteLength("tolerance", job.Tolerance);
            json.WriteLength("postsOutside", job.Posts);
            json.WriteString("customer", job.Customer);
            json.WriteString("bow", job.Bow);
            json.WriteString("due", job.Due);
            json.WriteString("printedAt", job.PrintedAt);
            json.WriteString("tag", job.Tag);
            json.WriteStartArray("builds");
            foreach (var build in job.Builds)
            {
                Write(json, build);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, LoggedBuild logged)
    {
        json.WriteStartObject();
        json.WriteNumber("build", logged.Number);
        json.WriteLength("postsSet", logged.Built.Posts);
        json.WriteNumber("turns", logged.Built.Turns);
        json.WriteLength("measured", logged.Built.Measured);
        json.WriteForce("load", logged.Built.Load);
        json.WriteNumber("minutes", logged.Built.Minutes);
        json.WriteString("who", logged.Built.Who);
        json.WriteString("loggedAt", logged.LoggedAt);
        json.WriteBoolean("leftOut", logged.IsLeftOut);
        json.WriteEndObject();
    }
}
