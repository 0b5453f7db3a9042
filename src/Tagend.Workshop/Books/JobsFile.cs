using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Output;

namespace Tagend.Workshop.Books;

/// <summary>Jobs as a CSV file, one row a build.</summary>
public static class JobsFile
{
    /// <summary>Writes the file, whole or not at all.</summary>
    /// <param name="path">A file that is there already is replaced.</param>
    /// <param name="jobs">In the order of the rows.</param>
    /// <param name="unit">The unit of all lengths.</param>
    /// <exception cref="Problems.TagendException">It cannot be written; what stood there is as it was.</exception>
    public static void Write(string path, IEnumerable<PrintedJob> jobs, LengthUnit unit) =>
        AtomicFiles.Write([new NewFile(path, stream => JobTable.Write(jobs, unit, stream))]);
}
