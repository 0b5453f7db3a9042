using System.Text;
using Tagend.Measures;

namespace Tagend.Jobs.Sql;

/// <summary>A search as conditions on the jobs table, for what is asked alone, so that the database can choose an index.</summary>
internal sealed class JobConditions
{
    private readonly StringBuilder _sql = new();
    private readonly List<(string Name, object Value)> _values = [];
    private readonly PartSearch _parts;
    private readonly bool _isByDate;
    private readonly bool _isNewestFirst;

    public JobConditions(JobSearch search, SqlStore store)
    {
        Add(search.Order, "order_number = @order", "order");
        Add(search.Piece, "piece = @piece", "piece");
        Add(search.From is { } from ? DateWriter.Iso(from) : null, "issued >= @from", "from");
        Add(search.To is { } to ? DateWriter.Iso(to) : null, "issued <= @to", "to");
        Add(search.Lot?.ToUpperInvariant(), "jobs.number IN (SELECT l.job FROM build_lots l JOIN builds b ON b.number = l.build WHERE l.lot = @lot AND b.struck = 0)", "lot");
        _sql.Append(search.IsBuilt ? " AND builds > 0" : "");
        _sql.Append(search.IsOpen ? " AND order_number IN (SELECT order_number FROM jobs WHERE mark = '')" : "");
        _isNewestFirst = search.IsNewestFirst;
        var isNarrow = search.Order is not null || search.Lot is not null;
        _isByDate = !isNarrow && (search.From is not null || search.To is not null);
        _parts = store.Having([.. PartOf(search.Customer, "customer_folded"), .. PartOf(search.Bow, "bow_folded")], isNarrow || _isByDate);
    }

    /// <summary>The columns that the jobs, named <c>j</c>, are in the order of.</summary>
    public string Order => _isByDate ? $"j.issued {Direction}, j.number {Direction}" : $"j.number {Direction}";

    private string Direction => _isNewestFirst ? "DESC" : "ASC";

    /// <summary>Selects the first jobs behind one, in their order. Where dates are asked for it is that of an index of dates, which ends with its last date.</summary>
    /// <param name="size">So many at most.</param>
    public string Page(int size)
    {
        var behind = _isNewestFirst ? "<" : ">";
        return _isByDate
            ? $"SELECT jobs.* FROM jobs WHERE (jobs.issued, jobs.number) {behind} (@issued, @after){_parts.Sql}{_sql} ORDER BY jobs.issued {Direction}, jobs.number {Direction} LIMIT {size}"
            : $"SELECT jobs.* FROM {_parts.Source} WHERE {_parts.Number} {behind} @after{_parts.Sql}{_sql} ORDER BY {_parts.Number} {Direction} LIMIT {size}";
    }

    /// <summary>The parameters of a page.</summary>
    /// <param name="after">The job before it; null for the first page.</param>
    public (string Name, object Value)[] ValuesAfter(PrintedJob? after) =>
    [
        .. _values,
        .. _parts.Values,
        ("after", after?.Number ?? (_isNewestFirst ? long.MaxValue : 0L)),
        .. _isByDate ? [("issued", after is not null ? DateWriter.Iso(after.Issued) : _isNewestFirst ? "~" : "")] : Array.Empty<(string, object)>(),
    ];

    /// <summary>A text with no difference of case, as it is searched.</summary>
    public static string Folded(string text) => text.ToUpperInvariant();

    private void Add(string? value, string sql, string name)
    {
        if (value is not null)
        {
            _sql.Append(" AND ").Append(sql);
            _values.Add((name, value));
        }
    }

    private static IEnumerable<TextPart> PartOf(string? part, string column) => string.IsNullOrEmpty(part) ? [] : [new TextPart(column, Folded(part))];
}
