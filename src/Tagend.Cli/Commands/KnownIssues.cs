using Tagend.Jobs;
using Tagend.Problems;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Commands;

/// <summary>Says of scanned tags that they are superseded, as far as there is a job book that knows.</summary>
/// <param name="open">Opens the book with the first tag; null where there is none.</param>
internal sealed class KnownIssues(Func<IJobBook?> open) : IDisposable
{
    private readonly Lazy<IJobBook?> _book = new(() => Guarded(open));
    private bool _hasFailed;

    public void Dispose()
    {
        if (_book.IsValueCreated)
        {
            _book.Value?.Dispose();
        }
    }

    /// <summary>Names each piece of a tag that has a later issue.</summary>
    public void Say(TagScan scan, TextWriter output)
    {
        foreach (var spec in _hasFailed ? [] : scan.Specs)
        {
            try
            {
                if (_book.Value is { } book && Superseded.Of(spec, book) is { } sentence)
                {
                    output.WriteLine($"{spec.Order}/{spec.Piece}, revision {spec.Revision}: {sentence}");
                }
            }
            catch (TagendException e)
            {
                _hasFailed = true;
                Commands.Say.Error($"{e.Message}; whether tags are superseded is not known");
            }
        }
    }

    private static IJobBook? Guarded(Func<IJobBook?> open)
    {
        try
        {
            return open();
        }
        catch (TagendException e)
        {
            Commands.Say.Error($"{e.Message}; whether tags are superseded is not known");
            return null;
        }
    }
}
