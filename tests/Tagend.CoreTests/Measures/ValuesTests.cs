using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Measures;

/// <summary>Lengths, forces and masses compute to their smallest part, order as numbers do, and overflow aloud.</summary>
public class ValuesTests
{
    private static readonly Length Short = Length.FromNanometers(3);
    private static readonly Length Long = Length.FromNanometers(4);
    private static readonly Force Weak = Force.FromMicronewtons(3);
    private static readonly Force Strong = Force.FromMicronewtons(4);

    [Fact]
    public void Length_Computed_IsToTheNanometer()
    {
        Assert.Equal(25_400_000, Length.FromInches(1).Nanometers); // NIST SP 811: 1 in = 25.4 mm
        Assert.Equal(1_500_000, Length.FromMillimeters(1.5).Nanometers);
        Assert.Equal(1.5, Length.FromMillimeters(1.5).Millimeters);
        Assert.Equal(7, (Short + Long).Nanometers);
        Assert.Equal(-1, (Short - Long).Nanometers);
        Assert.Equal(-3, (-Short).Nanometers);
        Assert.Equal(10, (Long * 2.6).Nanometers); // 10.4
        Assert.Equal(2, (Long / 2.6).Nanometers); // 1.54
        Assert.Equal(0.75, Short / Long);
    }

    [Fact]
    public void Length_ComparedWithShorterEqualAndLonger_IsOrdered()
    {
        Assert.Equal((false, true, false), (Long < Short, Short < Long, Short < Length.FromNanometers(3)));
        Assert.Equal((true, false, false), (Long > Short, Short > Long, Short > Length.FromNanometers(3)));
        Assert.Equal((false, true, true), (Long <= Short, Short <= Long, Short <= Length.FromNanometers(3)));
        Assert.Equal((true, false, true), (Long >= Short, Short >= Long, Short >= Length.FromNanometers(3)));
        Assert.Equal((1, -1, 0), (Long.CompareTo(Short), Short.CompareTo(Long), Short.CompareTo(Length.FromNanometers(3))));
        Assert.Equal((Short, Short), (Length.Min(Short, Long), Length.Min(Long, Short)));
        Assert.Equal((Long, Long), (Length.Max(Short, Long), Length.Max(Long, Short)));
        Assert.Equal((Short, Short, Length.Zero), (Length.Abs(Short), Length.Abs(-Short), Length.Abs(Length.Zero)));
    }

    [Fact]
    public void Force_Computed_IsToTheMicronewton()
    {
        Assert.Equal(4_448_222, Force.FromPounds(1).Micronewtons); // NIST SP 811, appendix B.8: 4.448 221 615 2605 N
        Assert.Equal(1_500_000, Force.FromNewtons(1.5).Micronewtons);
        Assert.Equal(1.5, Force.FromNewtons(1.5).Newtons);
        Assert.Equal(10, (Strong * 2.6).Micronewtons);
        Assert.Equal(0.75, Weak / Strong);
    }

    [Fact]
    public void Force_ComparedWithWeakerEqualAndStronger_IsOrdered()
    {
        Assert.Equal((false, true, false), (Strong < Weak, Weak < Strong, Weak < Force.FromMicronewtons(3)));
        Assert.Equal((true, false, false), (Strong > Weak, Weak > Strong, Weak > Force.FromMicronewtons(3)));
        Assert.Equal((false, true, true), (Strong <= Weak, Weak <= Strong, Weak <= Force.FromMicronewtons(3)));
        Assert.Equal((true, false, true), (Strong >= Weak, Weak >= Strong, Weak >= Force.FromMicronewtons(3)));
        Assert.Equal((1, -1, 0), (Strong.CompareTo(Weak), Weak.CompareTo(Strong), Weak.CompareTo(Force.FromMicronewtons(3))));
    }

    [Fact]
    public void Mass_Computed_IsToTheMilligram()
    {
        Assert.Equal(1_500, Mass.FromGrams(1.5).Milligrams);
        Assert.Equal(1.5, Mass.FromMilligrams(1_500).Grams);
        Assert.Equal(7, (Mass.FromMilligrams(3) + Mass.FromMilligrams(4)).Milligrams);
        Assert.Equal(2, (Mass.FromMilligrams(5) / 3).Milligrams); // 1.67
    }

    [Fact]
    public void AnyValue_BeyondItsNumbers_IsAFaultOfTheCaller()
    {
        Action[] beyond =
        [
            () => Length.FromInches(1e12), () => Length.FromMillimeters(1e13), () => _ = Length.FromNanometers(long.MaxValue) + Short,
            () => _ = Length.FromNanometers(long.MinValue) - Short, () => _ = Length.FromNanometers(long.MaxValue) * 2, () => Length.FromInches(double.NaN),
            () => Force.FromPounds(1e13), () => Force.FromNewtons(1e13), () => _ = Force.FromMicronewtons(long.MaxValue) * 2,
            () => Mass.FromGrams(1e16), () => _ = Mass.FromMilligrams(long.MaxValue) + Mass.FromMilligrams(1), () => _ = Mass.FromMilligrams(1) / 0,
        ];
        Assert.All(beyond, b => Assert.Throws<OverflowException>(b));
    }

    [Fact]
    public void List_OfEqualItems_IsEqual()
    {
        ValueList<int> list = [1, 2, 3];
        Assert.Equal((3, 2), (list.Count, list[1]));
        Assert.Equal([1, 2, 3], list.AsEnumerable());
        Assert.True(list.Equals((object)ValueList.Create([1, 2, 3])));
        Assert.Equal(list.GetHashCode(), ValueList.Create([1, 2, 3]).GetHashCode());
        Assert.NotEqual(list.GetHashCode(), ValueList.Create([1, 2, 4]).GetHashCode());
        Assert.False(list.Equals((object)ValueList.Create([1, 2])));
        Assert.False(list.Equals((object?)null));
        Assert.Equal("[1; 2; 3]", list.ToString());
    }

    [Fact]
    public void MadeList_AskedForAnItem_MakesIt()
    {
        var list = new MadeList<int>(3, i => 10 * i);
        Assert.Equal((0, 20), (list[0], list[2]));
        Assert.Equal([0, 10, 20], list.Take(4));
        Assert.Throws<ArgumentOutOfRangeException>(() => list[-1]);
        Assert.Throws<ArgumentOutOfRangeException>(() => list[3]);
    }
}
