using System.Globalization;

namespace Tagend.Jobs;

/// <summary>Moments as a book and its tables write them: UTC, ISO 8601, whole seconds, such as <c>2026-03-14T09:30:00Z</c>.</summary>
internal static class UtcTime
{
    private const string Pattern = "yyyy-MM-dd'T'HH:mm:ss'Z'";

    public static string Write(DateTimeOffset time) => time.UtcDateTime.ToString(Pattern, CultureInfo.InvariantCulture);

    /// <exception cref="FormatException">The text is no such moment.</exception>
    public static DateTimeOffset Read(string text) =>
        DateTimeOffset.ParseExact(text, Pattern, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
