using System.Text;
using Tagend.Measures;

namespace Tagend.Jobs.Sql;

/// <summary>A search as conditions on the jobs table, for what is asked alone, so that the database can choose an index.</summary>
internal sealed class JobConditions
{
    private readonly StringBuilder _sql = new();
    private readonly List<(string Name, object Value)> _values = [];

    public JobConditions(JobSearch search, SqlStore store)
    {
        Add(search.Order, "order_number = @order", "order");
        Add(search.Piece, "piece = @piece", "piece");
        Add(search.From is { } from ? DateWriter.Iso(from) : null, "issued >= @from", "from");
        Add(search.To is { } to ? DateWriter.Iso(to) : null, "issued <= @to", "to");
        AddPart(search.Customer, "customer_folded", store);
        AddPart(search.Bow, "bow_folded", store);
        Add(search.Lot?.ToUpperInvariant(), "number IN (SELECT job FROM build_lots WHERE lot = @lot)", "lot");
        _sql.Append(search.IsBuilt ? " AND builds > 0" : "");
        _sql.Append(search.IsOpen ? " AND order_number IN (SELECT order_number FROM jobs WHERE mark = '')" : "");
    }

    /// <summary>Each condition with AND before it.</summary>
    public string Sql => _sql.ToString();

    public IEnumerable<(string Name, object Value)> Values => _values;

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

    private void AddPart(string? part, string column, SqlStore store)
    {
        if (!string.IsNullOrEmpty(part))
        {
            var (sql, value) = store.HasPart(column, Folded(part));
            _sql.Append(" AND ").Append(sql);
            _values.Add((column, value));
        }
    }
}
