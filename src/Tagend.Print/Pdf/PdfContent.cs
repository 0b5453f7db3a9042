using SkiaSharp;

namespace Tagend.Pdf;

/// <summary>What is drawn on a page or in a form, by the operators of ISO 32000-1, annex A.</summary>
internal sealed class PdfContent
{
    private readonly PdfBuffer _buffer = new();
    private readonly Stack<State> _saved = [];
    private State _now = State.Initial;

    public ReadOnlySpan<byte> Bytes => _buffer.Bytes;

    /// <summary>Empties it for another page.</summary>
    public void Begin()
    {
        const int MiterLimit = 4; // as SVG and pictures have it
        _buffer.Clear();
        _buffer.Add(MiterLimit).Add("M\n"u8);
        _now = State.Initial;
    }

    /// <summary>Empties it for a form, which else would begin with the pens and colors of where it is drawn.</summary>
    public void BeginForm()
    {
        Begin();
        _buffer.Add("0 g 0 G 1 w[]0 d\n"u8);
    }

    public void Save()
    {
        _saved.Push(_now);
        _buffer.Add("q\n"u8);
    }

    public void Restore()
    {
        _now = _saved.Pop();
        _buffer.Add("Q\n"u8);
    }

    /// <summary>Places from here on are x′ = a x + c y + e, y′ = b x + d y + f before they are what they were.</summary>
    public void Transform(double a, double b, double c, double d, double e, double f) =>
        _buffer.Precise(a).Precise(b).Precise(c).Precise(d).Precise(e).Precise(f).Add("cm\n"u8);

    public void Fill(byte red, byte green, byte blue)
    {
        if (_now.Fill != (red, green, blue))
        {
            _now = _now with { Fill = (red, green, blue) };
            Color(red, green, blue, "g\n"u8, "rg\n"u8);
        }
    }

    public void Stroke(byte red, byte green, byte blue)
    {
        if (_now.Stroke != (red, green, blue))
        {
            _now = _now with { Stroke = (red, green, blue) };
            Color(red, green, blue, "G\n"u8, "RG\n"u8);
        }
    }

    /// <param name="dash">Length of dashes and of the gaps between them; 0 for a solid line.</param>
    public void Pen(double width, double dash = 0)
    {
        if (_now.Width != width)
        {
            _buffer.Add(width).Add("w\n"u8);
        }

        if (_now.Dash != dash)
        {
            _buffer.Character((byte)'[');
            if (dash > 0)
            {
                _buffer.Add(dash);
            }

            _buffer.Add("]0 d\n"u8);
        }

        _now = _now with { Width = width, Dash = dash };
    }

    /// <summary>Ends and corners of lines, by their numbers in tables 54 and 55, and how far corners may reach.</summary>
    public void Corners(int cap, int join, double miterLimit) =>
        _buffer.Add(cap).Add("J "u8).Add(join).Add("j "u8).Add(miterLimit).Add("M\n"u8);

    /// <summary>How much of what is behind is covered from now on, of 255: the graphics state G of that number.</summary>
    public void Opacity(byte opacity) => _buffer.Add("/G"u8).Add((int)opacity).Add("gs\n"u8);

    public void MoveTo(double x, double y) => _buffer.Add(x).Add(y).Add("m\n"u8);

    public void LineTo(double x, double y) => _buffer.Add(x).Add(y).Add("l\n"u8);

    /// <summary>A curve from where the path is, by its two handles, to its end.</summary>
    public void CurveTo(double x1, double y1, double x2, double y2, double x3, double y3) =>
        _buffer.Add(x1).Add(y1).Add(x2).Add(y2).Add(x3).Add(y3).Add("c\n"u8);

    public void Rectangle(int x, int y, int width, int height) => _buffer.Add(x).Add(y).Add(width).Add(height).Add("re\n"u8);

    public void Rectangle(double x, double y, double width, double height) => _buffer.Add(x).Add(y).Add(width).Add(height).Add("re\n"u8);

    /// <summary>Ends a path: <c>f</c> fills it, <c>S</c> strokes it, <c>B</c> does both; with a star, by the even-odd rule.</summary>
    public void Paint(ReadOnlySpan<byte> operation) => _buffer.Add(operation).Character((byte)'\n');

    /// <summary>Draws a form or an image, whose name is its kind's letter and its number.</summary>
    public void Draw(byte kind, int number) => _buffer.Character((byte)'/').Character(kind).Add(number).Add("Do\n"u8);

