using Xunit;

namespace Tagend.StationTests;

/// <summary>The browser that a start opens.</summary>
public class StartTests
{
    [Fact]
    public void Start_OpensTheBrowserAndASecondOneTheSameStation()
    {
        // A stand-in for the program that opens addresses on a Linux desktop (xdg-utils).
        using var station = Station.Empty();
        var programs = Directory.CreateDirectory(Path.Combine(station.Folder, "programs")).FullName;
        var opened = Path.Combine(programs, "opened");
        var opener = Path.Combine(programs, "xdg-open");
        File.WriteAllText(opener, $"#!/bin/sh\necho \"$1\" > {opened}.part && mv {opened}.part {opened}.$$.txt\n");
        Assert.True(Tool.Runs("chmod", "+x", opener));
        station.Begin();
        var path = ("PATH", $"{programs}:{Environment.GetEnvironmentVariable("PATH")}");
        station.Start(opensBrowser: true, path);
        Assert.Equal([$"{station.Address}"], Opened(1));

        var (exitCode, output, _) = station.StartAgain(path);
        Assert.Equal(0, exitCode);
        Assert.StartsWith($"A station is running at {station.Address} already; it opens in the browser.", output, StringComparison.Ordinal);
        Assert.Equal([$"{station.Address}", $"{station.Address}"], Opened(2));

        IEnumerable<string> Opened(int times)
        {
            string[] files = [];
            Assert.True(SpinWait.SpinUntil(() => (files = Directory.GetFiles(programs, "opened.*.txt")).Length >= times, Browser.MostWait), "no browser was opened");
            return files.Select(f => File.ReadAllText(f).Trim());
        }
    }
}
