using Tagend.Problems;

namespace Tagend.Workshop.Shops;

/// <summary>
/// Where a shop's templates and job book are where a run does not say. What a shop owns is in its user's own folder, so that a
/// new version replaces the program and nothing else.
/// </summary>
/// <param name="shipped">The templates that came with the program.</param>
/// <param name="current">The folder the run was started in; a templates folder there comes first.</param>
/// <param name="data">The user's own folder for Tagend; it need not exist.</param>
public sealed class ShopFolders(string shipped, string current, string data)
{
    private const string TemplatesFolder = "templates";
    internal const string BookFile = "tagend-jobs.db";

    /// <summary>Of the program that runs, the folder it was started in and its user.</summary>
    /// <remarks>By the XDG Base Directory Specification on Linux; AppData\Local on Windows; Application Support on macOS.</remarks>
    public static ShopFolders Here { get; } = new(
        Path.Combine(AppContext.BaseDirectory, TemplatesFolder),
        "",
        Path.Combine(
            Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify),
            OperatingSystem.IsLinux() ? "tagend" : "Tagend"));

    /// <summary>The templates that came with the program.</summary>
    public string Shipped => shipped;

    /// <summary>The templates in the user's own folder; they need not exist.</summary>
    public string Own { get; } = Path.Combine(data, TemplatesFolder);

    /// <summary>The job book that an earlier version kept beside the program, where a new version would replace it; else null.</summary>
    public string? BookBesideProgram => Path.Combine(shipped, BookFile) is var book && File.Exists(book) ? book : null;

    /// <summary>The folder named, else that of the current folder, else the user's own, else the one that came with the program.</summary>
    public string Templates(string? named)
    {
        var here = Path.Combine(current, TemplatesFolder);
        return named
            ?? (Directory.Exists(here) && !IsShipped(here) ? here : Directory.Exists(Own) ? Own : shipped);
    }

    /// <summary>Whether a folder is the one that came with the program.</summary>
    public bool IsShipped(string folder) => IsSame(folder, shipped);

    /// <summary>The job book's file for a run with these templates; it need not exist, the user's own folder for it is made.</summary>
    public string JobBook(string templates)
    {
        if (!IsShipped(templates))
        {
            return Path.Combine(IsSame(templates, Own) ? Made(data) : templates, BookFile);
        }

        // Earlier versions kept it beside the program, or in the current folder.
        var here = Path.Combine(current, BookFile);
        return BookBesideProgram ?? (File.Exists(here) ? here : Path.Combine(Made(data), BookFile));
    }

    /// <summary>Moves templates and job book that an earlier version kept beside the program into the user's own folder.</summary>
    /// <param name="besideProgram">The job book there.</param>
    /// <exception cref="TagendException">The user has templates or a job book there already, or one of them cannot be moved.</exception>
    public void MoveOwn(string besideProgram)
    {
        var book = Path.Combine(data, BookFile);
        if (File.Exists(book))
        {
            throw new TagendException($"{book} already exists: there would be two job books; keep one of them, or copy the other with tagend book copy");
        }

        if (File.Exists(besideProgram + "-journal"))
        {
            throw new TagendException($"{besideProgram} is being written to, or was when a run was cut off: run tagend jobs, then move it");
        }

        if (ShopTemplates.Begin(shipped, Own, ShopOwn.Nothing) is { Count: > 0 } problems)
        {
            throw new TagendException(string.Join("\n", problems));
        }

        try
        {
            File.Move(besideProgram, book);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"cannot move {besideProgram} to {book}: {SystemReason.Of(e)}", e);
        }
    }

    /// <summary>A folder, made where it can be; a run that cannot use it says so when it opens its book.</summary>
    private static string Made(string folder)
    {
        try
        {
            return Directory.CreateDirectory(folder).FullName;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return folder;
        }
    }

    private static bool IsSame(string one, string other) =>
        Path.TrimEndingDirectorySeparator(Path.GetFullPath(one)) == Path.TrimEndingDirectorySeparator(Path.GetFullPath(other));
}
