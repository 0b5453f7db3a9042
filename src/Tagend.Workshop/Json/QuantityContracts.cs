using System.Text.Json.Serialization;
using Tagend.Measures;

namespace Tagend.Workshop.Json;

/// <summary>A length in inches and in millimeters.</summary>
internal sealed record LengthContract(double In, double Mm)
{
    internal static LengthContract Of(Length length) => new(length.Inches, length.Millimeters);

    internal static LengthContract? Of(Length? length) => length is { } given ? Of(given) : null;
}

/// <summary>A force in pounds and in newtons; the pounds to 0.000001, for a force is held in whole micronewtons: 70 lbf stays 70.</summary>
internal sealed record ForceContract(double Lbf, [property: JsonPropertyName("N")] double Newtons)
{
    internal static ForceContract Of(Force force) => new(Math.Round(force.Pounds, 6), force.Newtons);

    internal static ForceContract? Of(Force? force) => force is { } given ? Of(given) : null;
}
