namespace Tagend.Measures;

/// <summary>Reads what is on a spool: a length with its unit, such as <c>1000 yd</c> or <c>900 m</c>.</summary>
public static class SpoolLengthReader
{
    /// <summary>More is on no spool: a slip of the hand.</summary>
    private static readonly Length Most = Length.FromMillimeters(100_000_000);

    private static readonly string[] Yards = ["yards", "yard", "yd.", "yd"];

    /// <summary>Reads the whole text as one length of 0 to 100 km that names its unit, to whole millimeters; yards are for spools alone.</summary>
    public static bool TryRead(string text, out Length length)
    {
        var plain = text.Trim();
        var yards = Array.Find(Yards, y => plain.EndsWith(y, StringComparison.OrdinalIgnoreCase));
        var isRead = yards is null
            ? LengthReader.TryRead(plain, LengthUnit.Inch, out length) && !LengthReader.IsBare(plain)
            : LengthReader.TryRead($"{plain[..^yards.Length]}ft", LengthUnit.Inch, out length);
        length = Length.FromMillimeters(Math.Round((yards is null ? length : length * 3).Millimeters));
        return isRead && length <= Most;
    }
}
