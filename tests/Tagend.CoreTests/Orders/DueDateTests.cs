using Tagend.Orders;
using Xunit;

namespace Tagend.Tests.Orders;

public sealed class DueDateTests
{
    private static readonly DateOnly Today = new(2026, 11, 26);

    [Theory]
    [InlineData("2026-12-04", "2026-12-04")]
    [InlineData("4 Dec", "2026-12-04")]
    [InlineData("Dec 4, 2026", "2026-12-04")]
    [InlineData("Fri 4th December", "2026-12-04")]
    [InlineData("4. Dezember", "2026-12-04")]
    [InlineData("4 de diciembre de 2026", "2026-12-04")]
    [InlineData("le 1er août", "2026-08-01")]
    [InlineData("17.5.", "2027-05-17")]
    [InlineData("4.12.26", "2026-12-04")]
    [InlineData("3 Jan", "2027-01-03")]
    [InlineData("13/4/2026", "2026-04-13")]
    [InlineData("4/13/2026", "2026-04-13")]
    [InlineData("5/5", "2027-05-05")]
    [InlineData("29 Feb", null)]
    [InlineData("12/4/2026", null)]
    [InlineData("30 Feb", null)]
    [InlineData("soon", null)]
    [InlineData("week 49", null)]
    [InlineData("", null)]
    public void Read_TextOfADate_IsTheDate(string text, string? expected) =>
        Assert.Equal(expected, DueDate.Read(text, DateStyle.Unknown, Today)?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));

    [Theory]
    [InlineData(DateStyle.MonthFirst, 12, 4)]
    [InlineData(DateStyle.DayFirst, 4, 12)]
    public void Read_NumbersOnly_AreAsTheShopWritesThem(DateStyle style, int month, int day) =>
        Assert.Equal(new DateOnly(2026, month, day), DueDate.Read("12/4/2026", style, Today));

    [Theory]
    [InlineData("1-Feb", true)]
    [InlineData("16. Mai", true)]
    [InlineData("01.02.2026", true)]
    [InlineData("2026-02-01", true)]
    [InlineData("1/2/2026", true)]
    [InlineData("1-2", false)]
    [InlineData("60 1/2", false)]
    [InlineData("6o 1/4", false)]
    [InlineData("B 8", false)]
    public void IsEatenFraction_DateOfASpreadsheet_IsSeen(string text, bool expected) =>
        Assert.Equal(expected, DueDate.IsEatenFraction(text));
}
