using System.Net;
using Xunit;

namespace Tagend.StationTests;

/// <summary>What is wrong with what was sent is no fault of the station: its status says so, and its sentence what to do.</summary>
public class BlameTests(DemoStation demo) : IClassFixture<DemoStation>
{
    [Theory]
    [InlineData("orders", "rows=", HttpStatusCode.UnprocessableEntity, "Nothing was sent: choose an order file")]
    [InlineData("orders/new", "order=", HttpStatusCode.UnprocessableEntity, "Nothing is written yet")]
    [InlineData("orders/gone.csv/cell", "row=0&column=0&text=1", HttpStatusCode.NotFound, "there is no order file gone.csv any more")]
    [InlineData("orders/gone.csv/keep", "", HttpStatusCode.NotFound, "there is no order file gone.csv any more")]
    [InlineData("orders/gone.csv/map", "", HttpStatusCode.NotFound, "there is no order file gone.csv any more")]
    [InlineData("papers/gone.csv", "kind=cards", HttpStatusCode.UnprocessableEntity, "No set is chosen")]
    [InlineData("papers/gone.csv", "order=1042", HttpStatusCode.NotFound, "there is no order file gone.csv any more")]
    [InlineData("shop/setting", "file=shop.toml&key=gone&was=&value=1", HttpStatusCode.NotFound, "shop.toml has no entry gone any more")]
    [InlineData("shop/setting", "file=shop.toml&key=phone&was=555+9999&value=1", HttpStatusCode.Conflict, "shop.toml was changed meanwhile")]
    [InlineData("book/builds/77", "what=strike", HttpStatusCode.NotFound, "there is no build 77")]
    public async Task Form_ThatIsWrong_IsTheSendersFaultOnThePageThatIsThere(string path, string form, HttpStatusCode status, string sentence)
    {
        using var sender = await Sender.To(demo.Station);
        Is((status, sentence), isPart: false, await sender.Said(path, Form(form)));
        Is((status, sentence), isPart: true, await sender.Said(path, Form(form, isForPart: true)));
    }

    [Fact]
    public async Task Build_ThatCannotBeCorrected_IsAnsweredWhereItWasSaved()
    {
        var order = Printed.Order(demo.Station);
        var tag = Uri.EscapeDataString(Printed.Job(demo.Station, order).GetProperty("tag").GetString()!);
        using var sender = await Sender.To(demo.Station);
        Is(
            (HttpStatusCode.UnprocessableEntity, "there is no build 77"),
            isPart: true,
            await sender.Said($"build/{new string('0', 24)}/built", Form($"tag={tag}&key={Guid.NewGuid()}&length=60+1%2F4&mode=correct:77", isForPart: true)));
    }

    private static void Is((HttpStatusCode Status, string Sentence) expected, bool isPart, (HttpStatusCode Status, string Said) answer)
    {
        Assert.Equal(expected.Status, answer.Status);
        Assert.Contains(expected.Sentence, answer.Said, StringComparison.Ordinal);
        Assert.Equal(isPart, !answer.Said.Contains("<html", StringComparison.Ordinal));
    }

    /// <param name="isForPart">It is sent by a page's script, which shows the answer in the page.</param>
    private static StringContent Form(string fields, bool isForPart = false)
    {
        var content = new StringContent(fields, null, "application/x-www-form-urlencoded");
        if (isForPart)
        {
            content.Headers.Add("HX-Request", "true");
        }

        return content;
    }
}
