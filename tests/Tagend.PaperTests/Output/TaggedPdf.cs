using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Tagend.PaperTests.Output;

/// <summary>A PDF's objects as qpdf reads them, and its structure tree.</summary>
internal sealed class TaggedPdf
{
    private readonly JsonElement _objects;

    public TaggedPdf(string path)
    {
        var json = OutsideTool.Run("qpdf", "--json=2", "--json-key=qpdf", "--json-stream-data=inline", "--decode-level=generalized", path).Output;
        _objects = JsonDocument.Parse(json).RootElement.GetProperty("qpdf")[1];
        Catalog = Value(Value(_objects.GetProperty("trailer")).GetProperty("/Root"));
    }

    public JsonElement Catalog { get; }

    public IEnumerable<JsonElement> Pages => Items(Value(Catalog.GetProperty("/Pages")).GetProperty("/Kids")).Select(Value);

    public IEnumerable<JsonElement> Fonts =>
        _objects.EnumerateObject().Select(o => Value(o.Value)).Where(v => v.ValueKind == JsonValueKind.Object && Name(v, "/Type") == "/Font");

    public Element Tree => ElementOf(Value(Catalog.GetProperty("/StructTreeRoot")).GetProperty("/K"));

    /// <summary>Which element each marked stretch of a page belongs to.</summary>
    public List<string> OwnersOn(JsonElement page)
    {
        var numbers = Items(Value(Catalog.GetProperty("/StructTreeRoot")).GetProperty("/ParentTree").GetProperty("/Nums"));
        var at = page.GetProperty("/StructParents").GetInt32();
        var pair = numbers.Chunk(2).Single(p => p[0].GetInt32() == at);
        return [.. Items(Value(pair[1])).Select(o => o.GetString()!)];
    }

    public string Content(JsonElement page) => Text(page.GetProperty("/Contents"));

    public string Text(JsonElement reference) =>
        Encoding.Latin1.GetString(Convert.FromBase64String(Object(reference).GetProperty("stream").GetProperty("data").GetString()!));

    /// <summary>What a reference leads to, or what is there itself.</summary>
    public JsonElement Value(JsonElement element)
    {
        var target = element.ValueKind == JsonValueKind.String && element.GetString()!.EndsWith(" 0 R", StringComparison.Ordinal) ? Object(element) : element;
        return target.ValueKind != JsonValueKind.Object ? target
            : target.TryGetProperty("value", out var value) ? value
            : target.TryGetProperty("stream", out var stream) ? stream.GetProperty("dict")
            : target;
    }

    public static string? Name(JsonElement dictionary, string key) =>
        dictionary.TryGetProperty(key, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    private static List<JsonElement> Items(JsonElement element) =>
        element.ValueKind == JsonValueKind.Array ? [.. element.EnumerateArray()] : [element];

    private JsonElement Object(JsonElement reference) => _objects.GetProperty($"obj:{reference.GetString()}");

    private Element ElementOf(JsonElement reference)
    {
        var value = Value(reference);
        var kids = value.TryGetProperty("/K", out var k) ? Items(k) : [];
        return new Element(
            reference.GetString()!,
            Name(value, "/S")!,
            Name(value, "/Alt"),
            Name(value, "/Lang"),
            value.TryGetProperty("/A", out var a) ? Name(Value(a), "/Scope") : null,
            value.TryGetProperty("/Pg", out var page) ? page.GetString() : null,
            [.. kids.Where(kid => kid.ValueKind == JsonValueKind.Number).Select(kid => int.Parse(kid.GetRawText(), CultureInfo.InvariantCulture))],
            [.. kids.Where(kid => kid.ValueKind != JsonValueKind.Number).Select(ElementOf)]);
    }

    /// <summary>A part of the document.</summary>
    /// <param name="Marks">What is drawn for it on its page.</param>
    internal sealed record Element(
        string Reference, string Type, string? Alternative, string? Language, string? Scope, string? Page, IReadOnlyList<int> Marks, IReadOnlyList<Element> Kids)
    {
        public IEnumerable<Element> All => Kids.SelectMany(k => k.All).Prepend(this);
    }
}
