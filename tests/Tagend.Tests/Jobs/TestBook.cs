using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Tests.Specs;

namespace Tagend.Tests.Jobs;

/// <summary>A job book in a folder of its own, gone after the test.</summary>
internal sealed class TestBook : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-book-").FullName;

    public string Path => System.IO.Path.Combine(_folder, "tagend-jobs.db");

    public static AsBuilt Built { get; } = new()
    {
        Posts = Length.FromInches(61.1875),
        Turns = 45.5,
        Measured = Length.FromInches(60.28125),
        Load = Force.FromPounds(300),
        Minutes = 20,
        Who = "AB",
    };

    public IJobBook Open() => new SqliteAddress(Path).OpenOrBegin(TimeProvider.System);

    /// <summary>A string whose cells can be replaced; customer and bow as given.</summary>
    public static Build Piece(string customer = "", string bow = "", params (string Column, string Text)[] cells) =>
        new(SpecFixture.Good(cells), new OrderSlip(customer, bow, "", ""));

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
