using System.Globalization;
using QRCoder;

namespace Tagend.Pictures;

/// <summary>A code to photograph: its text and its modules, without the quiet zone.</summary>
/// <remarks>The symbols come from QRCoder, an encoder that shares nothing with the readers that are scored.</remarks>
public sealed class Symbol
{
    private const int QuietZone = 4;
    private const int FinderSide = 7;
    /// <summary>White label around the symbol, in modules.</summary>
    private const int Margin = 5;

    private const string UrlCharacters = "abcdefghijklmnopqrstuvwxyz0123456789-_/";

    private readonly bool[] _dark;

    private Symbol(string text, int size, bool[] dark) => (Text, Size, _dark) = (text, size, dark);

    public string Text { get; }

    /// <summary>Modules a side.</summary>
    public int Size { get; }

    /// <summary>The light of a label with this symbol: null beside it.</summary>
    /// <param name="x">Modules from the symbol's left edge.</param>
    /// <param name="y">Modules from the symbol's top edge.</param>
    /// <param name="dark">Light of its dark modules.</param>
    /// <param name="light">Light of the others.</param>
    public double? LightAt(double x, double y, double dark, double light) =>
        x < -Margin || y < -Margin || x >= Size + Margin || y >= Size + Margin ? null
        : x >= 0 && y >= 0 && x < Size && y < Size && IsDark((int)x, (int)y) ? dark : light;

    public bool IsDark(int column, int row) => _dark[(row * Size) + column];

    /// <summary>Whether a module is part of a finder pattern.</summary>
    public bool IsFinder(int column, int row) =>
        (column < FinderSide && row < FinderSide) || (column >= Size - FinderSide && row < FinderSide) || (column < FinderSide && row >= Size - FinderSide);

    /// <summary>Whatever these modules are, row by row; without a text.</summary>
    public static Symbol OfModules(int size, bool[] dark) => new("", size, dark);

    /// <summary>A text at the level tags are printed with.</summary>
    public static Symbol OfText(string text) => Encode(text, QRCodeGenerator.ECCLevel.M);

    /// <summary>A loop tag's code, at the level tags are printed with.</summary>
    public static Symbol OfTag(Random random) => Encode(TagText(random), QRCodeGenerator.ECCLevel.M);

    /// <summary>Somebody else's code: a short address, any level.</summary>
    public static Symbol Foreign(Random random)
    {
        var length = random.Next(4, 70);
        var name = new string([.. Enumerable.Range(0, length).Select(_ => UrlCharacters[random.Next(UrlCharacters.Length)])]);
        return Encode("https://a.example/" + name, (QRCodeGenerator.ECCLevel)random.Next(4));
    }

    /// <summary>Somebody else's code of a version, nearly full.</summary>
    public static Symbol OfVersion(Random random, int version, bool isAlphanumeric)
    {
        const string Capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 $%*+-./:";
        var characters = isAlphanumeric ? Capitals : UrlCharacters;
        // A little less than what level M holds: ISO/IEC 18004:2015, table 7.
        var length = (int)((isAlphanumeric ? 1.45 : 1.0) * ((1.4 * version * version) + (1.5 * version)) * 0.85);
        var text = new string([.. Enumerable.Range(0, length).Select(_ => characters[random.Next(characters.Length)])]);
        return Encode(text, QRCodeGenerator.ECCLevel.M, version);
    }

    private static Symbol Encode(string text, QRCodeGenerator.ECCLevel level, int version = -1)
    {
        var rows = QRCodeGenerator.GenerateQrCode(text, level, requestedVersion: version).ModuleMatrix;
        var inner = rows.Skip(QuietZone).SkipLast(QuietZone);
        return new Symbol(
            text, rows.Count - (2 * QuietZone), [.. inner.SelectMany(r => r.Cast<bool>().Skip(QuietZone).SkipLast(QuietZone))]);
    }

    private static string TagText(Random random)
    {
        string Number(int from, int below, int digits) =>
            (random.Next(from * 1000, below * 1000) / 1000.0).ToString("0." + new string('#', digits), CultureInfo.InvariantCulture);
        var body = $"TE1*{random.Next(1000, 9999)}*STRING*COMPOUND-STRING*1*2026{random.Next(1, 13):00}{random.Next(1, 29):00}*IN"
            + $"*L{Number(61, 90, 3)}/.0625*W{random.Next(30, 80)}*MHMPE-0145/24/.07941976*T{random.Next(20, 70)}/R/.54/.51{random.Next(100000)}/0/C"
            + $"*J1/.25/{Number(61, 90, 3)}{random.Next(10000, 99999)}/.0625/5*CBLACK/12+RED/12*YT021/.021/BLACK+T017/.017/RED"
            + $"*SA0/{Number(0, 9, 2)}/1+C26.25/{Number(27, 40, 2)}/2+B52.25/60.25/1*PPEEP/{Number(0, 30, 1)}"
            + $"*NS9.5+N29+S50.75*B696.9599998*X300/20/60.{random.Next(10000000)}*G.116*Q{random.Next(1000, 9999)}";
        var check = System.IO.Hashing.Crc32.HashToUInt32(System.Text.Encoding.ASCII.GetBytes(body));
        return $"{body}*E{check.ToString("X8", CultureInfo.InvariantCulture)}";
    }
}
