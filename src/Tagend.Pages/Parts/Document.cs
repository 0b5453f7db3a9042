using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages.Parts;

/// <summary>Pages that make one file.</summary>
/// <param name="Name">Of the file, without folder, number and ending.</param>
/// <param name="Paper">Of its first page; where it goes to a printer, of all.</param>
public sealed record Document(string Name, Paper Paper, IReadOnlyList<Page> Pages)
{
    /// <summary>Its pages, where they were written as they came and not kept.</summary>
    public PdfDraft? Draft { get; init; }

    /// <summary>How many pages it has, kept or not.</summary>
    public int PageCount => Draft?.Pages ?? Pages.Count;

    /// <summary>As in RFC 5646; null for the shop's.</summary>
    public string? Language { get; init; }

    /// <summary>Drawn for the dots of a label printer's head, where it has one.</summary>
    public bool IsOfLabels { get; init; }

    /// <summary>The next free label on a part-used sheet of each stock it is on, by the stock's name; none of rolls.</summary>
    public IReadOnlyDictionary<string, int> NextLabels { get; init; } = new Dictionary<string, int>();

    /// <summary>Writes it as a PDF, once.</summary>
    /// <param name="output">Empty; only written to. Left open.</param>
    public void Write(Fonts fonts, PdfNote note, Stream output)
    {
        if (Draft is null)
        {
            PdfFile.Write(Pages, fonts, note, output);
            return;
        }

        using (Draft)
        {
            Draft.Write(note, output);
        }
    }
}
