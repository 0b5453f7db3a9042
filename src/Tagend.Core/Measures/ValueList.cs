using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Tagend.Measures;

/// <summary>A fixed list that is equal to another when its items are: what records need to compare by value.</summary>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public sealed class ValueList<T>(T[] items) : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    /// <inheritdoc/>
    public int Count => items.Length;

    /// <inheritdoc/>
    public T this[int index] => items[index];

    /// <summary>Whether one of the items is equal to this.</summary>
    public bool Contains(T item) => Array.IndexOf(items, item) >= 0;

    /// <summary>Whether the other list has equal items in the same order.</summary>
    public bool Equals(ValueList<T>? other) => other is not null && items.AsSpan().SequenceEqual(other.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    /// <summary>For <c>foreach</c>, which needs no object then.</summary>
    public ImmutableArray<T>.Enumerator GetEnumerator() => ImmutableCollectionsMarshal.AsImmutableArray(items).GetEnumerator();

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();

    /// <summary>The items with semicolons between them, in brackets.</summary>
    public override string ToString() => $"[{string.Join("; ", items)}]";

    internal ReadOnlySpan<T> AsSpan() => items;
}

/// <summary>Makes <see cref="ValueList{T}"/> from collection expressions and sequences.</summary>
public static class ValueList
{
    /// <summary>A list of these items, copied.</summary>
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => new(items.ToArray());

    /// <summary>A list of the items of a sequence, which is read once.</summary>
    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items) => new([.. items]);
}
