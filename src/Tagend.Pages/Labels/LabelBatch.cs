using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Labels;

/// <summary>The labels of a batch. Where they are drafted and their pages follow each other as they do, a page is written as soon as it is full.</summary>
/// <param name="name">Of the document.</param>
/// <param name="stocks">That labels may be on, one or two.</param>
internal sealed class LabelBatch(string name, IReadOnlyList<LabelStock> stocks, PageSetting setting, Fonts fonts)
{
    private readonly List<TagLabel> _labels = [];
    private readonly PdfDraft? _draft = setting.LabelDraft is { } file && FollowEachOther(stocks, setting) ? new PdfDraft(fonts, file()) : null;
    private SheetUse _use = setting.Use;
    private LabelStock? _first;

    public void Keep(IEnumerable<TagLabel> labels)
    {
        _labels.AddRange(labels);
        _first ??= _labels.FirstOrDefault()?.Stock;
        while (_draft is not null && _labels.Count > 0 && _use.LeftOn(_labels[0].Stock) is var full && _labels.Count >= full)
        {
            WriteFirst(full);
        }
    }

    /// <summary>One document, or for a printer one a stock, of one label at least.</summary>
    public IReadOnlyList<Document> Documents()
    {
        if (_draft is not null)
        {
            var next = stocks.Distinct().Where(s => s.LabelsPerPage > 1).ToDictionary(s => s.Name, s => _use.NextOn(s, _labels.Count));
            WriteFirst(_labels.Count);
            return [DocumentOf(name, _first!, [], next) with { Draft = _draft }];
        }

        var byStock = _labels.GroupBy(l => l.Stock).ToList();
        return setting.HasOnePaperADocument && byStock.Count > 1
            ? [.. byStock.Select(g => DocumentOf($"{name}-{g.Key.Name}", g.Key, Pages([.. g]), TagLabels.Next(g, _use)))]
            : [DocumentOf(name, _first!, Pages(_labels), TagLabels.Next(_labels, _use))];
    }

    /// <summary>On one stock, or all on rolls and in one document.</summary>
    private static bool FollowEachOther(IReadOnlyList<LabelStock> stocks, PageSetting setting) =>
        stocks.Distinct().Count() == 1 || (!setting.HasOnePaperADocument && stocks.All(s => s.LabelsPerPage == 1));

    private void WriteFirst(int count)
    {
        foreach (var page in Pages(_labels[..count]))
        {
            _draft!.Add(page);
        }

        _labels.RemoveRange(0, count);
        _use = SheetUse.Whole;
    }

    /// <summary>Labels of a printer whose dots are known stay on its dots.</summary>
    private IReadOnlyList<Page> Pages(IReadOnlyList<TagLabel> labels)
    {
        var pages = TagLabels.Pages(labels, _use);
        return stocks.All(s => s.DotsPerInch is null) ? setting.Scaled(pages) : pages;
    }

    private static Document DocumentOf(string file, LabelStock stock, IReadOnlyList<Page> pages, IReadOnlyDictionary<string, int> next) =>
        new(file, new Paper(stock.Name, stock.PageWidth, stock.PageHeight), pages) { IsOfLabels = true, NextLabels = next };
}
