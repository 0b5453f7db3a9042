using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Xunit;

namespace Tagend.Tests.Output;

public sealed class PaperNameTests
{
    /// <summary>PWG 5101.1-2013, table 2 (na_letter, na_invoice, na_index-5x8) and table 4 (iso_a4, iso_a5); clause 5 for custom sizes.</summary>
    public static TheoryData<Paper, string> Papers => new()
    {
        { Paper.Letter, "na_letter_8.5x11in" },
        { Paper.HalfLetter, "na_invoice_5.5x8.5in" },
        { Paper.A4, "iso_a4_210x297mm" },
        { Paper.A5, "iso_a5_148x210mm" },
        { Paper.IndexCard, "na_index-5x8_5x8in" },
        { new Paper("roll-3x1.25", Length.FromInches(3), Length.FromInches(1.25)), "custom_roll-3x1.25_3x1.25in" },
        { new Paper("roll-100x50mm", Length.FromMillimeters(100), Length.FromMillimeters(50)), "custom_roll-100x50mm_100x50mm" },
        { new Paper("My Roll_ä", Length.FromMillimeters(57.15), Length.FromMillimeters(31.754)), "custom_my-roll--_57.15x31.75mm" },
    };

    [Theory]
    [MemberData(nameof(Papers))]
    public void Name_OfAPaper_IsTheQueues(Paper paper, string expected) => Assert.Equal(expected, PaperName.Of(paper));
}
