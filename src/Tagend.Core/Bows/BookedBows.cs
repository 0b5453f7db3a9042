using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Bows;

/// <summary>Rows that name a bow of the book get from it what they do not say themselves; a row without a piece is the whole set.</summary>
/// <param name="inner">How the file itself is read.</param>
/// <param name="book">Read when the first row names a bow, its mistakes added to the problems.</param>
public sealed class BookedBows(OrderFormat inner, Func<List<Problem>, BowBook> book) : OrderFormat
{
    private BowBook? _book;

    internal override IOrderLayout? LayoutOf(string file, OrderRecord header, List<Problem> problems) =>
        inner.LayoutOf(file, header, problems) is { } layout ? new Layout(layout, this) : null;

    private sealed class Layout(IOrderLayout inner, BookedBows bows) : IOrderLayout
    {
        public bool NumbersRepeats => inner.NumbersRepeats;

        public LengthUnit? Unit => inner.Unit;

        public Problem? Fault(OrderRecord record) => inner.Fault(record);

        public string? OrderOf(OrderRecord record) => inner.OrderOf(record);

        public IReadOnlyList<LaidRow> Rows(int line, IReadOnlyList<string> written, List<Problem> problems)
        {
            var rows = inner.Rows(line, written, problems);
            return rows.Count == 1 ? Booked(rows[0], problems) : [.. rows.SelectMany(row => Booked(row, problems))];
        }

        public string? Remark(string file) => inner.Remark(file);

        private IReadOnlyList<LaidRow> Booked(LaidRow row, List<Problem> problems) =>
            row.Row[OrderColumn.Bow] is { } written ? new BookedRow(row, written, bows._book ??= bows.Book(problems), problems).Rows() : [row];
    }

    private BowBook Book(List<Problem> problems) => book(problems);
}
