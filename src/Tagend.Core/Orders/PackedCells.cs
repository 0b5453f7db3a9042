using System.Runtime.InteropServices;

namespace Tagend.Orders;

/// <summary>The cells of many records, to be had again: each text is held once, for in a season the same ones come again and again.</summary>
internal sealed class PackedCells
{
    private const int Bits = 7;
    private const byte GoesOn = 1 << Bits;

    private readonly List<string> _texts = [];

    /// <summary>Of each record the number of its cells and which texts they are, each in as few bytes as it takes: the texts that come first come most.</summary>
    private readonly List<byte> _packed = [];

    private Dictionary<string, int> _numbers = [];

    /// <returns>Where they are, for <see cref="At"/>.</returns>
    public int Add(IReadOnlyList<string> cells)
    {
        var place = _packed.Count;
        Write(cells.Count);
        for (var i = 0; i < cells.Count; i++)
        {
            Write(NumberOf(cells[i]));
        }

        return place;
    }

    /// <summary>Makes room for as many times the records that are kept; texts that come again need none.</summary>
    public void MakeRoom(double times) => _packed.EnsureCapacity((int)(_packed.Count * times));

    /// <summary>Lets go of what only adding needs: nothing is added any more.</summary>
    public void Close()
    {
        _packed.TrimExcess();
        _texts.TrimExcess();
        _numbers = [];
    }

    /// <summary>The cells again; from any thread, while none are added.</summary>
    public string[] At(int place)
    {
        var packed = CollectionsMarshal.AsSpan(_packed)[place..];
        var cells = new string[Read(ref packed)];
        for (var i = 0; i < cells.Length; i++)
        {
            cells[i] = _texts[Read(ref packed)];
        }

        return cells;
    }

    private static int Read(ref Span<byte> packed)
    {
        var (number, at) = (0, 0);
        byte next;
        do
        {
            next = packed[at];
            number |= (next & ~GoesOn) << (Bits * at++);
        }
        while ((next & GoesOn) != 0);
        packed = packed[at..];
        return number;
    }

    private void Write(int number)
    {
        for (; number >= GoesOn; number >>= Bits)
        {
            _packed.Add((byte)(number | GoesOn));
        }

        _packed.Add((byte)number);
    }

    private int NumberOf(string text)
    {
        ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(_numbers, text, out var isKnown);
        if (!isKnown)
        {
            number = _texts.Count;
            _texts.Add(text);
        }

        return number;
    }
}
