namespace Tagend.Workshop.Printing;

/// <summary>Names of files that are named after orders and pieces.</summary>
internal static class FileNames
{
    /// <summary>What an order says must not lead to another folder.</summary>
    public static string Safe(string name) =>
        string.Concat(name.Select(c => char.IsLetterOrDigit(c) || c is '.' or '_' or ' ' ? c : '-'));
}
