using Microsoft.Playwright;
using Xunit;

namespace Tagend.StationTests;

/// <summary>A shop that begins, and one that changes its settings.</summary>
public class ShopTests(Browser browser)
{
    [Fact]
    public async Task FirstStart_LeftHalfWay_ComesBackWhereItWasAndMakesTheShop()
    {
        using var station = Station.Empty();
        station.Start();
        var page = await browser.Open(Size.Phone);
        await page.GotoAsync(station.Address.ToString());
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("What is your shop called?");
        await Look.Everywhere(page, "start-shop");
        await page.SetViewportSizeAsync(Size.Phone.Width, Size.Phone.Height);
        await page.GetByLabel("Name").FillAsync("Strings \"& more\"");
        await Next(page);
        await page.GetByLabel("millimeters").CheckAsync();
        await page.GetByLabel("A4 sheets").CheckAsync();
        await Next(page);
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("How thick are the posts of your jig?");
        station.Kill();
        station.Start();

        await page.GotoAsync(station.Address.ToString());
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("How thick are the posts of your jig?");
        await page.GetByLabel("Diameter of a post").FillAsync("thick");
        await Next(page);
        await Assertions.Expect(page.Locator(".trouble")).ToContainTextAsync("\"thick\": expected a diameter such as");
        await Look.Everywhere(page, "start-posts");
        await page.GetByLabel("Diameter of a post").FillAsync("28.6");
        await Next(page);
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("What is the finest mark of your tape?");
        await Next(page);
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Your shop is ready");
        var shop = File.ReadAllText(Path.Combine(station.Templates, "shop.toml"));
        Assert.Contains("\nname = \"Strings \\\"& more\\\"\"", shop, StringComparison.Ordinal);
        Assert.Contains("\nunit = \"mm\"", shop, StringComparison.Ordinal);
        Assert.Contains("\npaper = \"a4\"", shop, StringComparison.Ordinal);
        Assert.Contains("\npost_diameter = \"28.6 mm\"", shop, StringComparison.Ordinal);
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Ruler page" }).ClickAsync());
        Assert.Equal("%PDF"u8.ToArray(), File.ReadAllBytes(await download.PathAsync())[..4]);
        Assert.Equal(0, Station.Run(["check", Path.Combine(Station.Root, "demo-orders", "demo-mm.csv"), "--templates", station.Templates]).ExitCode);
    }

    [Fact]
    public async Task Setting_ThatIsChanged_KeepsTheFilesComments()
    {
        using var station = Station.OfDemoShop();
        var path = Path.Combine(station.Templates, "shop.toml");
        var before = File.ReadAllLines(path);
        var page = await browser.Open(Size.Desk);
        await page.GotoAsync($"{station.Address}shop");
        await Set(page, "post diameter", "1 1/2 in");

        // (π/2 − 1) of half an inch, by hand.
        await Assertions.Expect(page.Locator(".is-good")).ToContainTextAsync("The posts of every card move by 0.285 in");
        var after = File.ReadAllLines(path);
        var changed = before.Zip(after).Where(l => l.First != l.Second).ToList();
        Assert.Equal(before.Length, after.Length);
        Assert.Single(changed);
        Assert.Equal(changed[0].First.Replace("\"1 in\"    ", "\"1 1/2 in\" ", StringComparison.Ordinal), changed[0].Second);
    }

    [Fact]
    public async Task Setting_ThatCannotBe_IsSaidAtItsFieldAndNotWritten()
    {
        using var station = Station.OfDemoShop();
        var path = Path.Combine(station.Templates, "shop.toml");
        var before = File.ReadAllText(path);
        var page = await browser.Open(Size.Phone);
        await page.GotoAsync($"{station.Address}shop");
        await Set(page, "post diameter", "an inch");
        await Assertions.Expect(page.Locator("form.setting .is-stop")).ToHaveCountAsync(1);
        Assert.Equal("an inch", await page.GetByLabel("post diameter").InputValueAsync());
        Assert.Equal(before, File.ReadAllText(path));
        File.WriteAllText(path, before.Replace("\"1 in\"", "\"an inch\"", StringComparison.Ordinal));
        var said = Station.Run(["check", Path.Combine(Station.Root, "demo-orders", "demo.csv"), "--templates", station.Templates]).Errors;
        var sentence = await page.Locator("form.setting .is-stop span").InnerTextAsync();
        Assert.Contains(sentence.Split(". It stays")[0], said, StringComparison.Ordinal);
        await page.GotoAsync($"{station.Address}shop");
        await Assertions.Expect(page.Locator(".trouble")).ToContainTextAsync("an inch");
        await Set(page, "post diameter", "1 in");
        await Assertions.Expect(page.Locator(".is-good")).ToHaveCountAsync(1);
        Assert.Equal(Flat(before), Flat(File.ReadAllText(path)));

        // The comment beside it may have moved.
        static string Flat(string text) => System.Text.RegularExpressions.Regex.Replace(text, " +#", " #");
    }

    private static async Task Set(IPage page, string label, string value)
    {
        await page.GetByLabel(label).FillAsync(value);
        await page.Keyboard.PressAsync("Enter");
    }

    private static Task Next(IPage page) => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Next" }).ClickAsync();
}
