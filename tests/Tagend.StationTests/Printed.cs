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
