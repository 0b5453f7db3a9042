using System.Text.Json;
using Tagend.Measures;

namespace Tagend.Commands;

/// <summary>Quantities as JSON, each in two units. Names: README.</summary>
internal static class JsonQuantity
{
    public static void WriteLength(this Utf8JsonWriter json, string name, Length? length)
    {
        if (length is not { } given)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteNumber("in", given.Inches);
        json.WriteNumber("mm", given.Millimeters);
        json.WriteEndObject();
    }

    /// <summary>Pounds to 0.000001, for a force is held in whole micronewtons: 70 lbf stays 70.</summary>
    public static void WriteForce(this Utf8JsonWriter json, string name, Force? force)
    {
        if (force is not { } given)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteNumber("lbf", Math.Round(given.Pounds, 6));
        json.WriteNumber("N", given.Newtons);
        json.WriteEndObject();
    }
}
