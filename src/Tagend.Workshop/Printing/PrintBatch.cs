using Tagend.Catalog;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Workshop.Printing;

/// <summary>A volume that was written, in the order of the file.</summary>
/// <param name="Volume">Which of all volumes it is.</param>
/// <param name="Printed">What became of its sets.</param>
/// <param name="PiecesSoFar">The number of pieces of this volume and all before it, printed or withheld.</param>
public sealed record PrintedVolume(Volume Volume, PrintedSets Printed, int PiecesSoFar);

/// <summary>
/// Makes and prints sets volume by volume, a worker for each, so that a season's orders take no more memory than a few
/// volumes. The files of a volume appear together or not at all, and those of an earlier run of the same kinds leave before.
/// From the first file on the folder is this run's, until it is disposed of.
/// </summary>
public sealed class PrintBatch : IDisposable
{
    private readonly ShopCatalog _catalog;
    private readonly PrintPlan _plan;
    private readonly DraftFiles _drafts;
    private readonly PrintRun _run;
    private readonly HashSet<string> _written = [];
    private FolderTurn? _turn;
    private IReadOnlyList<string> _earlier = [];

    /// <param name="catalog">The shop's templates.</param>
    /// <param name="plan">What is printed, and where.</param>
    /// <param name="fonts">The shop's, of <see cref="BeginFonts"/>; null to read them now.</param>
    /// <exception cref="Problems.TagendException">A font cannot be read.</exception>
    public PrintBatch(ShopCatalog catalog, PrintPlan plan, Task<Fonts>? fonts = null)
    {
        (_catalog, _plan, _drafts) = (catalog, plan, new DraftFiles(plan.Folder));
        _run = new PrintRun(catalog, plan, _drafts.Make, fonts?.GetAwaiter().GetResult());
    }

    private sealed record Made(PrintedSets Printed, AtomicFiles? Files);

    /// <summary>Names of files of an earlier, larger run, which this one has removed and not written again.</summary>
    public IEnumerable<string> Removed => _earlier.Except(_written).Select(f => Path.GetFileName(f)!);

    /// <summary>Reads the fonts of a templates folder on another core, while templates and orders are read.</summary>
    public static Task<Fonts> BeginFonts(string templates) => Task.Run(() => Fonts.Of(templates));

    /// <summary>Shares sets among volumes, whole and in the file's order.</summary>
    /// <param name="sets">The sets that are ready.</param>
    /// <param name="pieces">The most pieces of a volume, but for a set that has more.</param>
    /// <returns>One volume at least, empty where there are no sets.</returns>
    public static IReadOnlyList<IReadOnlyList<ReadySet>> VolumesOf(IEnumerable<ReadySet> sets, int pieces)
    {
        var volumes = new List<List<ReadySet>> { new() };
        var count = 0;
        foreach (var set in sets)
        {
            if (count > 0 && count + set.Pieces > pieces)
            {
                volumes.Add([]);
                count = 0;
            }

            volumes[^1].Add(set);
            count += set.Pieces;
        }

        return volumes;
    }

    /// <summary>Prints volumes, a worker for each, as far as they are asked for.</summary>
    /// <returns>Each volume, as soon as it and all before it are on disk.</returns>
    /// <exception cref="OperationCanceledException">It was stopped; what came before is whole.</exception>
    /// <exception cref="Problems.TagendException">A volume cannot be written; what came before is whole.</exception>
    public IEnumerable<PrintedVolume> Print(IReadOnlyList<IReadOnlyList<ReadySet>> volumes, CancellationToken stop)
    {
        using var failed = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var started = new Queue<Task<Made>>();
        try
        {
            if (volumes.Count > 1)
            {
                GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive); // gives back what reading a season's orders took
            }

            var (next, pieces) = (0, 0);
            StartAsManyAsCores();
            for (var number = 1; number <= volumes.Count; number++)
            {
                var made = started.Dequeue().GetAwaiter().GetResult();
                StartAsManyAsCores(); // no core waits for the disk
                Appear(made);
                pieces += volumes[number - 1].Sum(s => s.Pieces);
                yield return new PrintedVolume(new Volume(number, volumes.Count), made.Printed, pieces);
            }

            void StartAsManyAsCores()
            {
                while (next < volumes.Count && started.Count < Environment.ProcessorCount)
                {
                    var (sets, volume) = (volumes[next], new Volume(++next, volumes.Count));
                    var making = new Task<Made>(() => Make(sets, volume, failed.Token));
                    started.Enqueue(making);
                    if (volumes.Count == 1)
                    {
                        making.RunSynchronously(); // a thread takes longer to start than a page to make
                    }
                    else
                    {
                        making.Start(TaskScheduler.Default);
                    }
                }
            }
        }
        finally
        {
            failed.Cancel();
            Task.WhenAll(started).ContinueWith(_ => { }, TaskScheduler.Default).Wait(CancellationToken.None);
            foreach (var made in started.Where(t => t.IsCompletedSuccessfully))
            {
                made.Result.Files?.Dispose();
            }
        }
    }

    /// <summary>Gives the folder back.</summary>
    public void Dispose()
    {
        _drafts.Dispose();
        _turn?.Dispose();
    }

    private Made Make(IReadOnlyList<ReadySet> sets, Volume volume, CancellationToken stop)
    {
        var (printed, files) = WriteFault.Named(_plan.Folder, () => _run.Compose([.. sets.Select(s => s.Make())], volume, stop)); // drafts are written by it
        var written = files.Count > 0 ? AtomicFiles.Prepare(files) : null;
        return new Made(printed, written);
    }

    private void Appear(Made made)
    {
        if (made.Files is null)
        {
            return;
        }

        using var files = made.Files;
        IReadOnlyList<string> leaving = [];
        if (_turn is null)
        {
            _turn = FolderTurn.Take(_plan.Folder);
            _earlier = leaving = EarlierFiles.Of(_plan, _catalog.Stocks.Keys);
        }

        files.Appear(leaving);
        _written.UnionWith(made.Printed.Files);
    }
}