    /// <summary>What follows belongs to a part of the page.</summary>
    /// <param name="type">The part's structure type.</param>
    /// <param name="mark">As the structure tree knows it.</param>
    public void BeginMarked(ReadOnlySpan<byte> type, int mark) =>
        _buffer.Character((byte)'/').Add(type).Add("<</MCID "u8).Add(mark).Add(">>BDC\n"u8);

    /// <summary>What follows is no part of what the page says.</summary>
    public void BeginArtifact() => _buffer.Add("/Artifact BMC\n"u8);

    public void EndMarked() => _buffer.Add("EMC\n"u8);

    /// <summary>Starts a line of text; its glyphs and kerns follow within brackets: <see cref="EndText"/>.</summary>
    /// <param name="tracking">Added after each glyph.</param>
    public void BeginText(int font, double size, double tracking, double x, double y)
    {
        _buffer.Add("BT\n"u8);
        if ((_now.Font, _now.Size) != (font, size))
        {
            _buffer.Add("/F"u8).Add(font).Add(size).Add("Tf\n"u8);
        }

        if (_now.Tracking != tracking)
        {
            _buffer.Add(tracking).Add("Tc\n"u8);
        }

        _now = _now with { Font = font, Size = size, Tracking = tracking };
        _buffer.Add(x).Add(y).Add("Td[("u8);
    }

    /// <param name="code">Of two bytes.</param>
    public void Glyph(int code)
    {
        _buffer.InString((byte)(code >> 8));
        _buffer.InString((byte)code);
    }

    /// <summary>Moves what follows back, in thousandths of the type's size.</summary>
    public void Kern(int back) => _buffer.Character((byte)')').Add(back).Character((byte)'(');

    public void EndText() => _buffer.Add(")]TJ\nET\n"u8);

    /// <summary>The outline, each of its points moved by the transform.</summary>
    public void Outline(SKPath path, SKMatrix transform)
    {
        using var steps = path.CreateRawIterator();
        var points = new SKPoint[4];
        for (var verb = steps.Next(points); verb != SKPathVerb.Done; verb = steps.Next(points))
        {
            switch (verb)
            {
                case SKPathVerb.Move:
                    Point(points[0], transform).Add("m\n"u8);
                    break;
                case SKPathVerb.Line:
                    Point(points[1], transform).Add("l\n"u8);
                    break;
                case SKPathVerb.Quad:
                    Quadratic(points[0], points[1], points[2], transform);
                    break;
                case SKPathVerb.Conic:
                    var parts = SKPath.ConvertConicToQuads(points[0], points[1], points[2], steps.ConicWeight(), pow2: 2);
                    for (var i = 0; i + 2 < parts.Length; i += 2)
                    {
                        Quadratic(parts[i], parts[i + 1], parts[i + 2], transform);
                    }

                    break;
                case SKPathVerb.Cubic:
                    Cubic(points[1], points[2], points[3], transform);
                    break;
                case SKPathVerb.Close:
                    _buffer.Add("h\n"u8);
                    break;
            }
        }
    }

    /// <summary>PDF has curves of two handles alone; the same curve with each at two thirds of the way to the one.</summary>
    private void Quadratic(SKPoint start, SKPoint handle, SKPoint end, SKMatrix transform) =>
        Cubic(Toward(start, handle), Toward(end, handle), end, transform);

    private static SKPoint Toward(SKPoint end, SKPoint handle) =>
        new(end.X + ((handle.X - end.X) * 2 / 3), end.Y + ((handle.Y - end.Y) * 2 / 3));

    private void Cubic(SKPoint first, SKPoint second, SKPoint end, SKMatrix transform)
    {
        Point(first, transform);
        Point(second, transform);
        Point(end, transform).Add("c\n"u8);
    }

    private PdfBuffer Point(SKPoint point, SKMatrix transform)
    {
        var moved = transform.MapPoint(point);
        return _buffer.Add(moved.X).Add(moved.Y);
    }

    private void Color(byte red, byte green, byte blue, ReadOnlySpan<byte> gray, ReadOnlySpan<byte> color)
    {
        static double Share(byte part) => Math.Round(part / 255.0, 3);

        if (red == green && green == blue)
        {
            _buffer.Add(Share(red)).Add(gray);
        }
        else
        {
            _buffer.Add(Share(red)).Add(Share(green)).Add(Share(blue)).Add(color);
        }
    }

    /// <summary>What was said last, so that it is not said again.</summary>
    private readonly record struct State(
        (byte Red, byte Green, byte Blue) Fill, (byte Red, byte Green, byte Blue) Stroke, double Width, double Dash, int Font, double Size, double Tracking)
    {
        public static State Initial { get; } = default(State) with { Width = 1 };
    }
}
