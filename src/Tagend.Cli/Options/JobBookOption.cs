using System.CommandLine;
using Tagend.Addresses;
using Tagend.Jobs;
using Tagend.Problems;
using Tagend.Workshop.Shops;

namespace Tagend.Options;

/// <summary>Where a run's job book is: as the command line says, else the environment, else the shop's folder.</summary>
internal static class JobBookOption
{
    /// <summary>In place of a file: no book is kept or read.</summary>
    public const string None = "none";

    private const string Variable = "TAGEND_JOB_BOOK";

    public static Option<string?> Create() => new("--job-book")
    {
        Description = $"The job book's file, a server as postgres://USER@HOST/DATABASE, or {None}. Default: ${Variable}, else tagend-jobs.db in the templates "
            + "folder; with those of tagend init or the program's own, in your user's folder for Tagend.",
        HelpName = "ADDRESS",
    };

    /// <param name="templates">The folder the run reads its templates from.</param>
    /// <returns>Null where none is wanted.</returns>
    public static JobBookAddress? AddressOf(string? asked, string templates)
    {
        var named = asked ?? Environment.GetEnvironmentVariable(Variable);
        named = string.IsNullOrEmpty(named) ? ShopFolders.Here.JobBook(templates) : named;
        return named == None ? null : JobBookAddressReader.Read(named);
    }

    /// <summary>A book that must be there.</summary>
    /// <exception cref="TagendException">There is none, or it cannot be used.</exception>
    public static IJobBook OpenExisting(string? asked, string templates)
    {
        var address = Needed(asked, templates);
        return address.OpenExisting(TimeProvider.System, BenchName.Here)
            ?? throw new TagendException($"{address.Text}: there is no job book yet; tagend print starts one, or name another with --job-book");
    }

    /// <summary>A book that is begun where there is none.</summary>
    /// <exception cref="TagendException">It cannot be used.</exception>
    public static IJobBook Begin(string? asked, string templates) => Needed(asked, templates).OpenOrBegin(TimeProvider.System, BenchName.Here);

    private static JobBookAddress Needed(string? asked, string templates) =>
        AddressOf(asked, templates) ?? throw new TagendException("this command needs a job book: name it with --job-book");
}
