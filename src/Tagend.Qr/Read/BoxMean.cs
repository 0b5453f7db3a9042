namespace Tagend.Qr.Read;

/// <summary>Means over squares around each pixel, in a time that does not depend on the square.</summary>
internal static class BoxMean
{
    /// <param name="radius">The square is 2 × radius + 1 pixels a side, less at the picture's edge.</param>
    /// <param name="row">Gets each row's number and means, from the top; the means are overwritten after it returns.</param>
    public static void Each(GrayPicture picture, int radius, Action<int, float[]> row)
    {
        var (w, h, pixels) = (picture.Width, picture.Height, picture.Pixels);
        var columns = new int[w];
        var means = new float[w];
        for (var y = -radius; y < h; y++)
        {
            AddRow(y + radius, 1);
            AddRow(y - radius - 1, -1);
            if (y < 0)
            {
                continue;
            }

            var rows = Math.Min(y + radius, h - 1) - Math.Max(y - radius, 0) + 1;
            var sum = 0L;
            for (var x = 0; x < Math.Min(radius, w); x++)
            {
                sum += columns[x];
            }

            for (var x = 0; x < w; x++)
            {
                if (x + radius < w)
                {
                    sum += columns[x + radius];
                }

                if (x - radius - 1 >= 0)
                {
                    sum -= columns[x - radius - 1];
                }

                means[x] = (float)sum / (rows * (Math.Min(x + radius, w - 1) - Math.Max(x - radius, 0) + 1));
            }

            row(y, means);
        }

        void AddRow(int y, int sign)
        {
            if (y < 0 || y >= h)
            {
                return;
            }

            var source = pixels.AsSpan(y * w, w);
            for (var x = 0; x < source.Length; x++)
            {
                columns[x] += sign * source[x];
            }
        }
    }
}
