using System.CommandLine;
using System.Globalization;

namespace Tagend.Options;

/// <summary>An option that takes a date: ISO 8601.</summary>
internal static class DateOption
{
    /// <summary>The date given, else today's.</summary>
    public static DateOnly Of(DateOnly? given) => given ?? DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);

    public static Option<DateOnly?> Create(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "YYYY-MM-DD",
        CustomParser = result =>
        {
            if (DateOnly.TryParseExact(
                result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            {
                return date;
            }

            result.AddError($"{name} \"{result.Tokens[0].Value}\": expected a date such as 2026-03-14");
            return null;
        },
    };
}
