using System.Collections;
using System.Runtime.CompilerServices;

namespace Tagend.Measures;

/// <summary>A fixed list that is equal to another when its items are: what records need to compare by value.</summary>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public sealed class ValueList<T>(T[] items) : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    public int Count => items.Length;

    public T this[int index] => items[index];

    public bool Equals(ValueList<T>? other) => other is not null && items.AsSpan().SequenceEqual(other.AsSpan());

    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();

    public override string ToString() => $"[{string.Join("; ", items)}]";

    internal ReadOnlySpan<T> AsSpan() => items;
}

/// <summary>Makes <see cref="ValueList{T}"/> from collection expressions and sequences.</summary>
public static class ValueList
{
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => new(items.ToArray());

    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items) => new([.. items]);
}
