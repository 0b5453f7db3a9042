namespace Tagend.Qr.Read;

/// <summary>An upright part of a picture, in pixels.</summary>
internal readonly record struct Region(int Left, int Top, int Width, int Height)
{
    /// <summary>In a smaller part no symbol is found.</summary>
    private const int LeastSide = 64;

    public Point Corner => new(Left, Top);

    /// <summary>Around codes, with some of their size on each side.</summary>
    public static Region Around(IEnumerable<FoundCode> codes, float margin)
    {
        var corners = codes.SelectMany(c => (Point[])[c.Place.TopLeft, c.Place.TopRight, c.Place.BottomLeft, c.Place.BottomRight]).ToList();
        var (left, right) = (corners.Min(p => p.X), corners.Max(p => p.X));
        var (top, bottom) = (corners.Min(p => p.Y), corners.Max(p => p.Y));
        var beside = margin * Math.Max(right - left, bottom - top);
        return new Region((int)(left - beside), (int)(top - beside), (int)(right - left + (2 * beside)), (int)(bottom - top + (2 * beside)));
    }

    /// <summary>What of it is in a picture; null where that is too little.</summary>
    public Region? Within(GrayPicture picture)
    {
        var (left, top) = (Math.Max(Left, 0), Math.Max(Top, 0));
        var (width, height) = (Math.Min(Left + Width, picture.Width) - left, Math.Min(Top + Height, picture.Height) - top);
        return width >= LeastSide && height >= LeastSide ? new Region(left, top, width, height) : null;
    }
}
