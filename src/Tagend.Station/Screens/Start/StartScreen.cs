using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Station.Desk;
using Tagend.Station.Frame;

namespace Tagend.Station.Screens.Start;

/// <summary>One question to a new shop.</summary>
/// <param name="Refusal">What is wrong with the last answer, and what was expected; null for nothing.</param>
public sealed record StartModel(StartAnswers Answers, string? Refusal)
{
    /// <summary>What is asked, in order.</summary>
    public static IReadOnlyList<string> Steps { get; } = ["Shop", "Unit and paper", "Posts", "Tape", "Ruler"];

    public LengthUnit Unit => Answers.Unit == "mm" ? LengthUnit.Millimeter : LengthUnit.Inch;
}

/// <summary>The first start: what only the shop knows. It may be left at any question, and comes back there.</summary>
internal sealed class StartScreen : IScreen
{
    private const int Last = 4;

    public NavEntry? Nav => null;

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/start", (HttpContext context, StartDesk desk, ShopDesk shop) => Ask(context, desk, shop));
        routes.MapPost("/start", (HttpContext context, StartDesk desk) => Answer(context, desk));
        routes.MapGet("/start/done", (ShopDesk shop) => Done(shop));
    }

    private static IResult Ask(HttpContext context, StartDesk desk, ShopDesk shop) =>
        shop.IsBegun ? Redirect.To(context, "/orders") : StartPage.Create(new StartModel(desk.Answers, null));

    private static IResult Done(ShopDesk shop) => DonePage.Create(shop.Catalog.Shop.Jig.PostDiameter is null);

    private static async Task<IResult> Answer(HttpContext context, StartDesk desk)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var answers = desk.Answers;
        if (form["back"].Count > 0)
        {
            desk.Keep(answers with { Step = Math.Max(0, answers.Step - 1) });
            return Redirect.To(context, "/start");
        }

        string Of(string name) => form[name].ToString().Trim();
        var (answered, refusal) = answers.Step switch
        {
            0 => (answers with { Name = Of("name"), Phone = Of("phone") }, null),
            1 => (answers with { Unit = Of("unit") == "mm" ? "mm" : "in", Paper = PaperSet.Named(Of("paper"))?.Name ?? answers.Paper }, null),
            2 when form["later"].Count > 0 => (answers with { Post = "" }, null),
            2 => Measured(answers with { Post = Of("post") }, Of("post"), "a diameter such as 1 1/8 in or 28.6 mm, as a caliper shows it"),
            3 => Measured(answers with { Tape = Of("tape") }, Of("tape"), "the finest mark of your tape, such as 1/16 in or 1 mm"),
            _ => (answers, (string?)null),
        };
        if (refusal is not null)
        {
            return StartPage.Create(new StartModel(answered, refusal));
        }

        if (answers.Step < Last - 1)
        {
            desk.Keep(answered with { Step = answers.Step + 1 });
            return Redirect.To(context, "/start");
        }

        if (desk.Begin(answered) is { Count: > 0 } problems)
        {
            return StartPage.Create(new StartModel(answered, string.Join("\n", problems)));
        }

        return Redirect.To(context, "/start/done");
    }

    private static (StartAnswers, string?) Measured(StartAnswers answers, string text, string expected)
    {
        var unit = answers.Unit == "mm" ? LengthUnit.Millimeter : LengthUnit.Inch;
        return (answers, LengthReader.TryRead(text, unit, out var length) && length > Length.Zero ? null : $"\"{text}\": expected {expected}");
    }
}
