using System.Diagnostics.CodeAnalysis;
using Tagend.Orders;

namespace Tagend.Imports;

/// <summary>What a text of a source stands for: a column of an order, of every piece of the row or of one of them.</summary>
/// <param name="Piece">The piece it belongs to, as in <c>buss.finished_length</c>; null for every piece of the row.</param>
/// <param name="Column">A name of <see cref="OrderColumn"/>, <see cref="Quantity"/> or <see cref="Never"/>.</param>
public readonly record struct MapTarget(string? Piece, string Column)
{
    /// <summary>How many equal pieces are meant.</summary>
    public const string Quantity = "quantity";

    /// <summary>A text that is printed nowhere.</summary>
    public const string Never = "never";

    /// <summary>Columns that a row has once, whatever pieces it holds.</summary>
    private static readonly string[] OfTheRow =
        [OrderColumn.Order, OrderColumn.Piece, OrderColumn.Customer, OrderColumn.Bow, OrderColumn.Due, OrderColumn.Language, OrderColumn.Units, Never];

    /// <summary>Every column that a map may name.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. OrderColumn.All, Quantity, Never];

    /// <summary>Reads <c>colors</c> or <c>buss.colors</c>.</summary>
    public static bool TryRead(string text, out MapTarget target, [NotNullWhen(false)] out string? error)
    {
        var point = text.IndexOf('.', StringComparison.Ordinal);
        var piece = point < 0 ? null : text[..point].Trim();
        var column = text[(point + 1)..].Trim().ToLowerInvariant();
        target = default;
        if (!Columns.Contains(column))
        {
            error = ImportWording.NoSuchTarget(Columns);
            return false;
        }

        if (piece is not null && OfTheRow.Contains(column))
        {
            error = ImportWording.OfTheRow(column);
            return false;
        }

        string? name = null;
        if (piece is not null && !NameReader.TryReadName(piece, out name, out error))
        {
            return false;
        }

        target = new MapTarget(name, column);
        error = null;
        return true;
    }

    /// <summary>As a map and messages spell it.</summary>
    public override string ToString() => Piece is null ? Column : $"{Piece}.{Column}";
}
