using SkiaSharp;

namespace Tagend.Scan;

/// <summary>How gray becomes black and white.</summary>
internal enum Threshold
{
    /// <summary>A threshold for each small block: copes with shadows.</summary>
    Local,

    /// <summary>One threshold for the whole picture: copes with noise.</summary>
    Global,
}

/// <summary>What is done to the picture first.</summary>
internal enum Treatment
{
    AsIs,
    Blurred,
    Inverted,
}

/// <summary>One way to look at a picture.</summary>
/// <param name="Round">All passes of a round are made; later rounds only if nothing was found.</param>
/// <param name="Scale">Of width and height.</param>
internal sealed record ReadingPass(int Round, double Scale, Treatment Treatment, Threshold Threshold)
{
    /// <summary>Cheapest first within what is likely to help. More ways to look are more rows here.</summary>
    public static IReadOnlyList<ReadingPass> All { get; } =
    [
        new(1, 1.0, Treatment.AsIs, Threshold.Local),
        new(1, 1.0, Treatment.AsIs, Threshold.Global),
        new(2, 0.5, Treatment.AsIs, Threshold.Local),
        new(2, 0.5, Treatment.AsIs, Threshold.Global),
        new(3, 0.25, Treatment.AsIs, Threshold.Local),
        new(3, 1.0, Treatment.Blurred, Threshold.Local),
        new(4, 1.0, Treatment.Inverted, Threshold.Local),
        new(5, 2.0, Treatment.AsIs, Threshold.Local),
        new(6, 2.0, Treatment.Blurred, Threshold.Local),
    ];

    /// <summary>Of the blur, in pixels after scaling: takes out single-pixel noise.</summary>
    private const float BlurSigma = 1.2f;

    /// <summary>Pixels this pass looks at.</summary>
    public double Cost(SKBitmap picture) => (double)picture.Width * picture.Height * Scale * Scale;

    /// <summary>The picture as this pass looks at it.</summary>
    public SKBitmap Apply(SKBitmap picture)
    {
        var width = Math.Max(1, (int)Math.Round(picture.Width * Scale));
        var height = Math.Max(1, (int)Math.Round(picture.Height * Scale));
        var treated = new SKBitmap(new SKImageInfo(width, height, SKColorType.Gray8, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(treated);
        using var blur = Treatment == Treatment.Blurred ? SKImageFilter.CreateBlur(BlurSigma, BlurSigma) : null;
        using var inversion = Treatment == Treatment.Inverted
            ? SKColorFilter.CreateHighContrast(false, SKHighContrastConfigInvertStyle.InvertBrightness, 0)
            : null;
        using var paint = new SKPaint { ImageFilter = blur, ColorFilter = inversion };
        var sampling = new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Nearest);
        canvas.DrawBitmap(picture, SKRect.Create(width, height), sampling, paint);
        return treated;
    }
}
