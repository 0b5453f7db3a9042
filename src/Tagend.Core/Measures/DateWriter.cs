using System.Globalization;

namespace Tagend.Measures;

/// <summary>Writes dates the way that reads the same everywhere: ISO 8601, <c>2026-03-14</c>.</summary>
public static class DateWriter
{
    /// <summary>A date as <c>2026-03-14</c>.</summary>
    public static string Iso(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
