namespace Tagend.Qr.Read;

/// <summary>Bits of data codewords, the highest of each first.</summary>
internal sealed class BitReader(byte[] codewords)
{
    private int _next;

    public int Left => (codewords.Length * 8) - _next;

    /// <summary>The next bits as a number; there must be as many <see cref="Left"/>.</summary>
    public int Take(int bits)
    {
        var value = 0;
        for (; bits > 0; bits--, _next++)
        {
            value = value << 1 | (codewords[_next / 8] >> (7 - (_next % 8)) & 1);
        }

        return value;
    }
}
