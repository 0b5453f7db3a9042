using System.Text;
using System.Text.Json;
using Tagend.Specs.Explained;
using Tagend.Tags;
using Tagend.Tests.Specs;
using Tagend.Workshop.Json;
using Tagend.Workshop.Readings;
using Xunit;

namespace Tagend.Tests.Workshop;

/// <summary>The names that scripts know: docs/JSON.md.</summary>
public sealed class JsonListTests : IDisposable
{
    private static readonly string[] OfSpec =
    [
        "kind", "revision", "date", "finishedLength", "tolerance", "drawWeight", "material", "strands", "turns", "turnsToPutIn", "twistHand", "twistDirection", "takeUp",
        "bundleDiameter", "settle", "laidUpLength", "postSetting", "turnSensitivity", "loops", "colors", "tags", "endLoops", "separators", "servingHand", "servingDirection",
        "servings", "marks", "nockFit", "stretch", "strength", "mass",
    ];

    private readonly WorkshopFolder _folder = new();

    [Fact]
    public void Write_Pieces_HaveTheirNamesInOrder()
    {
        var orders = _folder.Check();
        var pieces = Read(stream => JsonList.Write(stream, orders.Report.Pieces, orders.Catalog.Shop));
        Assert.Equal(3, pieces.GetArrayLength());
        Assert.Equal(["order", "piece", "line", "problems", .. OfSpec, "stock"], NamesOf(pieces[0]));
        Assert.Equal(["in", "mm"], NamesOf(pieces[0].GetProperty("finishedLength")));
        Assert.Equal(60.25, pieces[0].GetProperty("finishedLength").GetProperty("in").GetDouble());
        Assert.Equal(JsonValueKind.Null, pieces[0].GetProperty("drawWeight").ValueKind);
        Assert.Equal(["rule", "helix", "fitted", "used", "modelsDisagree"], NamesOf(pieces[0].GetProperty("takeUp")));
        Assert.Equal(["lbf", "N"], NamesOf(pieces[0].GetProperty("stretch").GetProperty("load")));
        Assert.Equal(["kind", "name", "color", "length"], NamesOf(pieces[0].GetProperty("stock")[0]));
    }

    [Fact]
    public void Write_ARowThatCannotBeBuilt_HasItsProblemsAlone()
    {
        var orders = _folder.Check(WorkshopFolder.Header + "1001,string,compound-string,x,hmpe-0145,24,black,\n");
        var piece = Read(stream => JsonList.Write(stream, orders.Report.Pieces, orders.Catalog.Shop))[0];
        Assert.Equal(["order", "piece", "line", "problems"], NamesOf(piece));
        var problem = piece.GetProperty("problems")[0];
        Assert.Equal(["severity", "column", "text", "message"], NamesOf(problem));
        Assert.Equal(("problem", "finished_length", "x"), (problem.GetProperty("severity").GetString(), problem.GetProperty("column").GetString(), problem.GetProperty("text").GetString()));
    }

    [Fact]
    public void Write_Steps_AreReadableAsTheyAre() => Assert.Equal(
        """
        [
          {
            "name": "turns",
            "formula": "rate × length",
            "numbers": "1 × √4",
            "result": "2",
            "source": "ours"
          }
        ]
        """,
        Text(stream => JsonList.Write(stream, [new ExplainedStep("turns", "rate × length", "1 × √4", "2", "ours")])));

    [Fact]
    public void Write_Scans_AreOneObjectACode()
    {
        var spec = SpecFixture.Good(("draw_weight", "70 lbf")) with { Lots = ["L-204", "77B"] };
        TagScan[] scans = [new("a.png", TagReader.Read(TagWriter.Write(spec))), new("b.png", null), new("text", TagReader.Read("<hello>"))];
        var list = Read(stream => JsonList.Write(stream, scans));
        Assert.Equal(2, list.GetArrayLength());
        Assert.Equal(["source", "text", "reading", "message", "specs", "places"], NamesOf(list[0]));
        Assert.Equal(["order", "piece", .. OfSpec, "lots"], NamesOf(list[0].GetProperty("specs")[0]));
        Assert.Equal(70, list[0].GetProperty("specs")[0].GetProperty("drawWeight").GetProperty("lbf").GetDouble());
        Assert.Equal("foreign", list[1].GetProperty("reading").GetString());
    }

    [Fact]
    public void Write_WhatFailsOnTheWay_IsAListAllTheSame()
    {
        using var stream = new MemoryStream();
        Assert.Throws<InvalidOperationException>(() => JsonList.Write(stream, Failing()));
        Assert.Equal(1, JsonDocument.Parse(stream.ToArray()).RootElement.GetArrayLength());

        static IEnumerable<ExplainedStep> Failing()
        {
            yield return new ExplainedStep("a", "b", "c", "d", "e");
            throw new InvalidOperationException("no more");
        }
    }

    private static List<string> NamesOf(JsonElement element) => [.. element.EnumerateObject().Select(p => p.Name)];

    private static JsonElement Read(Action<Stream> write) => JsonDocument.Parse(Text(write)).RootElement;

    private static string Text(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public void Dispose() => _folder.Dispose();
}
