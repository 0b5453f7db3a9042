using System.Security.Cryptography;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Station.Desk;

/// <summary>An order file of the shop, as it stands now.</summary>
/// <param name="Name">Without folder, with its ending.</param>
/// <param name="Bytes">With what was changed here and is not kept yet.</param>
/// <param name="HasDraft">Whether something was.</param>
/// <param name="Other">What stands in the folder, where somebody else changed it after the draft was begun; else null.</param>
/// <param name="Reused">Orders whose number is used again on purpose, each with the customer it is for now.</param>
internal sealed record DeskFile(string Name, byte[] Bytes, bool HasDraft, byte[]? Other, IReadOnlySet<(string Order, string Customer)> Reused)
{
    /// <summary>Whether the shop said that an order of another customer in the job book is this customer's now.</summary>
    public bool IsReused(string order, string customer) => Reused.Contains((order, customer));
}

/// <summary>A file in the list.</summary>
/// <param name="Changed">When it was changed last.</param>
internal sealed record DeskEntry(string Name, bool HasDraft, DateTime Changed);

/// <summary>
/// The shop's order files: those in its folder, and drafts of what was typed and is not kept yet. A draft is on the disk before
/// the browser hears of it, so nothing that was acknowledged is lost when the station or the machine stops.
/// </summary>
/// <remarks>
/// A draft NAME.csv has beside it NAME.csv.base, what the folder's file was when the draft was begun; none for a new file. NAME.csv.reused
/// has a line for each order number that is used again on purpose, with its customer.
/// </remarks>
internal sealed class OrderDesk(ShopDesk shop)
{
    private const string Ending = ".csv";
    private const string BaseEnding = ".base";
    private const string ReusedEnding = ".reused";
    private const int MostCharacters = 200;

    private readonly Lock _writing = new();

    /// <summary>The folder of order files, for a spreadsheet program as well.</summary>
    public string Folder => Path.Combine(shop.Options.Folder, "orders");

    private string Drafts => Path.Combine(shop.Options.OwnFolder, "drafts");

