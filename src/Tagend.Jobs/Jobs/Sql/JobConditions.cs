using System.Text;
using Tagend.Measures;

namespace Tagend.Jobs.Sql;

/// <summary>A search as conditions on the jobs table, for what is asked alone, so that the database can choose an index.</summary>
internal sealed class JobConditions
{
    private readonly StringBuilder _sql = new();
    private readonly List<(string Name, object Value)> _values = [];
    private readonly PartSearch _parts;

    public JobConditions(JobSearch search, SqlStore store)
    {
        Order = search.IsNewestFirst ? "DESC" : "ASC";
        Add(search.Order, "order_number = @order", "order");
        Add(search.Piece, "piece = @piece", "piece");
        Add(search.From is { } from ? DateWriter.Iso(from) : null, "issued >= @from", "from");
        Add(search.To is { } to ? DateWriter.Iso(to) : null, "issued <= @to", "to");
        Add(search.Lot?.ToUpperInvariant(), "jobs.number IN (SELECT job FROM build_lots WHERE lot = @lot)", "lot");
        _sql.Append(search.IsBuilt ? " AND builds > 0" : "");
        _sql.Append(search.IsOpen ? " AND order_number IN (SELECT order_number FROM jobs WHERE mark = '')" : "");
        _parts = store.Having([.. PartOf(search.Customer, "customer_folded"), .. PartOf(search.Bow, "bow_folded")], isNarrow: search.Order is not null || search.Lot is not null);
    }

    /// <summary>How the numbers of jobs are ordered.</summary>
    public string Order { get; }

    /// <summary>Selects the first jobs behind a number, in the order of their numbers, or in the other one.</summary>
    /// <param name="size">So many at most; the number is the parameter <c>after</c>.</param>
    public string Page(int size) =>
        $"SELECT jobs.* FROM {_parts.Source} WHERE {_parts.Number} {(Order == "DESC" ? "<" : ">")} @after{_parts.Sql}{_sql} ORDER BY {_parts.Number} {Order} LIMIT {size}";

    public IEnumerable<(string Name, object Value)> Values => _values.Concat(_parts.Values);

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
