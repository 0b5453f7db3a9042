using System.Text;
using Tagend.Catalog;
using Tagend.Files;
using Tagend.Output;
using Tagend.Problems;

namespace Tagend.Workshop.Shops;

/// <summary>What became of a templates folder.</summary>
/// <param name="Catalog">Null where the templates have mistakes.</param>
/// <param name="Problems">All mistakes, each with its file and line; none where there is a catalog.</param>
public sealed record TemplatesReading(ShopCatalog? Catalog, IReadOnlyList<Problem> Problems);

/// <summary>A shop's templates folder.</summary>
public static class ShopTemplates
{
    /// <summary>Reads a templates folder, with all its problems at once.</summary>
    /// <exception cref="TagendException">A file cannot be read.</exception>
    public static TemplatesReading Read(string folder)
    {
        var problems = new List<Problem>();
        return new TemplatesReading(CatalogReader.Read(folder, problems), problems);
    }

    /// <summary>Holds that templates can be put in a folder.</summary>
    /// <exception cref="TagendException">It exists already.</exception>
    public static void CheckIsNew(string folder)
    {
        if (Path.Exists(folder))
        {
            throw new TagendException($"{folder} already exists: name a new folder, so that nothing of yours is overwritten");
        }
    }

    /// <summary>Copies templates for a shop to edit: the whole folder appears, or nothing of it.</summary>
    /// <param name="from">The templates that came with the program.</param>
    /// <param name="folder">Must not exist; the folders above it are made.</param>
    /// <param name="own">What the shop says of itself.</param>
    /// <returns>What the shop says and cannot be; nothing is written then.</returns>
    /// <exception cref="TagendException">It exists already, or cannot be written.</exception>
    public static IReadOnlyList<Problem> Begin(string from, string folder, ShopOwn own)
    {
        CheckIsNew(folder);
        var whole = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        var parent = Path.GetDirectoryName(whole)!;
        try
        {
            using var drafts = TempFiles.In(parent);
            var draft = Path.Combine(drafts.Folder, Path.GetFileName(whole));
            AtomicFiles.Write(
            [
                .. Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories).Where(f => !IsJobBook(f))
                    .Select(f => new NewFile(Path.Combine(draft, Path.GetRelativePath(from, f)), copy => Copy(f, copy, own))),
            ]);
            var problems = Read(draft).Problems;
            if (problems.Count == 0)
            {
                Directory.Move(draft, whole);
                DiskSync.ForceNames(parent);
            }

            return problems;
        }
        catch (TagendException e) when (e.InnerException is IOException or UnauthorizedAccessException)
        {
            throw Refused(folder, e.InnerException);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Refused(folder, e);
        }
    }

    private static TagendException Refused(string folder, Exception e) => new($"cannot copy the templates to {folder}: {SystemReason.Of(e)}; choose another folder or try again", e);

    private static void Copy(string file, Stream copy, ShopOwn own)
    {
        if (Path.GetFileName(file) == "shop.toml")
        {
            copy.Write(Encoding.UTF8.GetBytes(own.In(File.ReadAllText(file))));
            return;
        }

        using var source = File.OpenRead(file);
        source.CopyTo(copy);
    }

    private static bool IsJobBook(string file) => Path.GetFileName(file).StartsWith(ShopFolders.BookFile, StringComparison.Ordinal);
}
