using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Specs.Explained;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Json;

/// <summary>What the program tells scripts: lists in JSON, each item written as it comes, so that none is held in memory.</summary>
public static class JsonList
{
    /// <summary>Signs such as + and × as they are: the output is UTF-8, and a tag's text is copied out of it.</summary>
    private static readonly JsonWriterOptions Readable = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Rows of an order file, with their specs and stock.</summary>
    public static void Write(Stream output, IReadOnlyList<PieceReport> pieces, Shop shop)
    {
        var contracts = SideBySide.Select(pieces, p => (Piece: p, Made: p.Spec is { } spec ? new PieceContract(p, spec, shop) : null));
        Write(output, Readable, contracts, (json, contract) =>
        {
            if (contract.Made is { } made)
            {
                JsonSerializer.Serialize(json, made, Contracts.Default.PieceContract);
            }
            else
            {
                JsonSerializer.Serialize(json, BrokenPieceContract.Of(contract.Piece), Contracts.Default.BrokenPieceContract);
            }
        });
    }

    /// <summary>The steps of an explanation.</summary>
    public static void Write(Stream output, IEnumerable<ExplainedStep> steps) => Write(output, Readable, steps, Contracts.Default.ExplainedStep);

    /// <summary>Jobs of the job book, with their builds.</summary>
    public static void Write(Stream output, IEnumerable<PrintedJob> jobs) =>
        Write(output, Readable, jobs.Select(JobContract.Of), Contracts.Default.JobContract);

    /// <summary>Spools of the job book.</summary>
    public static void Write(Stream output, IEnumerable<KeptSpool> spools) =>
        Write(output, Readable, spools.Select(SpoolContract.Of), Contracts.Default.SpoolContract);

    /// <summary>Orders, and how far each has come.</summary>
    public static void Write(Stream output, IEnumerable<ListedOrder> orders) =>
        Write(output, Readable, orders.Select(OrderContract.Of), Contracts.Default.OrderContract);

    /// <summary>Fits of the job book's builds.</summary>
    public static void Write(Stream output, IEnumerable<TakeUpFit> fits) =>
        Write(output, Readable, fits.Select(f => new FitContract(f)), Contracts.Default.FitContract);

    /// <summary>Codes that were found; where a picture has none there is nothing to tell.</summary>
    public static void Write(Stream output, IEnumerable<TagScan> scans) => Write(
        output,
        Readable,
        scans.Where(s => s.Reading is not null).Select(s => ScanContract.Of(s, s.Reading!)),
        Contracts.Default.ScanContract);

    private static void Write<T>(Stream output, JsonWriterOptions options, IEnumerable<T> items, JsonTypeInfo<T> contract) =>
        Write(output, options, items, (json, item) => JsonSerializer.Serialize(json, item, contract));

    private static void Write<T>(Stream output, JsonWriterOptions options, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        using var json = new Utf8JsonWriter(output, options);
        using var each = items.GetEnumerator();
        json.WriteStartArray();
        while (HasNext())
        {
            write(json, each.Current);
            json.Flush();
        }

        json.WriteEndArray();

        bool HasNext()
        {
            try
            {
                return each.MoveNext();
            }
            catch
            {
                json.WriteEndArray(); // what was read before a failure is a list all the same
                throw;
            }
        }
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PieceContract))]
[JsonSerializable(typeof(BrokenPieceContract))]
[JsonSerializable(typeof(ScanContract))]
[JsonSerializable(typeof(JobContract))]
[JsonSerializable(typeof(SpoolContract))]
[JsonSerializable(typeof(OrderContract))]
[JsonSerializable(typeof(FitContract))]
[JsonSerializable(typeof(ExplainedStep))]
internal sealed partial class Contracts : JsonSerializerContext;
