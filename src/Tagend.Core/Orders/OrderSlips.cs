using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>What the rows of each set say of customer, bow, due date and the customer's sheet: once, or the same in every row.</summary>
internal sealed class OrderSlips
{
    private static readonly string[] Columns =
        [OrderColumn.Customer, OrderColumn.Bow, OrderColumn.Due, OrderColumn.Language, OrderColumn.Units];

    /// <summary>By order, once all rows are read; without notes.</summary>
    private readonly Dictionary<string, OrderSlip> _slips = [];

    // By order, the text and line of each column; no text where no row has any.
    private Dictionary<string, (string? Text, string File, int Line)[]> _said = [];
    private HashSet<string> _texts = [];

    /// <summary>Makes room for as many times the orders that are known.</summary>
    public void MakeRoom(double times) => _said.EnsureCapacity((int)(_said.Count * times));

    /// <summary>Adds a row of an order.</summary>
    public void Add(string order, OrderRow row, List<Problem> problems)
    {
        if (!_said.TryGetValue(order, out var said))
        {
            said = new (string?, string, int)[Columns.Length];
            _said.Add(Once(order), said);
        }

        for (var i = 0; i < Columns.Length; i++)
        {
            if (row[Columns[i]] is not { } written || written == said[i].Text)
            {
                continue;
            }

            var line = OneLine(written);
            if (said[i].Text is not { } first)
            {
                said[i] = (Once(line), row.File, row.Line);
            }
            else if (!line.Equals(first, StringComparison.OrdinalIgnoreCase))
            {
                problems.Add(row.Problem(Columns[i], OrderWording.Disagrees(order, OrderWording.Line(said[i].File, said[i].Line, row.File), first)));
            }
        }
    }

    /// <summary>Ends the reading: no row is added any more, and where each text stood is let go of.</summary>
    public void Close()
    {
        _slips.EnsureCapacity(_said.Count);
        foreach (var (order, said) in _said)
        {
            _slips.Add(order, new OrderSlip(said[0].Text ?? "", said[1].Text ?? "", said[2].Text ?? "", "")
            {
                Language = said[3].Text?.ToLowerInvariant() ?? "",
                Units = UnitsReader.TryRead(said[4].Text ?? "", out var unit) ? unit : null,
            });
        }

        (_said, _texts) = ([], []);
    }

    /// <summary>A piece's slip, after the reading: its own notes, and what any row of the set says; blank where the order is not known.</summary>
    public OrderSlip Of(string order, string notes) => _slips.TryGetValue(order, out var slip) ? slip with { Notes = notes } : OrderSlip.Blank;

    /// <summary>An equal text that is held already: the same orders, pieces and bows come again and again.</summary>
    public string Once(string text)
    {
        if (_texts.TryGetValue(text, out var same))
        {
            return same;
        }

        _texts.Add(text);
        return text;
    }

    /// <summary>The text itself where it is one already: it is held as a cell too.</summary>
    private static string OneLine(string text)
    {
        var line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line == text ? text : line;
    }
}
