using Tagend.Qr.Symbol;
using ZXing.QrCode.Internal;

namespace Tagend.Qr.Encode;

/// <summary>Share of a symbol's codewords that may be lost and still be read (ISO/IEC 18004:2015, 7.5.1).</summary>
public enum QrRecovery
{
    /// <summary>7 %.</summary>
    L,

    /// <summary>15 %.</summary>
    M,

    /// <summary>25 %.</summary>
    Q,

    /// <summary>30 %.</summary>
    H,
}

/// <summary>A QR code, as dark and light modules, without its quiet zone.</summary>
/// <remarks>Texts of the alphanumeric set are encoded in that mode; the mask is the one the standard scores best.</remarks>
public sealed class QrSymbol
{
    /// <summary>Light modules around a symbol (ISO/IEC 18004:2015, 9.1).</summary>
    public const int QuietModules = 4;

    private readonly byte[] _modules;
    private readonly Lazy<IReadOnlyList<Bar>> _bars;

    private QrSymbol(QrCodewords codewords, ErrorCorrectionLevel level)
    {
        var layout = SymbolLayout.Of(17 + (4 * codewords.Version));
        (Version, Modules, IsAlphanumeric) = (codewords.Version, layout.Size, codewords.IsAlphanumeric);
        (Mask, _modules) = QrMask.BestFor(layout.Bare(codewords.Bytes), layout, level);
        _bars = new(() => QrBars.Of(this));
    }

    /// <summary>The version, 1 to 40, which sets the size: 4 × version + 17 modules a side.</summary>
    public int Version { get; }

    /// <summary>The number of the data mask pattern, 0 to 7 (ISO/IEC 18004:2015, table 10).</summary>
    public int Mask { get; }

    /// <summary>The modules a side, without the quiet zone: 21 to 177.</summary>
    public int Modules { get; }

    /// <summary>Whether all of the text is in the 45 characters of the alphanumeric mode (ISO/IEC 18004:2015, table 5).</summary>
    public bool IsAlphanumeric { get; }

    /// <summary>The dark areas as rectangles in modules, which may overlap; counted from the top left without the quiet zone.</summary>
    public IReadOnlyList<Bar> Bars => _bars.Value;

    /// <summary>Whether a module is dark.</summary>
    /// <param name="column">From the left, 0 to <see cref="Modules"/> - 1.</param>
    /// <param name="row">From the top, 0 to <see cref="Modules"/> - 1.</param>
    public bool IsDark(int column, int row) => _modules[(row * Modules) + column] == 1;

    /// <summary>Encodes a text in the smallest symbol that holds it.</summary>
    /// <param name="text">At least one character; those of the alphanumeric set take the least room.</param>
    /// <param name="recovery">The error correction level.</param>
    /// <returns>Null where the text is too long for version 40 at this level.</returns>
    public static QrSymbol? Of(string text, QrRecovery recovery = QrRecovery.M)
    {
        var level = LevelOf(recovery);
        return QrCodewords.Of(text, level) is { } codewords ? new QrSymbol(codewords, level) : null;
    }

    private static ErrorCorrectionLevel LevelOf(QrRecovery recovery) => recovery switch
    {
        QrRecovery.L => ErrorCorrectionLevel.L,
        QrRecovery.M => ErrorCorrectionLevel.M,
        QrRecovery.Q => ErrorCorrectionLevel.Q,
        QrRecovery.H => ErrorCorrectionLevel.H,
        _ => throw new InvalidOperationException($"no level for {recovery}"),
    };
}
