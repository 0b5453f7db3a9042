using System.Text;

namespace Tagend.Fuzz;

/// <summary>Spoils inputs. The same random numbers spoil the same way.</summary>
/// <param name="tokens">Words that mean something to the reader.</param>
public sealed class Mutation(Random random, IReadOnlyList<byte[]> tokens)
{
    private const int MostChanges = 6;
    private const int LongestRange = 64;
    private const int MostRepeats = 20_000;

    /// <summary>One huge repeat in so many changes: they take long.</summary>
    private const int HugeOneIn = 60;

    private static readonly byte[][] Extremes =
    [
        .. new[]
        {
            "0", "-1", "-0", "1e308", "-1e308", "1e-308", "nan", "inf", "-inf", "2147483648", "9223372036854775807",
            "99999999999999999999999999", "0.0000000001", "1/0", "1_000", "½", "٣", "1000000", "0x7f", "1e9", "100", "0.5",
        }.Select(Encoding.UTF8.GetBytes),
    ];

    public Random Random => random;

    /// <summary>The input that was spoiled last.</summary>
    public byte[] Spoiled { get; set; } = [];

    public T Pick<T>(IReadOnlyList<T> from) => from[random.Next(from.Count)];

    public bool OneIn(int many) => random.Next(many) == 0;

    /// <summary>An input of some, spoiled in one way or several.</summary>
    public byte[] Of(IReadOnlyList<byte[]> inputs)
    {
        var bytes = new List<byte>(Pick(inputs));
        for (var changes = random.Next(1, MostChanges + 1); changes > 0; changes--)
        {
            Change(bytes, inputs);
        }

        return Spoiled = [.. bytes];
    }

    private void Change(List<byte> bytes, IReadOnlyList<byte[]> inputs)
    {
        var at = random.Next(bytes.Count + 1);
        var length = Math.Min(random.Next(1, LongestRange), bytes.Count - at);
        switch (random.Next(11))
        {
            case 0 when length > 0:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1 when length > 0:
                bytes[at] = (byte)random.Next(256);
                break;
            case 2:
                bytes.InsertRange(at, Noise(random.Next(1, 9)));
                break;
            case 3:
                bytes.RemoveRange(at, length);
                break;
            case 4:
                bytes.InsertRange(random.Next(bytes.Count + 1), bytes.GetRange(at, length));
                break;
            case 5:
                Splice(bytes, at, Pick(inputs));
                break;
            case 6:
                bytes.InsertRange(at, Pick(tokens));
                break;
            case 7:
                SwapToken(bytes, at);
                break;
            case 8:
                ReplaceNumber(bytes, at);
                break;
            case 9 when OneIn(4):
                bytes.RemoveRange(at, bytes.Count - at);
                break;
            case 10 when OneIn(HugeOneIn / 11):
                Repeat(bytes, OneIn(2) ? Pick(tokens) : [.. bytes.GetRange(at, Math.Min(length, 4))], at);
                break;
        }
    }

    private byte[] Noise(int count)
    {
        var noise = new byte[count];
        random.NextBytes(noise);
        return noise;
    }

    /// <summary>Up to a place this input, from about there on another.</summary>
    private void Splice(List<byte> bytes, int at, byte[] other)
    {
        bytes.RemoveRange(at, bytes.Count - at);
        bytes.AddRange(other.AsSpan(Math.Clamp(at + random.Next(-LongestRange, LongestRange), 0, other.Length)));
    }

    /// <summary>Puts a token in the place of the next one.</summary>
    private void SwapToken(List<byte> bytes, int from)
    {
        var old = Pick(tokens);
        var at = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(bytes)[from..].IndexOf(old);
        if (at >= 0)
        {
            bytes.RemoveRange(from + at, old.Length);
            bytes.InsertRange(from + at, Pick(tokens));
        }
    }

    private void ReplaceNumber(List<byte> bytes, int from)
    {
        var start = bytes.FindIndex(from, b => b is >= (byte)'0' and <= (byte)'9');
        if (start >= 0)
        {
            var end = bytes.FindIndex(start, b => b is not (>= (byte)'0' and <= (byte)'9') and not (byte)'.');
            bytes.RemoveRange(start, (end < 0 ? bytes.Count : end) - start);
            bytes.InsertRange(start, Pick(Extremes));
        }
    }

    private void Repeat(List<byte> bytes, byte[] what, int at) =>
        bytes.InsertRange(at, Enumerable.Repeat(what, random.Next(2, MostRepeats)).SelectMany(b => b).ToList());
}
