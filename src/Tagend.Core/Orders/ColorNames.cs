using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>A color that has a spool, and the other names it is ordered by.</summary>
/// <param name="Name">As pages print it: one word, in lower case.</param>
/// <param name="Also">Other spellings and other languages.</param>
public sealed record NamedColor(string Name, ValueList<string> Also);

/// <summary>The shop's colors by every name they are written by, so that rot and red are one spool.</summary>
public sealed class ColorNames
{
    private static readonly char[] Joints = [' ', '-', '_', '\u00A0'];

    private readonly Dictionary<string, string> _names = [];

    /// <summary>A color written by two names of the list is the first one's.</summary>
    public ColorNames(IEnumerable<NamedColor> colors)
    {
        foreach (var (name, also) in colors)
        {
            foreach (var written in also.Prepend(name))
            {
                _names.TryAdd(Plain(written), name);
            }
        }

        MostWords = _names.Count == 0 ? 1 : _names.Keys.Max(n => n.Count(c => c == '-') + 1);
    }

    /// <summary>No list: each color is called what it is ordered by.</summary>
    public static ColorNames None { get; } = new([]);

    /// <summary>The words of the longest name, 1 or more.</summary>
    public int MostWords { get; }

    /// <summary>Whether the list has a color by this name: letter case, spaces and hyphens do not matter.</summary>
    public bool Knows(string written) => _names.ContainsKey(Plain(written));

    /// <summary>The color's name; as written, in one word, where the list does not have it.</summary>
    public string Of(string written)
    {
        var plain = Plain(written);
        return _names.GetValueOrDefault(plain, plain);
    }

    /// <summary>In lower case and one word: <c>Flo Green</c> and <c>flo-green</c> are the same.</summary>
    private static string Plain(string written) =>
        string.Join('-', written.ToLowerInvariant().Split(Joints, StringSplitOptions.RemoveEmptyEntries));
}
