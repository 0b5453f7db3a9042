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
    private readonly string[] _all = [.. first, .. later.Select(l => l.Name)];

    public IReadOnlyList<string> All => _all;

    /// <summary>Adds the seal of a row to its values.</summary>
    /// <param name="values">All columns, in their order.</param>
    public (string Name, object Value)[] Sealed((string Name, object Value)[] values) =>
        [.. values, ("seal", Seal(Array.ConvertAll(values, v => v.Value)))];

    /// <exception cref="InvalidDataException">The row does not fit its seal.</exception>
    public void Hold(DbDataReader row, string seal, string name)
    {
        if (row.Whole(seal) != Seal(Array.ConvertAll(_all, c => row[c])))
        {
            throw new InvalidDataException($"{name} does not fit its check");
        }
    }

    /// <param name="values">All columns, in their order; each of the later ones counts with its name where it is not as in older rows.</param>
    private long Seal(object[] values)
    {
        var sealedOnes = new List<object>(values.Length);
        for (var i = 0; i < values.Length; i++)
        {
            var at = i - first.Length;
            if (at < 0)
            {
                sealedOnes.Add(values[i]);
            }
            else if (!later[at].Value.Equals(values[i]))
            {
                sealedOnes.Add(later[at].Name);
                sealedOnes.Add(values[i]);
            }
        }

        return RowSeal.Of(sealedOnes);
    }
}

/// <summary>Values of a row by column.</summary>
internal static class RowValues
{
    public static string Text(this DbDataReader row, string column) => row.GetString(row.GetOrdinal(column));

    public static long Whole(this DbDataReader row, string column) => row.GetInt64(row.GetOrdinal(column));

    public static Length Length(this DbDataReader row, string column) => Measures.Length.FromNanometers(row.Whole(column));
}
