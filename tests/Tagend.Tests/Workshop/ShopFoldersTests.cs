using Tagend.Problems;
using Tagend.Workshop.Shops;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class ShopFoldersTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("tagend-folders-").FullName;
    private readonly ShopFolders _folders;

    public ShopFoldersTests()
    {
        Directory.CreateDirectory(In("program/templates"));
        Directory.CreateDirectory(In("here"));
        foreach (var file in Directory.GetFiles(TestFiles.Templates, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(In("program/templates"), Path.GetRelativePath(TestFiles.Templates, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        _folders = new ShopFolders(In("program/templates"), In("here"), In("data/tagend"));
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Templates_NothingOfTheShops_AreTheProgramsWithTheBookInTheUsersFolder()
    {
        Assert.Equal(In("program/templates"), _folders.Templates(null));
        Assert.Equal(In("data/tagend/tagend-jobs.db"), _folders.JobBook(In("program/templates")));
        Assert.Empty(Directory.GetFiles(In("program/templates"), "*.db"));
    }

    [Fact]
    public void Templates_OwnMadeByInit_AreFoundAndTheBookStaysWhereItWas()
    {
        var before = _folders.JobBook(_folders.Templates(null));
        Assert.Empty(ShopTemplates.Begin(_folders.Shipped, _folders.Own, ShopOwn.Nothing));
        Assert.Equal(In("data/tagend/templates"), _folders.Templates(null));
        Assert.Equal(before, _folders.JobBook(_folders.Templates(null)));
    }

    [Fact]
    public void Templates_InTheCurrentFolder_ComeBeforeTheUsersOwn()
    {
        Directory.CreateDirectory(_folders.Own);
        Directory.CreateDirectory(In("here/templates"));
        Assert.Equal(In("here/templates"), _folders.Templates(null));
        Assert.Equal(In("here/templates/tagend-jobs.db"), _folders.JobBook(In("here/templates")));
        Assert.Equal(In("named"), _folders.Templates(In("named")));
    }

    /// <summary>Started in the folder of the download, ./templates is the program's.</summary>
    [Fact]
    public void Templates_CurrentFolderIsTheProgramsOwn_AreNotTheShops()
    {
        var folders = new ShopFolders(In("program/templates"), In("program"), In("data/tagend"));
        Assert.True(folders.IsShipped(folders.Templates(null)));
        Assert.Equal(In("data/tagend/tagend-jobs.db"), folders.JobBook(folders.Templates(null)));
    }

    [Fact]
    public void JobBook_OfAnEarlierVersion_IsGoneOnWith()
    {
        File.WriteAllText(In("here/tagend-jobs.db"), "x");
        Assert.Equal(In("here/tagend-jobs.db"), _folders.JobBook(_folders.Shipped));
        File.WriteAllText(In("program/templates/tagend-jobs.db"), "x");
        Assert.Equal(In("program/templates/tagend-jobs.db"), _folders.JobBook(_folders.Shipped));
    }

    [Fact]
    public void MoveOwn_BesideTheProgram_TakesTemplatesAndBookAlong()
    {
        File.WriteAllText(In("program/templates/tagend-jobs.db"), "the book");
        File.AppendAllText(In("program/templates/shop.toml"), "# edited\n");
        _folders.MoveOwn(_folders.BookBesideProgram!);
        Assert.Null(_folders.BookBesideProgram);
        Assert.Equal("the book", File.ReadAllText(_folders.JobBook(_folders.Templates(null))));
        Assert.EndsWith("# edited\n", File.ReadAllText(Path.Combine(_folders.Templates(null), "shop.toml")), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folders.Own, "*.db"));
    }

    [Theory]
    [InlineData("data/tagend/tagend-jobs.db", "there would be two job books")]
    [InlineData("program/templates/tagend-jobs.db-journal", "is being written to")]
    [InlineData("data/tagend/templates/shop.toml", "already exists")]
    public void MoveOwn_CannotBe_MovesNothing(string inTheWay, string sentence)
    {
        File.WriteAllText(In("program/templates/tagend-jobs.db"), "the book");
        Directory.CreateDirectory(Path.GetDirectoryName(In(inTheWay))!);
        File.WriteAllText(In(inTheWay), "mine");
        var refusal = Assert.Throws<TagendException>(() => _folders.MoveOwn(_folders.BookBesideProgram!));
        Assert.Contains(sentence, refusal.Message, StringComparison.Ordinal);
        Assert.Equal("the book", File.ReadAllText(In("program/templates/tagend-jobs.db")));
        Assert.Equal("mine", File.ReadAllText(In(inTheWay)));
    }

    private string In(string path) => Path.Combine(_root, Path.Combine(path.Split('/')));
}
