using System.Data.Common;
using Tagend.Measures;

namespace Tagend.Jobs.Sql;

/// <summary>The columns of a row that its seal holds.</summary>
/// <param name="first">The columns that the table began with, in their order.</param>
/// <param name="later">
/// Columns that came later, with the value that older rows have: it is not in the seal, so that a row has the seal it had
/// before they came.
/// </param>
internal sealed class SealedColumns(string[] first, (string Name, object Value)[] later)
{
    public IEnumerable<string> All => first.Concat(later.Select(l => l.Name));

    /// <summary>Adds the seal of a row to its values.</summary>
    /// <param name="values">All columns, in their order.</param>
    public (string Name, object Value)[] Sealed((string Name, object Value)[] values) =>
        [.. values, ("seal", Seal(values.Select(v => v.Value)))];

    /// <exception cref="InvalidDataException">The row does not fit its seal.</exception>
    public void Hold(DbDataReader row, string seal, string name)
    {
        if (row.Whole(seal) != Seal(All.Select(c => row[c])))
        {
            throw new InvalidDataException($"{name} does not fit its check");
        }
    }

    private long Seal(IEnumerable<object> values)
    {
        var all = values.ToList();
        var changed = later.Zip(all.Skip(first.Length)).Where(c => !c.First.Value.Equals(c.Second));
        return RowSeal.Of([.. all.Take(first.Length), .. changed.SelectMany(c => new[] { c.First.Name, c.Second })]);
    }
}

/// <summary>Values of a row by column.</summary>
internal static class RowValues
{
    public static string Text(this DbDataReader row, string column) => row.GetString(row.GetOrdinal(column));

    public static long Whole(this DbDataReader row, string column) => row.GetInt64(row.GetOrdinal(column));

    public static Length Length(this DbDataReader row, string column) => Measures.Length.FromNanometers(row.Whole(column));
}
