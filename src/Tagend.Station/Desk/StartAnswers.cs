using System.Text.Json;
using System.Text.Json.Serialization;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Workshop.Shops;

namespace Tagend.Station.Desk;

/// <summary>What a new shop has said of itself so far.</summary>
/// <param name="Step">The question it is at, from 0.</param>
/// <param name="Unit"><c>in</c> or <c>mm</c>.</param>
/// <param name="Paper">A name of shop.toml.</param>
/// <param name="Post">As typed; empty where it is to be measured later.</param>
/// <param name="Tape">The finest mark of the tape, as typed.</param>
public sealed record StartAnswers(int Step, string Name, string Phone, string Unit, string Paper, string Post, string Tape);

/// <summary>Keeps a new shop's answers until all questions are answered, and then makes its templates of them.</summary>
internal sealed class StartDesk(ShopDesk shop)
{
    private static readonly StartAnswers Nothing = new(0, "", "", "in", "letter", "", "");

    private string Path => System.IO.Path.Combine(shop.Options.OwnFolder, "start.json");

    /// <summary>What was answered, also before the station was stopped.</summary>
    public StartAnswers Answers
    {
        get
        {
            try
            {
                return File.Exists(Path) ? JsonSerializer.Deserialize(File.ReadAllBytes(Path), StartJson.Default.StartAnswers) ?? Nothing : Nothing;
            }
            catch (JsonException)
            {
                return Nothing; // they are asked for again
            }
        }
    }

    /// <summary>Keeps the answers on the disk.</summary>
    /// <exception cref="TagendException">They cannot be written.</exception>
    public void Keep(StartAnswers answers) =>
        AtomicFiles.Write([new NewFile(Path, stream => JsonSerializer.Serialize(stream, answers, StartJson.Default.StartAnswers))]);

    /// <summary>Makes the shop's templates.</summary>
    /// <returns>What cannot be; nothing is made then.</returns>
    /// <exception cref="TagendException">They cannot be written.</exception>
    public IReadOnlyList<Problem> Begin(StartAnswers answers)
    {
        var unit = answers.Unit == "mm" ? LengthUnit.Millimeter : LengthUnit.Inch;
        Length? post = LengthReader.TryRead(answers.Post, unit, out var read) ? read : null;
        var problems = ShopTemplates.Begin(
            shop.Options.ShippedTemplates, shop.Options.Templates, new ShopOwn(TextOf(answers.Name), TextOf(answers.Phone), unit, post));
        if (problems.Count > 0)
        {
            return problems;
        }

        Set("", "paper", answers.Paper);
        if (LengthReader.TryRead(answers.Tape, unit, out var tape))
        {
            Set("jig", unit == LengthUnit.Inch ? "tape_in" : "tape_mm", ExactNumber.Spelled(tape, unit));
        }

        File.Delete(Path);
        return [];

        static string? TextOf(string text) => text.Length > 0 ? text : null;
    }

    private void Set(string section, string key, string value)
    {
        var entry = ShopSettings.Read(shop.Options.Templates, "shop.toml").Entries.First(e => e.Section == section && e.Key == key);
        ShopSettings.Change(shop.Options.Templates, "shop.toml", section, key, entry.Value, value);
    }
}

[JsonSerializable(typeof(StartAnswers))]
internal sealed partial class StartJson : JsonSerializerContext;
