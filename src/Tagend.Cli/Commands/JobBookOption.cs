using System.CommandLine;
using Tagend.Jobs;
using Tagend.Problems;

namespace Tagend.Commands;

/// <summary>Where a run's job book is: as the command line says, else the environment, else the shop's folder.</summary>
internal static class JobBookOption
{
    /// <summary>In place of a file: no book is kept or read.</summary>
    public const string None = "none";

    private const string Variable = "TAGEND_JOB_BOOK";

    public static Option<string?> Create() => new("--job-book")
    {
        Description = $"The job book's file, or {None}. Default: ${Variable}, else {JobBook.FileName} in the templates folder; "
            + "beside the program's own templates it is in this folder.",
        HelpName = "FILE",
    };

    /// <param name="templates">The folder the run reads its templates from.</param>
    /// <returns>Null where none is wanted.</returns>
    public static string? PathOf(string? asked, string templates)
    {
        var named = asked ?? Environment.GetEnvironmentVariable(Variable);
        if (!string.IsNullOrEmpty(named))
        {
            return named == None ? null : named;
        }

        return templates == ShopOptions.ShippedTemplates ? JobBook.FileName : Path.Combine(templates, JobBook.FileName);
    }

    /// <summary>A book that must be there.</summary>
    /// <exception cref="TagendException">There is none, or it cannot be used.</exception>
    public static JobBook OpenExisting(string? asked, string templates)
    {
        var path = Needed(asked, templates);
        return File.Exists(path)
            ? JobBook.Open(path, make: false, TimeProvider.System)
            : throw new TagendException($"{path}: there is no job book yet; tagend print begins it, or name another with --job-book");
    }

    /// <summary>A book that is begun where there is none.</summary>
    /// <exception cref="TagendException">It cannot be used.</exception>
    public static JobBook Begin(string? asked, string templates) =>
        JobBook.Open(Needed(asked, templates), make: true, TimeProvider.System);

    private static string Needed(string? asked, string templates) =>
        PathOf(asked, templates) ?? throw new TagendException("this command needs a job book: name its file with --job-book");
}
