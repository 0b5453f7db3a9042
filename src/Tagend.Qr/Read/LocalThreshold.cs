namespace Tagend.Qr.Read;

/// <summary>What is dark, by the mean around each pixel, in a time that does not depend on how far around.</summary>
/// <remarks>Pixels of a block of 4 × 4 share a mean.</remarks>
internal static class LocalThreshold
{
    private const int Block = 4;

    /// <param name="picture">In gray.</param>
    /// <param name="radius">Of the surroundings, in pixels.</param>
    /// <param name="row">Gets each row's number and thresholds, from the top; what is below is dark. They are overwritten after it returns.</param>
    public static void Each(GrayPicture picture, int radius, Action<int, byte[]> row)
    {
        var sums = BlockSums(picture, out var columns, out var rows);
        var reach = Math.Max(1, (radius + (Block / 2)) / Block);
        var (column, thresholds) = (new int[columns], new byte[columns * Block]);
        for (var y = -reach; y < rows; y++)
        {
            AddRow(y + reach, 1);
            AddRow(y - reach - 1, -1);
            if (y < 0)
            {
                continue;
            }

            var high = Math.Min((y + reach + 1) * Block, picture.Height) - (Math.Max(y - reach, 0) * Block);
            var sum = 0;
            for (var x = 0; x < Math.Min(reach, columns); x++)
            {
                sum += column[x];
            }

            for (var x = 0; x < columns; x++)
            {
                sum += x + reach < columns ? column[x + reach] : 0;
                sum -= x - reach - 1 >= 0 ? column[x - reach - 1] : 0;
                var pixels = high * (Math.Min((x + reach + 1) * Block, picture.Width) - (Math.Max(x - reach, 0) * Block));
                // Light by less than one gray level is no darkness.
                var threshold = (byte)Math.Max(0, ((sum + pixels - 1) / pixels) - 1);
                thresholds.AsSpan(x * Block, Block).Fill(threshold);
            }

            for (var line = y * Block; line < Math.Min((y + 1) * Block, picture.Height); line++)
            {
                row(line, thresholds);
            }
        }

        void AddRow(int y, int sign)
        {
            if (y < 0 || y >= rows)
            {
                return;
            }

            var source = sums.AsSpan(y * columns, columns);
            for (var x = 0; x < source.Length; x++)
            {
                column[x] += sign * source[x];
            }
        }
    }

    private static ushort[] BlockSums(GrayPicture picture, out int columns, out int rows)
    {
        (columns, rows) = ((picture.Width + Block - 1) / Block, (picture.Height + Block - 1) / Block);
        var sums = new ushort[columns * rows];
        for (var y = 0; y < picture.Height; y++)
        {
            var source = picture.Pixels.AsSpan(y * picture.Width, picture.Width);
            var target = sums.AsSpan(y / Block * columns, columns);
            var whole = picture.Width / Block;
            for (var x = 0; x < whole; x++)
            {
                var four = source.Slice(x * Block, Block);
                target[x] += (ushort)(four[0] + four[1] + four[2] + four[3]);
            }

            for (var x = whole * Block; x < source.Length; x++)
            {
                target[whole] += source[x];
            }
        }

        return sums;
    }
}
