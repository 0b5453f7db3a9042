namespace Tagend.Qr.Encode;

/// <summary>The dark areas of a QR code as bars: every rectangle of dark modules that no larger one holds.</summary>
/// <remarks>Neighbors are together in one of them, so that programs that smooth edges show no seam between them.</remarks>
internal static class QrBars
{
    public static IReadOnlyList<Bar> Of(QrSymbol symbol)
    {
        var (side, bars, row) = (symbol.Modules, new List<Bar>(), new List<Bar>());
        var (right, down) = (new byte[side * side], new byte[side * side]); // dark modules from one on: of 177 at the most
        for (var place = right.Length - 1; place >= 0; place--)
        {
            if (symbol.IsDark(place % side, place / side))
            {
                right[place] = (byte)(1 + (place % side == side - 1 ? 0 : right[place + 1]));
                down[place] = (byte)(1 + (place / side == side - 1 ? 0 : down[place + side]));
            }
        }

        for (var y = 0; y < side; y++)
        {
            for (var x = 0; x < side; x++)
            {
                AddFrom(x, y);
            }

            row.Sort((a, b) => (a.Width, a.Height, a.X).CompareTo((b.Width, b.Height, b.X))); // a file has less to say of those of one size in a row
            bars.AddRange(row);
            row.Clear();
        }

        return bars;

        // From its top left, a rectangle gets narrower the more rows it has; it is a bar where it can grow to no side.
        void AddFrom(int x, int y)
        {
            var place = (y * side) + x;
            var above = y == 0 ? 0 : right[place - side];
            var before = x == 0 ? 0 : down[place - 1];
            for (int width = right[place], height = 1; width > above; height++)
            {
                var next = y + height == side ? 0 : Math.Min(width, right[place + (height * side)]);
                if (next < width && before < height)
                {
                    row.Add(new Bar((byte)x, (byte)y, (byte)width, (byte)height));
                }

                width = next;
            }
        }
    }
}

/// <summary>A dark rectangle of a symbol. In bytes, for a page with a code has several hundred.</summary>
/// <param name="X">Modules from the symbol's left edge, without the quiet zone.</param>
/// <param name="Y">Modules from its top edge.</param>
/// <param name="Width">In modules, 1 or more.</param>
/// <param name="Height">In modules, 1 or more.</param>
public readonly record struct Bar(byte X, byte Y, byte Width, byte Height);
