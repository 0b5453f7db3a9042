using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Station.Desk;

/// <summary>A piece that is being built, and how far it is.</summary>
/// <param name="Id">It follows from the tag, and is the piece's address.</param>
/// <param name="Tag">The tag's text, which has the whole spec.</param>
/// <param name="Step">From 0; as many as there are steps where only the measuring is left.</param>
/// <param name="Moves">How often a step was gone on or back: a device that knows fewer is behind another.</param>
/// <param name="Device">The browser that moved last; empty before the first move.</param>
/// <param name="At">When it was opened or moved last.</param>
/// <param name="IsDone">It was measured and saved.</param>
internal sealed record BenchPiece(string Id, string Tag, int Step, int Moves, string Device, DateTimeOffset At, bool IsDone = false);

/// <summary>
/// The pieces that are being built, a file each, so that the step of each is known when a tablet was asleep or the station was
/// stopped. A move is on the disk before the browser hears of it.
/// </summary>
internal sealed class BenchDesk(ShopDesk shop)
{
    private const int IdBytes = 8;

    /// <summary>A piece that nobody touched for so long is not shown any more.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromDays(60);

    private readonly Lock _writing = new();

    private string Folder => Path.Combine(shop.Options.Folder, "station", "bench");

    /// <summary>The pieces that were begun and are not done, the one touched last first.</summary>
    /// <exception cref="TagendException">The folder cannot be read.</exception>
    public IReadOnlyList<BenchPiece> Open()
    {
        if (!Directory.Exists(Folder))
        {
            return [];
        }

        var since = shop.Options.Clock.GetUtcNow() - Patience;
        return
        [
            .. Directory.EnumerateFiles(Folder).Select(f => Find(Path.GetFileName(f))).OfType<BenchPiece>()
                .Where(p => p is { IsDone: false, Moves: > 0 } && p.At > since).OrderByDescending(p => p.At),
        ];
    }

    /// <summary>The piece of a tag, which is put on the bench where it is not there.</summary>
    /// <exception cref="TagendException">It cannot be written.</exception>
    public BenchPiece Take(string tag)
    {
        var id = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(tag)).AsSpan(0, IdBytes));
        return Find(id) ?? Keep(new BenchPiece(id, tag, 0, 0, "", shop.Options.Clock.GetUtcNow()));
    }

    /// <summary>A piece by its id; null where none has it.</summary>
    /// <exception cref="TagendException">It cannot be read.</exception>
    public BenchPiece? Find(string id)
    {
        var path = Path.Combine(Folder, id);
        if (id.Length != 2 * IdBytes || !id.All(char.IsAsciiHexDigitLower) || !File.Exists(path))
        {
            return null;
        }

        try
        {
            return File.ReadAllText(path).Split('\n', 2) is [var first, var tag]
                && first.Split(' ') is [var step, var moves, var device, var at, var done]
                ? new BenchPiece(
                    id, tag, int.Parse(step, CultureInfo.InvariantCulture), int.Parse(moves, CultureInfo.InvariantCulture), device[1..],
                    DateTimeOffset.Parse(at, CultureInfo.InvariantCulture), done == "done")
                : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"{path}: cannot be read ({SystemReason.Of(e)}); the station keeps there how far a piece is", e);
        }
        catch (Exception e) when (e is FormatException or OverflowException)
        {
            return null;
        }
    }

    /// <summary>Moves a piece to a step.</summary>
    /// <param name="device">The browser that does.</param>
    /// <exception cref="TagendException">It cannot be written.</exception>
    public BenchPiece Move(BenchPiece piece, int step, string device)
    {
        lock (_writing)
        {
            var now = Find(piece.Id) ?? piece;
            return Keep(now with { Step = step, Moves = now.Moves + 1, Device = device, At = shop.Options.Clock.GetUtcNow(), IsDone = false });
        }
    }

    /// <summary>Takes a piece off the bench: it is built.</summary>
    /// <exception cref="TagendException">It cannot be written.</exception>
    public void Finish(BenchPiece piece) => Keep(piece with { At = shop.Options.Clock.GetUtcNow(), IsDone = true });

    private BenchPiece Keep(BenchPiece piece)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"{piece.Step} {piece.Moves} -{piece.Device} {piece.At.UtcDateTime:O} {(piece.IsDone ? "done" : "open")}\n{piece.Tag}");
        AtomicFiles.Write([new NewFile(Path.Combine(Folder, piece.Id), stream => stream.Write(Encoding.UTF8.GetBytes(text)))]);
        return piece;
    }
}
