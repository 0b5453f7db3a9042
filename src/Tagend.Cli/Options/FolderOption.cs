using System.CommandLine;

namespace Tagend.Options;

/// <summary><c>--out</c>: where files go.</summary>
internal static class FolderOption
{
    /// <param name="what">Goes there.</param>
    public static Option<string> Create(string what) => new Option<string>("--out")
    {
        Description = $"The folder for {what}; made if need be. Default: this folder.",
        HelpName = "DIR",
        DefaultValueFactory = _ => ".",
    }.NamesSomething();
}
