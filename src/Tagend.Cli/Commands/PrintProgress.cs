using Spectre.Console;
using Tagend.Streams;
using Tagend.Workshop.Printing;

namespace Tagend.Commands;

/// <summary>How far a batch of several volumes is: a bar on a terminal, a line a volume elsewhere.</summary>
internal sealed class PrintProgress(int pieces, TimeProvider clock)
{
    private readonly long _start = clock.GetTimestamp();

    /// <summary>Goes through the volumes and shows each.</summary>
    public void Follow(IEnumerable<PrintedVolume> volumes, Action<PrintedVolume> done)
    {
        if (Console.IsOutputRedirected || !Terminal.Shapes.Profile.Capabilities.Interactive)
        {
            foreach (var volume in volumes)
            {
                done(volume);
                Console.WriteLine(Line(volume));
            }

            return;
        }

        Terminal.Shapes.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context =>
            {
                var bar = context.AddTask("printing", maxValue: pieces);
                foreach (var volume in volumes)
                {
                    done(volume);
                    bar.Value = volume.PiecesSoFar;
                    bar.Description = $"{volume.PiecesSoFar} of {pieces} pieces, {Rate(volume):0} a second";
                }
            });
    }

    private string Line(PrintedVolume volume) => FormattableString.Invariant(
        $"volume {volume.Volume.Number} of {volume.Volume.Count}: {volume.PiecesSoFar} of {pieces} pieces, {Rate(volume):0} a second, ")
        + FormattableString.Invariant($"{(pieces - volume.PiecesSoFar) / Rate(volume):0} s left");

    private double Rate(PrintedVolume volume) =>
        volume.PiecesSoFar / Math.Max(clock.GetElapsedTime(_start).TotalSeconds, 0.001);
}
