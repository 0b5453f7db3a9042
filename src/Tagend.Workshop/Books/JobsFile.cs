using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Output;

namespace Tagend.Workshop.Books;

/// <summary>Jobs as a CSV file, one row a build.</summary>
public static class JobsFile
{
    /// <param name="unit">Of its lengths.</param>
    /// <exception cref="Problems.TagendException">It cannot be written; what stood there is as it was.</exception>
    public static void Write(string path, IEnumerable<PrintedJob> jobs, LengthUnit unit) =>
        AtomicFiles.Write([new NewFile(path, stream => JobTable.Write(jobs, unit, stream))]);
}
