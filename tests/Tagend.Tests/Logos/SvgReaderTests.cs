using System.Text;
using Tagend.Logos;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Logos;

public sealed class SvgReaderTests
{
    private const string OrPng = ", or export the logo as PNG, 600 dots wide or more";
    private const string Look = "is not drawn and would change the look: remove it, or apply it to the shapes" + OrPng;
    private const string Color = "expected a plain color such as #1a4f8c, rgb(26, 79, 140) or navy, or none: plain fills and strokes only" + OrPng;
    private const string PathData = "no path data, or coordinates beyond 100,000: export the path again";

    [Theory]
    [InlineData("<text>A</text>", "text: is not drawn: convert text to paths")]
    [InlineData("<image href=\"a.png\"/>", "image: pictures within are not drawn: trace it to paths" + OrPng)]
    [InlineData("<use href=\"#a\"/>", "use: copies are not drawn: unlink or expand them to paths")]
    [InlineData("<foreignObject/>", "foreignObject: is not drawn: convert it to paths with plain fills" + OrPng)]
    [InlineData("<style>path { fill: red }</style>", "style: style sheets are not read: save with presentation attributes (\"plain SVG\")")]
    [InlineData("<defs><style>path { fill: red }</style></defs>", "style: style sheets are not read: save with presentation attributes (\"plain SVG\")")]
    [InlineData("<path d=\"M0 0h9v9z\" fill=\"url(#g)\"/>", "path fill \"url(#g)\": " + Color)]
    [InlineData("<path d=\"M0 0h9v9z\" fill=\"#12345\"/>", "path fill \"#12345\": " + Color)]
    [InlineData("<path d=\"M0 0h9v9z\" stroke=\"window\"/>", "path stroke \"window\": " + Color)]
    [InlineData("<path d=\"M0 0h9v9z\" style=\"fill:rgb(1,2)\"/>", "path fill \"rgb(1,2)\": " + Color)]
    [InlineData("<g clip-path=\"url(#c)\"/>", "g clip-path \"url(#c)\": " + Look)]
    [InlineData("<g style=\"mask:url(#m)\"/>", "g mask \"url(#m)\": " + Look)]
    [InlineData("<g filter=\"url(#f)\"/>", "g filter \"url(#f)\": " + Look)]
    [InlineData("<line x2=\"9\" stroke=\"red\" stroke-dasharray=\"2\"/>", "line stroke-dasharray \"2\": " + Look)]
    [InlineData("<g style=\"transform: rotate(3deg)\"/>", "g style \"transform: rotate(3deg)\": is read as an attribute only: save the logo as plain SVG 1.1")]
    [InlineData("<g style=\"fill\"/>", "g style \"fill\": expected declarations such as \"fill: #1a4f8c; stroke: none\"")]
    [InlineData("<g transform=\"rotate(1,2)\"/>", "g transform \"rotate(1,2)\": expected matrix, translate, scale, rotate, skewX or skewY with its numbers")]
    [InlineData("<g transform=\"scale(2) spin(3)\"/>", "g transform \"scale(2) spin(3)\": expected matrix, translate, scale, rotate, skewX or skewY with its numbers")]
    [InlineData("<g fill-rule=\"odd\"/>", "g fill-rule \"odd\": expected one of nonzero, evenodd")]
    [InlineData("<g opacity=\"half\"/>", "g opacity \"half\": expected a number from 0 to 1, or a percentage")]
    [InlineData("<rect width=\"50%\" height=\"1\"/>", "rect width \"50%\": expected a number, or one with px, pt, pc, mm, cm or in")]
    [InlineData("<circle r=\"1e30\"/>", "circle r \"1e30\": expected a number, or one with px, pt, pc, mm, cm or in")]
    [InlineData("<polygon points=\"0,0 9\"/>", "polygon points \"0,0 9\": expected pairs of numbers")]
    [InlineData("<path d=\"L9 9\"/>", "path d \"L9 9\": " + PathData)]
    [InlineData("<path d=\"M0 0L9\"/>", "path d \"M0 0L9\": " + PathData)]
    [InlineData("<path d=\"M0 0 9 9 x\"/>", "path d \"M0 0 9 9 x\": " + PathData)]
    [InlineData("<path d=\"M0 0a5 5 0 2 0 9 9\"/>", "path d \"M0 0a5 5 0 2 0 9 9\": " + PathData)]
    [InlineData("<path d=\"M0 0a25 0 1 1 50 30\"/>", "path d \"M0 0a25 0 1 1 50 30\": " + PathData)]
    [InlineData("<path d=\"M0 0L1e30 9\"/>", "path d \"M0 0L1e30 9\": " + PathData)]
    [InlineData("<path d=\"M0 0z5\"/>", "path d \"M0 0z5\": " + PathData)]
    public void Read_WhatWouldChangeTheLook_IsRefusedAtItsLine(string element, string message) =>
        Assert.Equal([$"logo.svg:3: {message}"], Problems($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">\n<path d=\"M0 0h9v9z\"/>\n{element}\n</svg>"));

