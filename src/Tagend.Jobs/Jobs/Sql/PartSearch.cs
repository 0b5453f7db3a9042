namespace Tagend.Jobs.Sql;

/// <summary>A part that a column of jobs must have, both folded.</summary>
internal sealed record TextPart(string Column, string Part);

/// <summary>How jobs are found by parts of their texts, page by page in the order of their numbers.</summary>
/// <param name="Source">The table <c>jobs</c>, or a join with it, to select from.</param>
/// <param name="Number">The column that has the job's number: what a page begins after, and is ordered by.</param>
/// <param name="Sql">Conditions, each with AND before it.</param>
/// <param name="Values">The parameters of the conditions.</param>
internal sealed record PartSearch(string Source, string Number, string Sql, IReadOnlyList<(string Name, object Value)> Values);
