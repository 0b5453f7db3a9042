using Xunit;

namespace Tagend.Tests.Imports;

public sealed class MapReaderTests
{
    private const string Least = "title = \"t\"\n[columns]\n\"No\" = \"order\"\n";

    [Theory]
    [InlineData("\"Len\" = \"length\"", "imports/sheet.toml:4: [columns] Len \"length\": expected a column of an order, or PIECE.COLUMN such as buss.finished_length; the columns are order,")]
    [InlineData("\"Len\" = \"buss.customer\"", "imports/sheet.toml:4: [columns] Len \"buss.customer\": customer is one of the whole row, not of a piece: write it without the piece and its point")]
    [InlineData("\"Number\" = \"order\"", "imports/sheet.toml:1 \"\": order is given by \"No\" and by \"Number\": keep one of them, or put them together under [join]")]
    [InlineData("[join]\nbow = \"{Make\"", "imports/sheet.toml:5: [join] bow \"{Make\": expected headers in braces, such as \"{Make} {Model}\"")]
    [InlineData("[values.kind]\n\"Buss Cable\" = \"buss-cable\"\n\"buss  cable\" = \"buss-cable\"", "imports/sheet.toml:6: [values.kind] buss  cable: the same text is given above, for letter case and spaces do not matter: keep one of them")]
    [InlineData("[sizes]\nsmall = 1", "imports/sheet.toml:4: [sizes]: no such section in a map: there are [columns], [join], [constants], [options.\"HEADER\"], [values.COLUMN] and [[leave_out]]")]
    [InlineData("[[leave_out]]\ncolumn = \"Paid\"\nwhy = \"unpaid\"", "imports/sheet.toml:4: [leave_out]: expected either is or is_not, with texts in brackets, such as is = [\"no\", \"\"]")]
    public void Read_Mistake_IsNamedWithItsPlace(string toml, string expected)
    {
        var (map, problems) = MapFixture.Read(Least + toml);
        Assert.Null(map);
        Assert.StartsWith(expected.Replace(":1 \"\"", ":1", StringComparison.Ordinal), Assert.Single(problems), StringComparison.Ordinal);
    }
}
