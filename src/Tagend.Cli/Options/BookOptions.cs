using System.CommandLine;
using Tagend.Catalog;
using Tagend.Jobs;

namespace Tagend.Options;

/// <summary>The options of a command about the job book.</summary>
internal sealed class BookOptions
{
    private readonly Option<string?> _templates = ShopOptions.TemplatesOption();
    private readonly Option<string?> _file = JobBookOption.Create();

    public void AddTo(Command command)
    {
        command.Options.Add(_templates);
        command.Options.Add(_file);
    }

    /// <returns>Null, with its problems on standard error, where the catalog has mistakes.</returns>
    public ShopCatalog? ReadCatalog(ParseResult parsed) => ShopOptions.ReadCatalog(parsed.GetValue(_templates));

    /// <returns>Null where none is wanted.</returns>
    public JobBookAddress? AddressOf(ParseResult parsed, ShopCatalog catalog) => JobBookOption.AddressOf(parsed.GetValue(_file), catalog.Folder);

    /// <exception cref="Problems.TagendException">There is no book, or it cannot be used.</exception>
    public IJobBook Open(ParseResult parsed, ShopCatalog catalog) => JobBookOption.OpenExisting(parsed.GetValue(_file), catalog.Folder);

    /// <summary>A book that is begun where there is none.</summary>
    /// <exception cref="Problems.TagendException">It cannot be used.</exception>
    public IJobBook OpenOrBegin(ParseResult parsed, ShopCatalog catalog) => JobBookOption.Begin(parsed.GetValue(_file), catalog.Folder);
}
