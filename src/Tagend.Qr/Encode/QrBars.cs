namespace Tagend.Qr.Encode;

/// <summary>The dark areas of a QR code as bars: every rectangle of dark modules that no larger one holds.</summary>
/// <remarks>Neighbors are together in one of them, so that programs that smooth edges show no seam between them.</remarks>
internal static class QrBars
{
    public static IReadOnlyList<Bar> Of(QrSymbol symbol)
    {
        var bars = new List<Bar>();
        var row = new List<Bar>();
        for (var y = 0; y < symbol.Modules; y++)
        {
            for (var x = 0; x < symbol.Modules; x++)
            {
                AddFrom(x, y);
            }

            bars.AddRange(row.OrderBy(b => b.Width).ThenBy(b => b.Height)); // a file has less to say of those of one size in a row
            row.Clear();
        }

        return bars;

        // From its top left, a rectangle gets narrower the more rows it has; it is a bar where it can grow to no side.
        void AddFrom(int x, int y)
        {
            var (width, height) = (DarkInRow(x, y, symbol.Modules - x), 1);
            while (width > 0)
            {
                var next = DarkInRow(x, y + height, width);
                if (next < width && !IsDarkRow(x, y - 1, width) && !IsDarkColumn(x - 1, y, height))
                {
                    row.Add(new Bar((byte)x, (byte)y, (byte)width, (byte)height)); // of 177 modules at the most
                }

                (width, height) = (next, height + 1);
            }
        }

        int DarkInRow(int x, int y, int most)
        {
            var count = 0;
            while (count < most && IsDark(x + count, y))
            {
                count++;
            }

            return count;
        }

        bool IsDarkRow(int x, int y, int width) => DarkInRow(x, y, width) == width;

        bool IsDarkColumn(int x, int y, int height)
        {
            var count = 0;
            while (count < height && IsDark(x, y + count))
            {
                count++;
            }

            return count == height;
        }

        bool IsDark(int x, int y) => x >= 0 && y >= 0 && y < symbol.Modules && symbol.IsDark(x, y);
    }
}

/// <summary>A dark rectangle of a symbol. In bytes, for a page with a code has several hundred.</summary>
/// <param name="X">Modules from the symbol's left edge, without the quiet zone.</param>
/// <param name="Y">Modules from its top edge.</param>
/// <param name="Width">In modules, 1 or more.</param>
/// <param name="Height">In modules, 1 or more.</param>
public readonly record struct Bar(byte X, byte Y, byte Width, byte Height);
