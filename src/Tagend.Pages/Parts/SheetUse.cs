using Tagend.Catalog;

namespace Tagend.Pages.Parts;

/// <summary>Which labels the first sheet of a stock still has; the sheets after it are whole.</summary>
/// <param name="FirstLabel">Label to start at, from 1, row by row.</param>
/// <param name="Spoiled">Labels to leave out, from 1.</param>
public sealed record SheetUse(int FirstLabel, IReadOnlySet<int> Spoiled)
{
    public static SheetUse Whole { get; } = new(1, new HashSet<int>());

    /// <summary>Labels to start at instead, by the stock's name, as earlier runs left its sheet.</summary>
    public IReadOnlyDictionary<string, int> Kept { get; init; } = new Dictionary<string, int>();

    /// <summary>Places to print on, one after the other without end: sheet from 0, label on it from 1.</summary>
    /// <remarks>A roll has one label a page, and nothing is left out.</remarks>
    public IEnumerable<(int Sheet, int Label)> PlacesOn(LabelStock stock)
    {
        for (var sheet = 0; ; sheet++)
        {
            for (var label = 1; label <= stock.LabelsPerPage; label++)
            {
                if (sheet > 0 || stock.LabelsPerPage == 1 || (label >= FirstOn(stock) && !Spoiled.Contains(label)))
                {
                    yield return (sheet, label);
                }
            }
        }
    }

    /// <summary>How many labels the first sheet has; 1 of a roll.</summary>
    public int LeftOn(LabelStock stock) => PlacesOn(stock).TakeWhile(place => place.Sheet == 0).Count();

    /// <summary>The first label that is free after so many were printed, on a sheet of several; 1 where the next sheet is whole.</summary>
    public int NextOn(LabelStock stock, int printed) => PlacesOn(stock).ElementAt(printed).Label;

    /// <summary>What keeps this from being a sheet of the stock, in words; null if nothing does.</summary>
    public string? MisfitOn(LabelStock stock)
    {
        if (stock.LabelsPerPage == 1)
        {
            return null;
        }

        foreach (var missing in Spoiled.Append(FirstOn(stock)).Where(n => n < 1 || n > stock.LabelsPerPage).Order())
        {
            return $"no label {missing}: a sheet of {stock.Name} ({stock.Title}) has {stock.LabelsPerPage}";
        }

        return PlacesOn(stock).First().Sheet > 0
            ? $"no label is left on the first sheet of {stock.Name} ({stock.Title}): put in a new one"
            : null;
    }

    private int FirstOn(LabelStock stock) => Kept.GetValueOrDefault(stock.Name, FirstLabel);
}
