using System.Globalization;

namespace Tagend.PaperTests;

/// <summary>A page as a renderer that is not ours put it on dots; 0 is black, 255 paper.</summary>
internal sealed class Rendering
{
    private readonly byte[] _file;
    private readonly int _start;

    /// <param name="file">A portable graymap of 8 bits.</param>
    private Rendering(byte[] file)
    {
        var words = new List<string>();
        var at = 0;
        while (words.Count < 4)
        {
            var from = at;
            while (file[at] is not ((byte)' ' or (byte)'\n'))
            {
                at++;
            }

            var word = System.Text.Encoding.ASCII.GetString(file[from..at]);
            at++;
            if (word.StartsWith('#'))
            {
                while (file[at - 1] != '\n')
                {
                    at++;
                }
            }
            else
            {
                words.Add(word);
            }
        }

        (_file, _start) = (file, at);
        Width = int.Parse(words[1], CultureInfo.InvariantCulture);
        Height = int.Parse(words[2], CultureInfo.InvariantCulture);
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>By poppler, all of a page, or a column of it one dot wide.</summary>
    public static Rendering ByPoppler(Sample sample, string pdf, int page, int dotsPerInch, int? column = null)
    {
        var picture = sample.Place("poppler");
        string[] area = column is { } x ? ["-x", $"{x}", "-y", "0", "-W", "1", "-H", "1000000"] : [];
        OutsideTool.Run(
            "pdftoppm", ["-r", $"{dotsPerInch}", "-gray", "-f", $"{page}", "-singlefile", .. area, pdf, picture]);
        return new Rendering(File.ReadAllBytes(picture + ".pgm"));
    }

    /// <summary>By Ghostscript, with smooth edges.</summary>
    public static Rendering ByGhostscript(Sample sample, string pdf, int page, int dotsPerInch)
    {
        var picture = sample.Place("ghostscript.pgm");
        OutsideTool.Run(
            "gs", "-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=pgmraw", "-dTextAlphaBits=4", "-dGraphicsAlphaBits=4", $"-r{dotsPerInch}",
            $"-dFirstPage={page}", $"-dLastPage={page}", $"-sOutputFile={picture}", pdf);
        return new Rendering(File.ReadAllBytes(picture));
    }

    /// <summary>By MuPDF.</summary>
    public static Rendering ByMuPdf(Sample sample, string pdf, int page, int dotsPerInch)
    {
        var picture = sample.Place("mupdf.pgm");
        OutsideTool.Run("mutool", "draw", "-q", "-r", $"{dotsPerInch}", "-c", "gray", "-F", "pgm", "-o", picture, pdf, $"{page}");
        return new Rendering(File.ReadAllBytes(picture));
    }

    /// <summary>Dark stretches of a column, from the top.</summary>
    public IReadOnlyList<Dark> Down(int column) => Runs(Enumerable.Range(0, Height).Select(y => Shade(column, y)));

    /// <summary>Dark stretches of a row, from the left.</summary>
    public IReadOnlyList<Dark> Across(int row) => Runs(Enumerable.Range(0, Width).Select(x => Shade(x, row)));

    /// <summary>0 is black.</summary>
    public byte Shade(int x, int y) => _file[_start + (y * Width) + x];

    private static List<Dark> Runs(IEnumerable<byte> shades)
    {
        var runs = new List<Dark>();
        var (ink, moment, place) = (0.0, 0.0, 0);
        foreach (var shade in shades.Append((byte)255))
        {
            var dark = (255 - shade) / 255.0;
            if (dark > 0)
            {
                ink += dark;
                moment += dark * (place + 0.5);
            }
            else if (ink > 0)
            {
                runs.Add(new Dark(moment / ink, ink));
                (ink, moment) = (0, 0);
            }

            place++;
        }

        return runs;
    }
}

/// <summary>A dark stretch of a row or a column, in dots: its middle and its length, both weighed by shade.</summary>
internal sealed record Dark(double Middle, double Length)
{
    public double Start => Middle - (Length / 2);

    public double End => Middle + (Length / 2);
}
