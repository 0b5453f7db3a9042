using System.Xml;

namespace Tagend.Logos;

/// <summary>Reports a wrong part of an element: where in it, the text there, and what is wrong.</summary>
internal delegate void SvgReport(string? where, string? text, string message);

/// <summary>An element's own attributes, read by type. Each wrong one is reported.</summary>
internal sealed class SvgElement
{
    /// <summary>What changes the look and is not drawn, with the value that changes nothing.</summary>
    private static readonly Dictionary<string, string> RefusedProperties = new()
    {
        ["clip"] = "auto",
        ["clip-path"] = "none",
        ["filter"] = "none",
        ["marker"] = "none",
        ["marker-end"] = "none",
        ["marker-mid"] = "none",
        ["marker-start"] = "none",
        ["mask"] = "none",
        ["mix-blend-mode"] = "normal",
        ["paint-order"] = "normal",
        ["preserveAspectRatio"] = "xMidYMid meet",
        ["stroke-dasharray"] = "none",
        ["transform-origin"] = "0 0",
        ["vector-effect"] = "none",
        ["visibility"] = "visible",
    };

    /// <summary>Geometry that CSS knows and SVG 1.1 has in attributes alone.</summary>
    private static readonly HashSet<string> RefusedInStyle = ["transform", "translate", "rotate", "scale", "d", "x", "y", "cx", "cy", "r", "rx", "ry"];

    private readonly Dictionary<string, string> _attributes = [];
    private readonly Dictionary<string, string> _styled = [];
    private readonly SvgReport _report;

    private SvgElement(string name, SvgReport report) => (Name, _report) = (name, report);

    public string Name { get; }

    /// <param name="xml">Stands on the element, and does so again after.</param>
    public static SvgElement Read(XmlReader xml, SvgReport report)
    {
        var element = new SvgElement(xml.LocalName, report);
        while (xml.MoveToNextAttribute())
        {
            if (xml.NamespaceURI.Length == 0)
            {
                element._attributes[xml.LocalName] = xml.Value.Trim();
            }
        }

        xml.MoveToElement();
        element.ReadStyle();
        foreach (var (name, harmless) in RefusedProperties)
        {
            if (element.Property(name) is { } value && value != harmless)
            {
                element.Report(name, value, SvgWording.NoSuchLook);
            }
        }

        return element;
    }

    /// <summary>An attribute; null for none.</summary>
    public string? Attribute(string name) => _attributes.GetValueOrDefault(name);

    /// <summary>A property as the style attribute has it, or else an attribute; null for none.</summary>
    public string? Property(string name) => _styled.GetValueOrDefault(name) ?? Attribute(name);

    /// <summary>A length in the drawing's own measure.</summary>
    public float Length(string name, float fallback) => Number(name, Attribute(name), SvgNumbers.TryReadLength, fallback, SvgWording.ALength);

    public float LengthProperty(string name, float fallback) =>
        Number(name, Property(name), SvgNumbers.TryReadLength, fallback, SvgWording.ALength);

    /// <summary>From 0 to 1.</summary>
    public float Share(string name, float fallback) =>
        Math.Clamp(Number(name, Property(name), SvgNumbers.TryReadShare, fallback, SvgWording.AShare), 0, 1);

    /// <summary>One of some words.</summary>
    public T Choice<T>(string name, T fallback, params ReadOnlySpan<(string Word, T Value)> choices)
    {
        if (Property(name) is not { } text || text == "inherit")
        {
            return fallback;
        }

        foreach (var (word, value) in choices)
        {
            if (word == text)
            {
                return value;
            }
        }

        Report(name, text, SvgWording.OneOf(choices.ToArray().Select(c => c.Word)));
        return fallback;
    }

    public void Report(string attribute, string? text, string message) => _report($"{Name} {attribute}", text, message);

    private float Number(string name, string? text, TryRead tryRead, float fallback, string expected)
    {
        if (text is null or "inherit")
        {
            return fallback;
        }

        if (tryRead(text, out var number))
        {
            return number;
        }

        Report(name, text, expected);
        return fallback;
    }

    private void ReadStyle()
    {
        foreach (var declaration in (Attribute("style") ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var parts = declaration.Split(':', 2, StringSplitOptions.TrimEntries);
            if (parts.Length < 2 || RefusedInStyle.Contains(parts[0]))
            {
                Report("style", declaration, parts.Length < 2 ? SvgWording.ADeclaration : SvgWording.AsAttribute);
                continue;
            }

            _styled[parts[0]] = parts[1];
        }
    }

    private delegate bool TryRead(string text, out float number);
}