    /// <summary>The files, the one changed last first.</summary>
    public IReadOnlyList<DeskEntry> Files()
    {
        var drafts = FilesIn(Drafts).ToDictionary(f => f.Name, f => f.LastWriteTimeUtc);
        var kept = FilesIn(Folder).ToDictionary(f => f.Name, f => f.LastWriteTimeUtc);
        return
        [
            .. drafts.Keys.Union(kept.Keys)
                .Select(n => new DeskEntry(n, drafts.ContainsKey(n), drafts.TryGetValue(n, out var d) ? d : kept[n]))
                .OrderByDescending(e => e.Changed).ThenBy(e => e.Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>A file by its name; null where there is none.</summary>
    /// <exception cref="TagendException">It cannot be read.</exception>
    public DeskFile? Open(string name)
    {
        if (!IsName(name))
        {
            return null;
        }

        lock (_writing)
        {
            var kept = ReadIf(Path.Combine(Folder, name));
            if (ReadIf(DraftOf(name)) is not { } draft)
            {
                return kept is null ? null : new DeskFile(name, kept, HasDraft: false, null, ReusedIn(name));
            }

            var begun = ReadIf(BaseOf(name));
            var isElsewhereChanged = kept is not null && (begun is null || !kept.AsSpan().SequenceEqual(begun));
            return new DeskFile(name, draft, HasDraft: true, isElsewhereChanged ? kept : null, ReusedIn(name));
        }
    }

    /// <summary>Takes a file in, as a draft, under a name that no other has.</summary>
    /// <param name="wanted">The name it had where it came from; any text.</param>
    /// <returns>The name it has here: the same one where the same file is here already.</returns>
    /// <exception cref="TagendException">It cannot be written.</exception>
    public string TakeIn(string wanted, byte[] bytes)
    {
        lock (_writing)
        {
            var stem = SafeStem(wanted);
            for (var number = 1; ; number++)
            {
                var name = number == 1 ? stem + Ending : $"{stem} {number}{Ending}";
                var known = ReadIf(DraftOf(name)) ?? ReadIf(Path.Combine(Folder, name));
                if (known is null)
                {
                    AtomicFiles.Write([FileOf(DraftOf(name), bytes)]);
                    return name;
                }

                if (known.AsSpan().SequenceEqual(bytes))
                {
                    return name;
                }
            }
        }
    }

    /// <summary>Changes a file; the change is on the disk when this returns.</summary>
    /// <param name="change">Gets the file as it stands now; null changes nothing.</param>
    /// <returns>Whether something was changed.</returns>
    /// <exception cref="TagendException">There is no such file, or it cannot be written.</exception>
    public bool Change(string name, Func<byte[], byte[]?> change)
    {
        lock (_writing)
        {
            var file = Open(name) ?? throw NoFile(name);
            if (change(file.Bytes) is not { } changed)
            {
                return false;
            }

            AtomicFiles.Write(file.HasDraft
                ? [FileOf(DraftOf(name), changed)]
                : [FileOf(DraftOf(name), changed), FileOf(BaseOf(name), file.Bytes)]);
            return true;
        }
    }

    /// <summary>Keeps whether an order's number is used again on purpose.</summary>
    /// <exception cref="TagendException">There is no such file, or it cannot be written.</exception>
    public void Reuse(string name, string order, string customer, bool isReused)
    {
        lock (_writing)
        {
            var file = Open(name) ?? throw NoFile(name);
            IEnumerable<(string Order, string Customer)> others = file.Reused.Where(r => r.Order != order);
            var lines = (isReused ? others.Append((Order: order, Customer: customer)) : others).Select(r => $"{Uri.EscapeDataString(r.Order)} {Uri.EscapeDataString(r.Customer)}");
            AtomicFiles.Write([FileOf(DraftOf(name) + ReusedEnding, System.Text.Encoding.ASCII.GetBytes(string.Join('\n', lines)))]);
        }
    }

    /// <summary>Writes the draft to the folder, whole or not at all.</summary>
    /// <param name="other">
    /// The seal of what somebody else wrote there meanwhile, if the draft may take its place: it is kept beside it. Null where nobody may have.
    /// </param>
    /// <returns>False where the folder's file is another one than that: nothing is written.</returns>
    /// <exception cref="TagendException">There is no such draft, or it cannot be written.</exception>
    public bool Keep(string name, string? other)
    {
        lock (_writing)
        {
            var file = Open(name) ?? throw NoFile(name);
            if ((file.Other is { } there ? SealOf(there) : null) != other)
            {
                return false;
            }

            AtomicFiles.Write(file.Other is { } old
                ? [FileOf(Path.Combine(Folder, name), file.Bytes), FileOf(Path.Combine(Folder, $"{name}.before"), old)]
                : [FileOf(Path.Combine(Folder, name), file.Bytes)]);
            Forget(name);
            return true;
        }
    }

    /// <summary>Drops the draft; the folder's file stays as it is. A file that was never kept is gone.</summary>
    public void Drop(string name)
    {
        lock (_writing)
        {
            if (IsName(name))
            {
                Forget(name);
            }
        }
    }

    /// <summary>A short name for bytes, to see whether they are still the same.</summary>
    public static string SealOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 8));

    internal static TagendException NoFile(string name) => new($"there is no order file {name} any more: go back to the orders") { Blame = Blame.Missing };

    private string DraftOf(string name) => Path.Combine(Drafts, name);

    private string BaseOf(string name) => DraftOf(name) + BaseEnding;

    private HashSet<(string Order, string Customer)> ReusedIn(string name) => File.Exists(DraftOf(name) + ReusedEnding)
        ? [.. File.ReadLines(DraftOf(name) + ReusedEnding).Select(l => l.Split(' ')).Where(w => w.Length == 2).Select(w => (Uri.UnescapeDataString(w[0]), Uri.UnescapeDataString(w[1])))]
        : [];

    private void Forget(string name)
    {
        File.Delete(DraftOf(name));
        File.Delete(BaseOf(name));
    }

    private static IEnumerable<FileInfo> FilesIn(string folder) => Directory.Exists(folder)
        ? new DirectoryInfo(folder).EnumerateFiles().Where(f => IsName(f.Name))
        : [];

    private static byte[]? ReadIf(string path) => File.Exists(path) ? OrderReader.Load(path) : null;

    private static NewFile FileOf(string path, byte[] bytes) => new(path, stream => stream.Write(bytes));

    /// <summary>A file's name and nothing that leads elsewhere: on no system, for a shop's folder may be on another.</summary>
    private static bool IsName(string name) =>
        name.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) && name[0] != '.' && name.Length <= MostCharacters
        && !name.Any(c => c is '/' or '\\' or ':' || char.IsControl(c));

    private static string SafeStem(string wanted)
    {
        var stem = Path.GetFileNameWithoutExtension(wanted.Split('/', '\\')[^1]);
        stem = string.Concat(stem.Select(c => char.IsLetterOrDigit(c) || c is '-' or '_' or '.' or ' ' ? c : '-')).Trim(' ', '.', '-');
        return stem.Length == 0 ? "orders" : stem[..Math.Min(stem.Length, 60)].TrimEnd();
    }
}
