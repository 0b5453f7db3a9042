using System.Globalization;
using System.Text.Json;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Orders that were printed, for the screens that begin with a tag.</summary>
internal static class Printed
{
    private static int _last = 800;

    /// <summary>Prints an order of a string that no other test has.</summary>
    /// <param name="customer">Whose it is.</param>
    /// <param name="length">The finished length, as people write it.</param>
    /// <param name="order">Its number; null for a new one.</param>
    /// <returns>The order's number.</returns>
    public static string Order(Station station, string customer = "Demo customer 1", string length = "60 1/4", string? order = null)
    {
        order ??= string.Create(CultureInfo.InvariantCulture, $"B-{Interlocked.Increment(ref _last)}");
        var said = Station.Run(["print", FileOf(station, order, customer, length), "--out", FolderOf(station, order), "--templates", station.Templates]);
        Assert.True(said.ExitCode == 0, said.Errors);
        return order;
    }

    /// <summary>Where the papers of an order are.</summary>
    public static string FolderOf(Station station, string order) => Path.Combine(station.Folder, "papers", order);

    /// <summary>The spec of an order's only piece, as check tells it to scripts.</summary>
    public static JsonElement Spec(Station station, string order) => JsonDocument.Parse(
        Station.Run(["check", Path.Combine(station.Folder, $"{order}.csv"), "--json", "--templates", station.Templates]).Output).RootElement[0];

    /// <summary>The newest job of an order, as jobs tells it to scripts.</summary>
    public static JsonElement Job(Station station, string order) => JsonDocument.Parse(
        Station.Run(["jobs", "--order", order, "--json", "--templates", station.Templates]).Output).RootElement.EnumerateArray().Last();

    /// <summary>An order's tags beside each other in one picture; null where a program that makes it is not installed.</summary>
    public static string? Tags(Station station, string order)
    {
        var picture = Path.Combine(station.Folder, $"tags-{order}");
        return Tool.Runs("pdftoppm", "-r", "200", "-png", Path.Combine(FolderOf(station, order), "tags.pdf"), picture)
            && Tool.Runs("convert", [.. Directory.GetFiles(station.Folder, $"tags-{order}-*.png").Order(StringComparer.Ordinal), "-append", $"{picture}.png"])
            ? $"{picture}.png"
            : null;
    }

    /// <summary>What a camera sends of an order's tag: a JPEG of less than a megapixel; null as above.</summary>
    public static byte[]? Frame(Station station, string order)
    {
        var picture = Path.Combine(station.Folder, $"frame-{order}");
        return Tool.Runs("pdftoppm", "-r", "90", "-jpeg", "-singlefile", Path.Combine(FolderOf(station, order), "tags.pdf"), picture) ? File.ReadAllBytes($"{picture}.jpg") : null;
    }

    /// <summary>What the codes of a picture say, as recall tells it to scripts: its kind and its text.</summary>
    public static IReadOnlyList<(string Reading, string Text)> Codes(string picture) =>
    [
        .. JsonDocument.Parse(Station.Run(["recall", picture, "--json"]).Output).RootElement.EnumerateArray()
            .Select(c => (c.GetProperty("reading").GetString()!, c.GetProperty("text").GetString()!)),
    ];

    private static string FileOf(Station station, string order, string customer, string length)
    {
        var path = Path.Combine(station.Folder, $"{order}.csv");
        File.WriteAllText(path, $"""
            order,customer,bow,piece,kind,finished_length,strands,colors,servings,center_serving,nock_point,peep
            {order},{customer},compound bow,string,compound-string,{length},24,black:12 red:12,A 0..7 1/2 t021 black; B 0..8 t021 black,26 1/4..31 t017 black,29,23 1/2

            """);
        return path;
    }
}
