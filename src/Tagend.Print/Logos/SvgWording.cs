namespace Tagend.Logos;

/// <summary>All wording about a logo in SVG, so that tests can hold it.</summary>
internal static class SvgWording
{
    private const string Otherwise = ", or export the logo as PNG, 600 dots wide or more";

    public const string NotSvg = "expected the element svg with xmlns=\"http://www.w3.org/2000/svg\": save the logo as plain SVG";

    public const string NothingDrawn = "nothing in it is drawn: it needs a path or another shape with a fill or a stroke";

    public const string NoSuchLook = "is not drawn and would change the look: remove it, or apply it to the shapes" + Otherwise;

    public const string ALength = "expected a number, or one with px, pt, pc, mm, cm or in";

    public const string AShare = "expected a number from 0 to 1, or a percentage";

    public const string ADeclaration = "expected declarations such as \"fill: #1a4f8c; stroke: none\"";

    public const string AsAttribute = "is read as an attribute only: save the logo as plain SVG 1.1";

    public const string AColor = "expected a plain color such as #1a4f8c, rgb(26, 79, 140) or navy, or none: plain fills and strokes only" + Otherwise;

    public const string ATransform = "expected matrix, translate, scale, rotate, skewX or skewY with its numbers";

    public const string AViewBox = "expected four numbers: left, top, width and height";

    public const string NoSize = "there is neither a viewBox nor a width and a height: give it a viewBox";

    public const string Points = "expected pairs of numbers";

    public static string TooDeep => FormattableString.Invariant($"groups are nested more than {SvgReader.MostDepth} deep: ungroup them");

    public static string TooManyElements => FormattableString.Invariant($"more than {SvgReader.MostElements:#,0} elements: unite the shapes") + Otherwise;

    public static string PathData =>
        FormattableString.Invariant($"no path data, or coordinates beyond {SvgNumbers.Greatest:#,0}: export the path again");

    public static string TooLarge(int bytes) => FormattableString.Invariant(
        $"{bytes / 1000:#,0} KB, and a logo has at most {SvgReader.MostBytes / 1000} KB, for every sheet carries it: simplify its paths") + Otherwise;

    public static string NotXml(int column) => FormattableString.Invariant(
        $"no well-formed XML from column {column} on, or an entity of a document type: save the logo as plain SVG again");

    public static string OneOf(IEnumerable<string> words) => $"expected one of {string.Join(", ", words)}";

    public static string Refused(string element) => element switch
    {
        "text" => "is not drawn: convert text to paths",
        "style" => "style sheets are not read: save with presentation attributes (\"plain SVG\")",
        "use" => "copies are not drawn: unlink or expand them to paths",
        "image" => "pictures within are not drawn: trace it to paths" + Otherwise,
        _ => "is not drawn: convert it to paths with plain fills" + Otherwise,
    };
}
