using System.Text;

namespace Tagend.Imports;

/// <summary>A text made of cells of a row: <c>{Make} {Model}</c>.</summary>
public sealed class CellTemplate
{
    // Texts and headers in turn, a text first.
    private readonly string[] _parts;

    private CellTemplate(string[] parts)
    {
        _parts = parts;
        Headers = [.. parts.Where((_, i) => i % 2 == 1)];
    }

    /// <summary>The headers it names, in its order.</summary>
    public IReadOnlyList<string> Headers { get; }

    /// <summary>One cell alone.</summary>
    public static CellTemplate Of(string header) => new(["", header, ""]);

    /// <summary>Reads a template; null where a brace has no partner or no header is named.</summary>
    public static CellTemplate? Read(string text)
    {
        var parts = new List<string>();
        var rest = text.AsSpan();
        for (var open = rest.IndexOf('{'); open >= 0; open = rest.IndexOf('{'))
        {
            var close = rest.IndexOf('}');
            if (close < open)
            {
                return null;
            }

            parts.Add(rest[..open].ToString());
            parts.Add(rest[(open + 1)..close].Trim().ToString());
            rest = rest[(close + 1)..];
        }

        parts.Add(rest.ToString());
        return parts.Count > 1 && !rest.Contains('}') && parts.Where((_, i) => i % 2 == 1).All(h => h.Length > 0)
            ? new CellTemplate([.. parts])
            : null;
    }

    /// <summary>The text of a row; empty where all its cells are. Spaces are folded, and commas of empty cells at the ends left out; a slash stays, for it says that <c>Flo Green/</c> is one color.</summary>
    /// <param name="cellOf">A cell by its header.</param>
    public string Fill(Func<string, string> cellOf)
    {
        if (_parts.Length == 3 && _parts[0].Length == 0 && _parts[2].Length == 0)
        {
            return cellOf(_parts[1]);
        }

        var text = new StringBuilder();
        var hasCell = false;
        for (var i = 0; i < _parts.Length; i++)
        {
            var part = i % 2 == 0 ? _parts[i] : cellOf(_parts[i]);
            hasCell |= i % 2 == 1 && part.Length > 0;
            text.Append(part);
        }

        return hasCell
            ? string.Join(' ', text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Trim(' ', ',', ';', '-')
            : "";
    }
}
