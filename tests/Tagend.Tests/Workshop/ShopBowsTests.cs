using Tagend.Problems;
using Tagend.Workshop.Shops;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class ShopBowsTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Keep_WhereAFileStandsForTheFolder_SaysSo()
    {
        ShopTemplates.Begin(TestFiles.Templates, _folder["templates"], ShopOwn.Nothing);
        Directory.Delete(_folder["templates/bows"], recursive: true);
        File.WriteAllText(_folder["templates/bows"], "");
        var catalog = ShopTemplates.Read(_folder["templates"]).Catalog!;
        var spec = _folder.Check().Report.MakeSets()[0].Builds[0].Spec;
        var fault = Assert.Throws<TagendException>(() => ShopBows.Keep("Demo bow", [spec], catalog, mayReplace: false));
        Assert.EndsWith("demo-bow.toml: a file stands where a folder is needed; choose another folder", fault.Message, StringComparison.Ordinal);
    }
}
