namespace Tagend.Tags.Text;

/// <summary>Values and the letters that stand for them, both ways.</summary>
internal sealed class LetterCode<T>(params (T Value, string Letters)[] pairs)
    where T : struct
{
    public string this[T value] => Array.Find(pairs, p => EqualityComparer<T>.Default.Equals(p.Value, value)).Letters;

    public T? Find(ReadOnlySpan<char> letters)
    {
        foreach (var (value, code) in pairs)
        {
            if (letters.SequenceEqual(code))
            {
                return value;
            }
        }

        return null;
    }
}
