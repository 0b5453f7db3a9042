using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>What the rows of a set say together: piece names that must differ, slips that must not.</summary>
internal sealed class OrderSets
{
    private readonly Dictionary<(string Order, string Piece), (string File, int Line)> _pieces = [];

    public OrderSlips Slips { get; } = new();

    /// <summary>Makes room for as many times the pieces that are known.</summary>
    public void MakeRoom(double times)
    {
        _pieces.EnsureCapacity((int)(_pieces.Count * times));
        Slips.MakeRoom(times);
    }

    /// <summary>Adds a row of an order; its other cells may be at fault.</summary>
    /// <param name="numbersRepeats">A second piece of a name in the same file is another piece, called <c>yoke 2</c>.</param>
    /// <returns>What the piece is called in its set; null where its name cannot be read.</returns>
    public string? Add(string order, OrderRow row, bool numbersRepeats, List<Problem> problems)
    {
        string? piece = null;
        if (row[OrderColumn.Piece] is { } text && NameReader.TryReadName(text, out piece, out _))
        {
            piece = numbersRepeats ? Numbered(order, piece, row.File) : piece;
            if (!_pieces.TryAdd((Slips.Once(order), Slips.Once(piece)), (row.File, row.Line)))
            {
                var (file, line) = _pieces[(order, piece)];
                problems.Add(row.Problem(OrderColumn.Piece, OrderWording.PieceTwice(order, OrderWording.Line(file, line, row.File))));
            }
        }

        Slips.Add(order, row, problems);
        return piece;
    }

    /// <summary>The name itself, or the first free number behind it; as it is where another file has it, which is no repeat.</summary>
    private string Numbered(string order, string piece, string file)
    {
        var name = piece;
        var stem = piece.TrimEnd("0123456789".ToCharArray()).TrimEnd();
        for (var number = 2; IsTaken(name) || (name == piece && IsTaken($"{piece} 1")); number++)
        {
            name = FormattableString.Invariant($"{stem} {number}");
        }

        return name;

        bool IsTaken(string name) => _pieces.TryGetValue((order, name), out var taken) && taken.File == file;
    }
}
