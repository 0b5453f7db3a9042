namespace Tagend.Catalog;

/// <summary>What the program itself writes on customer sheets, in one language. From sheets/words.LANGUAGE.toml.</summary>
/// <param name="Name">As file names have it: <c>es</c>.</param>
/// <param name="Tag">As PDFs name it, RFC 5646: <c>es</c>, <c>en-US</c>.</param>
/// <param name="DecimalSign">Between wholes and decimals.</param>
/// <param name="Date">With <c>{day}</c>, <c>{month}</c> and <c>{year}</c> in their places.</param>
/// <param name="FirstDay">How the first of a month is written.</param>
/// <param name="Months">Twelve.</param>
/// <param name="Inch">Unit behind a length.</param>
/// <param name="Words">By key: signal words, what is in the drawings.</param>
/// <param name="Terms">By the catalog's own text: titles, ends, materials.</param>
public sealed record SheetLanguage(
    string Name,
    string Tag,
    string DecimalSign,
    string Date,
    string FirstDay,
    IReadOnlyList<string> Months,
    string Inch,
    string Millimeter,
    IReadOnlyDictionary<string, string> Words,
    IReadOnlyDictionary<string, string> Terms)
{
    /// <summary>A text of the catalog in this language; as it is where the file has no word for it.</summary>
    public string Term(string text) => Terms.GetValueOrDefault(text, text);
}