    [Theory]
    [InlineData("<svg viewBox=\"0 0 9 9\"/>", "logo.svg:1: svg: expected the element svg with xmlns=\"http://www.w3.org/2000/svg\": save the logo as plain SVG")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100%\"><path d=\"M0 0h9v9z\"/></svg>",
        "logo.svg:1: svg width \"100%\": expected a number, or one with px, pt, pc, mm, cm or in",
        "logo.svg:1: svg viewBox: there is neither a viewBox nor a width and a height: give it a viewBox")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 0\"><path d=\"M0 0h9v9z\"/></svg>", "logo.svg:1: svg viewBox \"0 0 9 0\": expected four numbers: left, top, width and height")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><path d=\"M0 0h9v9z\" fill=\"none\"/></svg>", "logo.svg:1: nothing in it is drawn: it needs a path or another shape with a fill or a stroke")]
    public void Read_DrawingWithoutUse_SaysWhatItNeeds(string text, params string[] problems) => Assert.Equal(problems, Problems(text));

    [Theory]
    [InlineData("no picture", 1)]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><path d=\"M0 0h9v9z\"></svg>", 81)]
    [InlineData("<!DOCTYPE svg [<!ENTITY a \"aaaa\">]><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">&a;</svg>", 95)]
    [InlineData("<!DOCTYPE svg [<!ENTITY a \"aaaa\">]><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><g fill=\"&a;\"/></svg>", 104)]
    [InlineData("<!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">&a;</svg>", 116)]
    public void Read_NoXmlOrAnEntity_NamesThePlace(string text, int column) => Assert.Equal(
        $"logo.svg:1: no well-formed XML from column {column} on, or an entity of a document type: save the logo as plain SVG again",
        Assert.Single(Problems(text)));

    [Fact]
    public void Read_SeveralMistakes_ReportsAllWithTheirLines() => Assert.Equal(
        ["logo.svg:2: text: is not drawn: convert text to paths", "logo.svg:4: path fill \"url(#a)\": " + Color, "logo.svg:5: path d \"9\": " + PathData],
        Problems("""
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">
            <text><tspan>A</tspan></text>
            <g>
            <path fill="url(#a)" d="M0 0h9v9z"/>
            <path d="9"/></g></svg>
            """));

    [Fact]
    public void Read_Limits_AreNamedOnce()
    {
        var shape = "<path d=\"M0 0h9v9z\"/>";
        Assert.Equal("logo.svg:1: path: more than 2,000 elements: unite the shapes" + OrPng, Assert.Single(Problems(Drawn(Repeated(shape, 2100)))));
        Assert.Equal("logo.svg:1: g: groups are nested more than 32 deep: ungroup them", Assert.Single(Problems(Drawn(Repeated("<g>", 40) + shape + Repeated("</g>", 40)))));
        Assert.Equal(
            "logo.svg: 205 KB, and a logo has at most 200 KB, for every sheet carries it: simplify its paths" + OrPng,
            Assert.Single(Problems(Drawn($"<path d=\"M0 0h9v9z{Repeated(" ", 205_000)}\"/>"))));
    }

    [Fact]
    public void Read_WithoutAViewBox_TakesItsSize()
    {
        var picture = SvgReader.Read("logo.svg", Encoding.UTF8.GetBytes("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"2in\" height=\"25.4mm\"><path d=\"M0 0h9v9z\"/></svg>"), []);

        Assert.Equal((192, 96), (picture!.Width, picture.Height)); // CSS: 96 pixels are an inch
    }

    private static string Drawn(string elements) => $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">{elements}</svg>";

    private static string Repeated(string text, int count) => string.Concat(Enumerable.Repeat(text, count));

    private static IEnumerable<string> Problems(string text)
    {
        var problems = new List<Problem>();
        var picture = SvgReader.Read("logo.svg", Encoding.UTF8.GetBytes(text), problems);
        Assert.Equal(problems.Count == 0, picture is not null);
        return problems.Select(p => p.ToString());
    }
}
