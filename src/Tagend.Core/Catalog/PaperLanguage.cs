namespace Tagend.Catalog;

/// <summary>What the program itself writes on paper, in one language. From words/LANGUAGE.toml.</summary>
public sealed record PaperLanguage
{
    /// <summary>As file names have it: <c>es</c>.</summary>
    public required string Name { get; init; }

    /// <summary>As PDFs name it, RFC 5646: <c>es</c>, <c>en-US</c>.</summary>
    public required string Tag { get; init; }

    /// <summary>Between wholes and decimals.</summary>
    public required string DecimalSign { get; init; }

    /// <summary>With <c>{day}</c>, <c>{month}</c> and <c>{year}</c> in their places.</summary>
    public required string Date { get; init; }

    /// <summary>How the first of a month is written.</summary>
    public required string FirstDay { get; init; }

    /// <summary>Twelve.</summary>
    public required IReadOnlyList<string> Months { get; init; }

    /// <summary>Unit behind a length.</summary>
    public required string Inch { get; init; }

    /// <summary>Unit behind a length.</summary>
    public required string Millimeter { get; init; }

    /// <summary>The shop's terms of warranty, at the end of a customer sheet; empty for none.</summary>
    public string Warranty { get; init; } = "";

    /// <summary>How a set is sent back, at the end of a customer sheet; empty for nothing.</summary>
    public string Returns { get; init; } = "";

    /// <summary>One text for each of <see cref="PaperWord"/>.</summary>
    public required IReadOnlyDictionary<PaperWord, string> Words { get; init; }

    /// <summary>By the catalog's own text: titles, ends, materials, colors.</summary>
    public required IReadOnlyDictionary<string, string> Terms { get; init; }

    /// <summary>By the title of a plan: what the bench calls it in full, where customers have a shorter word.</summary>
    public required IReadOnlyDictionary<string, string> Kinds { get; init; }

    /// <summary>The text of a word.</summary>
    public string this[PaperWord word] => Words[word];

    /// <summary>The text of a word with its fields filled in.</summary>
    /// <param name="fields">Names and values of all the fields that the word has.</param>
    public string Say(PaperWord word, params ReadOnlySpan<(string Name, string Value)> fields)
    {
        var text = Words[word];
        foreach (var (name, value) in fields)
        {
            text = text.Replace($"{{{name}}}", value, StringComparison.Ordinal);
        }

        return text;
    }

    /// <summary>A text of the catalog in this language; as it is where the file has no word for it.</summary>
    public string Term(string text) => Terms.GetValueOrDefault(text, text);

    /// <summary>The title of a plan as the bench reads it; as it is where the file has no word for it.</summary>
    public string Kind(string title) => Kinds.GetValueOrDefault(title, title);
}
