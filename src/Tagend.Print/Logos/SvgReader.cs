using System.Xml;
using SkiaSharp;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Logos;

/// <summary>Reads a logo from the plain part of SVG: shapes, groups, transforms, plain fills and strokes.</summary>
/// <remarks>
/// W3C Scalable Vector Graphics (SVG) 1.1. What is not read and would change the look is a problem, so that no logo is printed
/// other than it is meant. Nothing outside the file is opened, and no entity is replaced.
/// </remarks>
internal sealed class SvgReader
{
    public const int MostBytes = 200_000;
    public const int MostElements = 2_000;
    public const int MostDepth = 32;
    private const string Namespace = "http://www.w3.org/2000/svg";

    /// <summary>Elements that draw nothing themselves; what refers to them is a problem where it does.</summary>
    private static readonly HashSet<string> Undrawn =
    [
        "defs", "title", "desc", "metadata", "linearGradient", "radialGradient", "pattern", "clipPath", "mask", "filter", "marker", "symbol",
    ];

    private readonly XmlReader _xml;
    private readonly string _file;
    private readonly List<Problem> _problems = [];
    private VectorGroup _group = null!;
    private int _elements;
    private int _drawn;

    private SvgReader(XmlReader xml, string file) => (_xml, _file) = (xml, file);

    /// <summary>The picture; null, with its problems, where it cannot be drawn as it is meant.</summary>
    public static Picture? Read(string path, byte[] file, ICollection<Problem> problems)
    {
        if (file.Length > MostBytes)
        {
            problems.Add(new Problem(new Place(path), null, SvgWording.TooLarge(file.Length)));
            return null;
        }

        // XmlReader.Create would bring all of XML Schema into the program.
        using var xml = new XmlTextReader(new MemoryStream(file))
        {
            DtdProcessing = DtdProcessing.Ignore,
            XmlResolver = null,
            EntityHandling = EntityHandling.ExpandEntities, // so that one of the document type is an error, not left out
        };
        var reader = new SvgReader(xml, path);
        var picture = reader.Read();
        foreach (var problem in reader._problems)
        {
            problems.Add(problem);
        }

        return reader._problems.Count > 0 ? null : picture;
    }

    private VectorPicture? Read()
    {
        try
        {
            _xml.MoveToContent();
            if (_xml.LocalName != "svg" || _xml.NamespaceURI != Namespace)
            {
                Report(_xml.Name, null, SvgWording.NotSvg);
                return null;
            }

            var root = SvgElement.Read(_xml, Report);
            var box = SvgBox.Of(root);
            var all = _group = new VectorGroup(SKMatrix.Identity, 1);
            ReadGroup(root, SvgStyle.Initial, 1);
            if (_drawn == 0 && _problems.Count == 0)
            {
                Report(null, null, SvgWording.NothingDrawn);
            }

            return new VectorPicture(box, all);
        }
        catch (XmlException e)
        {
            _problems.Add(new Problem(new Place(_file, e.LineNumber), null, SvgWording.NotXml(e.LinePosition)));
            return null;
        }
    }

    private void ReadGroup(SvgElement group, SvgStyle inherited, int depth)
    {
        var isEmpty = _xml.IsEmptyElement;
        var style = inherited.Of(group);
        var around = Enter(group);
        while (!isEmpty && _xml.Read() && _xml.NodeType != XmlNodeType.EndElement)
        {
            if (_xml.NodeType == XmlNodeType.Element)
            {
                ReadElement(style, depth + 1);
            }
        }

        _group = around;
    }

    /// <summary>From its start to its end, where the reader then stands.</summary>
    private void ReadElement(SvgStyle inherited, int depth)
    {
        _elements++;
        if (_elements == MostElements + 1 || (depth == MostDepth + 1 && _elements <= MostElements))
        {
            Report(_xml.Name, null, _elements > MostElements ? SvgWording.TooManyElements : SvgWording.TooDeep);
        }

        if (_xml.NamespaceURI != Namespace || Undrawn.Contains(_xml.LocalName) || _elements > MostElements || depth > MostDepth)
        {
            Skip();
            return;
        }

        var element = SvgElement.Read(_xml, Report);
        if (element.Property("display") == "none")
        {
            Skip();
        }
        else if (element.Name == "g")
        {
            ReadGroup(element, inherited, depth);
        }
        else if (SvgShape.Names.Contains(element.Name))
        {
            Draw(element, inherited.Of(element));
            Skip();
        }
        else
        {
            Report(element.Name, null, SvgWording.Refused(element.Name));
            Skip();
        }
    }

    /// <summary>Over what is within the element; a style sheet is a problem wherever it stands.</summary>
    private void Skip()
    {
        if (_xml.IsEmptyElement)
        {
            return;
        }

        for (var depth = _xml.Depth; _xml.Read() && _xml.Depth > depth;)
        {
            if (_xml.NodeType == XmlNodeType.Element && _xml.LocalName == "style" && _xml.NamespaceURI == Namespace)
            {
                Report("style", null, SvgWording.Refused("style"));
            }
        }
    }

    private void Draw(SvgElement element, SvgStyle style)
    {
        var path = SvgShape.PathOf(element);
        if (path is null)
        {
            return;
        }

        path.FillType = style.FillRule;
        var around = Enter(element);
        foreach (var paint in style.Paints())
        {
            _group.Parts.Add(new VectorShape(path, paint));
            _drawn++;
        }

        _group = around;
    }

    /// <summary>Begins a group with the element's transform and opacity.</summary>
    /// <returns>The group around it, to go back to after it.</returns>
    private VectorGroup Enter(SvgElement element)
    {
        var around = _group;
        _group = new VectorGroup(SvgTransform.Of(element), element.Share("opacity", 1));
        around.Parts.Add(_group);
        return around;
    }

    private void Report(string? where, string? text, string message) =>
        _problems.Add(new Problem(new Place(_file, ((IXmlLineInfo)_xml).LineNumber, where), text, message));
}
