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
    private SKCanvas _canvas = null!;
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
            using var recorder = new SKPictureRecorder();
            var box = SvgBox.Of(root);
            _canvas = recorder.BeginRecording(box);
            _canvas.ClipRect(box);
            ReadGroup(root, SvgStyle.Initial, 1);
            if (_drawn == 0 && _problems.Count == 0)
            {
                Report(null, null, SvgWording.NothingDrawn);
            }

            return new VectorPicture(recorder.EndRecording());
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
        var saved = Enter(group);
        while (!isEmpty && _xml.Read() && _xml.NodeType != XmlNodeType.EndElement)
        {
            if (_xml.NodeType == XmlNodeType.Element)
            {
                ReadElement(style, depth + 1);
            }
        }

        _canvas.RestoreToCount(saved);
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
        using var path = SvgShape.PathOf(element);
        if (path is null)
        {
            return;
        }

        path.FillType = style.FillRule;
        var saved = Enter(element);
        foreach (var paint in style.Paints())
        {
            using (paint)
            {
                _canvas.DrawPath(path, paint);
                _drawn++;
            }
        }

        _canvas.RestoreToCount(saved);
    }

    /// <summary>Takes on the element's transform and opacity.</summary>
    /// <returns>What the canvas goes back to after it.</returns>
    private int Enter(SvgElement element)
    {
        var saved = _canvas.Save();
        _canvas.Concat(SvgTransform.Of(element));
        if (element.Share("opacity", 1) is < 1 and var opacity)
        {
            using var paint = new SKPaint { ColorF = new SKColorF(0, 0, 0, opacity) };
            _canvas.SaveLayer(paint);
        }

        return saved;
    }

    private void Report(string? where, string? text, string message) =>
        _problems.Add(new Problem(new Place(_file, ((IXmlLineInfo)_xml).LineNumber, where), text, message));
}
