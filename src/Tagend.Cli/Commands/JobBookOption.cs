using System.CommandLine;
using Tagend.Addresses;
using Tagend.Jobs;
using Tagend.Problems;

namespace Tagend.Commands;

/// <summary>Where a run's job book is: as the command line says, else the environment, else the shop's folder.</summary>
internal static class JobBookOption
{
    /// <summary>In place of a file: no book is kept or read.</summary>
    public const string None = "none";

    /// <summary>The book's file in the shop's folder.</summary>
    private const string FileName = "tagend-jobs.db";

    private const string Variable = "TAGEND_JOB_BOOK";

    public static Option<string?> Create() => new("--job-book")
    {
        Description = $"The job book's file, a server as postgres://USER@HOST/DATABASE, or {None}. Default: ${Variable}, else {FileName} in the templates folder; "
            + "beside the program's own templates it is in this folder.",
        HelpName = "ADDRESS",
    };

    /// <param name="templates">The folder the run reads its templates from.</param>
    /// <returns>Null where none is wanted.</returns>
    public static JobBookAddress? AddressOf(string? asked, string templates)
    {
        var named = asked ?? Environment.GetEnvironmentVariable(Variable);
        if (string.IsNullOrEmpty(named))
        {
            named = templates == ShopOptions.ShippedTemplates ? FileName : Path.Combine(templates, FileName);
        }

        return named == None ? null : JobBookAddressReader.Read(named);
    }

    /// <summary>A book that must be there.</summary>
    /// <exception cref="TagendException">There is none, or it cannot be used.</exception>
    public static IJobBook OpenExisting(string? asked, string templates)
    {
        var address = Needed(asked, templates);
        return address.OpenExisting(TimeProvider.System)
            ?? throw new TagendException($"{address.Text}: there is no job book yet; tagend print begins it, or name another with --job-book");
    }

    /// <summary>A book that is begun where there is none.</summary>
    /// <exception cref="TagendException">It cannot be used.</exception>
    public static IJobBook Begin(string? asked, string templates) => Needed(asked, templates).OpenOrBegin(TimeProvider.System);

    private static JobBookAddress Needed(string? asked, string templates) =>
        AddressOf(asked, templates) ?? throw new TagendException("this command needs a job book: name it with --job-book");
}
