using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>A way in which files of orders are written: our own columns, or those of a shop's other programs.</summary>
public abstract class OrderFormat
{
    /// <summary>How the records below a header are read; null, with problems added, where the header is not of this format.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    internal abstract IOrderLayout? LayoutOf(string file, OrderRecord header, List<Problem> problems);
}

/// <summary>Our own columns, one row a piece.</summary>
/// <param name="aliases">The shop's names for columns, to ours.</param>
/// <param name="hasBows">There is a bow book: a file that names bows may leave out pieces and lengths.</param>
public sealed class OwnColumns(IReadOnlyDictionary<string, string> aliases, bool hasBows = false) : OrderFormat
{
    internal override IOrderLayout? LayoutOf(string file, OrderRecord header, List<Problem> problems) =>
        OrderHeader.TryRead(file, header, aliases, hasBows, problems, out var read) ? read : null;
}

/// <summary>How the records of one file become rows of orders.</summary>
internal interface IOrderLayout
{
    /// <summary>A second piece of a name in an order of this file is another piece, and gets a number.</summary>
    bool NumbersRepeats { get; }

    /// <summary>Of a length that names none; null for the shop's own.</summary>
    LengthUnit? Unit { get; }

    /// <summary>What is wrong with a record as a whole; its cells cannot be trusted then.</summary>
    Problem? Fault(OrderRecord record);

    /// <summary>The order's number in a record that may be at fault, where it can be read.</summary>
    string? OrderOf(OrderRecord record);

    /// <summary>The rows of a record: none where it is left out, several where it holds several pieces. The same ones each time.</summary>
    /// <param name="line">Where the record starts.</param>
    IReadOnlyList<LaidRow> Rows(int line, IReadOnlyList<string> written, List<Problem> problems);

    /// <summary>What whoever runs the program should know of the reading, once all records are read; null where there is nothing.</summary>
    string? Remark(string file);
}

/// <summary>A row of an order, and what is printed as its notes.</summary>
internal readonly record struct LaidRow(OrderRow Row, string Notes);
