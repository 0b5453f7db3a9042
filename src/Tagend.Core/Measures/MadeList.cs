using System.Collections;

namespace Tagend.Measures;

/// <summary>A list that holds no items: each is made anew whenever it is asked for.</summary>
/// <param name="make">An item by its index; gives equal items for equal indexes, on any thread.</param>
internal sealed class MadeList<T>(int count, Func<int, T> make) : IReadOnlyList<T>
{
    public int Count => count;

    public T this[int index] => index >= 0 && index < count ? make(index) : throw new ArgumentOutOfRangeException(nameof(index));

    public IEnumerator<T> GetEnumerator()
    {
        for (var i = 0; i < count; i++)
        {
            yield return make(i);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
