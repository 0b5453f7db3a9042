using System.CommandLine;
using System.Text.Json;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Scan;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Commands;

/// <summary><c>tagend recall</c>: a tag's text, a scanner's lines or a picture becomes the spec again.</summary>
internal static class RecallCommand
{
    private const string StandardInput = "-";

    public static Command Create()
    {
        var sources = new Argument<string[]>("TAG")
        {
            Description = "Pictures of tags, a tag's text in quotes, or - for a scanner's lines on standard input.",
            Arity = ArgumentArity.OneOrMore,
        };
        var json = new Option<bool>("--json") { Description = "A list, one object a code found, for scripts." };
        var command = new Command("recall", "Shows the spec a tag was printed from.") { sources, json };
        command.SetAction(parsed =>
        {
            var scans = parsed.GetValue(sources)!.SelectMany(Read);
            return parsed.GetValue(json) ? WriteJson(scans) : WriteText(scans);
        });
        return command;
    }

    /// <summary>The codes in one source. An empty list is a picture without any.</summary>
    private static IEnumerable<Scan> Read(string source)
    {
        if (source == StandardInput)
        {
            return ReadLines();
        }

        if (!File.Exists(source) && source.Contains('*', StringComparison.Ordinal))
        {
            return [new Scan("text", TagReader.Read(source))];
        }

        var texts = PictureReader.Read(source);
        return texts.Count == 0 ? [new Scan(source, null)] : texts.Select(t => new Scan(source, TagReader.Read(t)));
    }

    private static IEnumerable<Scan> ReadLines()
    {
        while (Console.In.ReadLine() is { } line)
        {
            if (!string.IsNullOrWhiteSpace(line))
            {
                yield return new Scan("standard input", TagReader.Read(line));
            }
        }
    }

    private static int WriteText(IEnumerable<Scan> scans)
    {
        var (read, unread) = (0, 0);
        foreach (var scan in scans)
        {
            var specs = Specs(scan.Reading);
            if (scan.Reading is TagReading.Bag bag)
            {
                Console.WriteLine($"bag of order {bag.Order}: {string.Join(", ", bag.Contents.Select(c => $"{c.Piece} (revision {c.Revision})"))}");
            }

            foreach (var spec in specs)
            {
                SpecText.Write(Console.Out, spec, OrderSlip.Blank);
            }

            if (Message(scan) is { } message)
            {
                unread++;
                Console.Error.WriteLine($"{scan.Source}: {message}");
            }
            else
            {
                read++;
            }
        }

        if (read + unread == 0)
        {
            Console.Error.WriteLine("standard input: nothing was scanned");
        }

        return unread > 0 || read == 0 ? ExitCode.NothingRead : ExitCode.Done;
    }

    private static int WriteJson(IEnumerable<Scan> scans)
    {
        var (read, unread) = (0, 0);
        using var output = Console.OpenStandardOutput();
        using var json = new Utf8JsonWriter(output, new JsonWriterOptions { Indented = true });
        json.WriteStartArray();
        foreach (var scan in scans)
        {
            var message = Message(scan);
            _ = message is null ? read++ : unread++;
            if (scan.Reading is null)
            {
                Console.Error.WriteLine($"{scan.Source}: {message}");
                continue;
            }

            json.WriteStartObject();
            json.WriteString("source", scan.Source);
            json.WriteString("text", scan.Reading.Text);
            json.WriteString("reading", Word(scan.Reading));
            json.WriteString("message", message);
            json.WriteStartArray("specs");
            foreach (var spec in Specs(scan.Reading))
            {
                json.WriteStartObject();
                json.WriteString("order", spec.Order);
                json.WriteString("piece", spec.Piece);
                SpecJson.WriteSpec(json, spec);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        return unread > 0 || read == 0 ? ExitCode.NothingRead : ExitCode.Done;
    }

    private static ValueList<BuildSpec> Specs(TagReading? reading) => reading switch
    {
        TagReading.Piece piece => [piece.Spec],
        TagReading.Bag bag => bag.Specs,
        _ => [],
    };

    private static string Word(TagReading reading) => reading switch
    {
        TagReading.Piece => "piece",
        TagReading.Bag => "bag",
        TagReading.Damaged => "damaged",
        TagReading.Later => "later",
        _ => "foreign",
    };

    private static string? Message(Scan scan) => scan.Reading switch
    {
        null => "no code was read from this picture: come closer, straighten the tag, and mind light and glare",
        TagReading.Damaged damaged => damaged.Message,
        TagReading.Later later => later.Message,
        TagReading.Foreign foreign => $"{foreign.Message}; it says \"{foreign.Text}\"",
        _ => null,
    };

    /// <summary>A code and where it was found; no reading where a picture has none.</summary>
    private sealed record Scan(string Source, TagReading? Reading);
}
