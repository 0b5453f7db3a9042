using System.Globalization;

namespace Tagend.Orders;

/// <summary>Which of two numbers of a date is its month, where a shop writes numbers only.</summary>
public enum DateStyle
{
    /// <summary>Not said: 12/4 could be either.</summary>
    Unknown,

    /// <summary>12/4 is December 4th.</summary>
    MonthFirst,

    /// <summary>12/4 is April 12th.</summary>
    DayFirst,
}

/// <summary>Reads a date as people write it in an order: <c>2026-12-04</c>, <c>4 Dec</c>, <c>Dec 4, 2026</c>, <c>4.12.</c>, <c>12/4/26</c>.</summary>
public static class DueDate
{
    // Beginnings of the months' names in English, German, French and Spanish; a longer one first where a shorter begins it.
    private static readonly string[][] Months =
    [
        ["jan", "jän", "ene"], ["feb", "fév", "fev"], ["mar", "mär", "mrz"], ["apr", "avr", "abr"], ["may", "mai"], ["jun", "juin"],
        ["jul", "juil"], ["aug", "aoû", "aou", "ago"], ["sep"], ["oct", "okt"], ["nov"], ["dec", "dez", "déc", "dic"],
    ];

    private static readonly string[] Fillers = ["of", "de", "the", "le", "el", "den"];

    /// <summary>The date; null where the text is none, or could be one of two.</summary>
    /// <param name="today">A date without a year is the nearest one to it.</param>
    public static DateOnly? Read(string text, DateStyle style, DateOnly today)
    {
        if (DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var iso))
        {
            return iso;
        }

        var words = text.ToLowerInvariant()
            .Split([' ', ',', '.', '/', '-', '\u00A0'], StringSplitOptions.RemoveEmptyEntries)
            .Where(w => !Fillers.Contains(w) && !IsWeekday(w))
            .Select(w => w.TrimEnd("stndrhe".ToCharArray()) is { Length: > 0 } number && number.All(char.IsDigit) ? number : w)
            .ToList();
        var month = words.FindIndex(w => MonthOf(w) is not null);
        return month >= 0 ? WithName(words, month, today) : OfNumbers(text, words, style, today);
    }

    /// <summary>The two days that a text of numbers may be, the one with the month first before the other; null where it is no such text.</summary>
    public static (DateOnly MonthFirst, DateOnly DayFirst)? Either(string text, DateOnly today) =>
        Read(text, DateStyle.MonthFirst, today) is { } month && Read(text, DateStyle.DayFirst, today) is { } day && month != day ? (month, day) : null;

    /// <summary>Whether a text is what spreadsheet programs make of a fraction: <c>1-Feb</c>, <c>16. Mai</c>, <c>01.02.2026</c>.</summary>
    public static bool IsEatenFraction(string text)
    {
        var words = text.ToLowerInvariant().Split(['-', '.', ' ', '/'], StringSplitOptions.RemoveEmptyEntries);
        return words.Length is 2 or 3
            && words.Count(w => w.All(char.IsAsciiDigit)) >= words.Length - 1
            && (words.Any(w => MonthOf(w) is not null) || (words.Length == 3 && words.Any(w => w.Length == 4) && words.All(w => w.Length is 1 or 2 or 4)));
    }

    private static DateOnly? WithName(List<string> words, int month, DateOnly today)
    {
        var others = words.Where((_, i) => i != month).ToList();
        return others switch
        {
            [var day] => Of(null, MonthOf(words[month])!.Value, Number(day), today),
            [{ Length: 4 } year, var day] => Of(Number(year), MonthOf(words[month])!.Value, Number(day), today),
            [var day, var year] => Of(Number(year), MonthOf(words[month])!.Value, Number(day), today),
            _ => null,
        };
    }

    private static DateOnly? OfNumbers(string text, List<string> words, DateStyle style, DateOnly today)
    {
        if (words.Count is not (2 or 3))
        {
            return null;
        }

        var (first, second) = (words[0], words[1]);
        var year = words.Count == 3 ? Number(words[2]) : null;
        // With points the day stands first, wherever that is written.
        var isDayFirst = style == DateStyle.DayFirst || text.Contains('.', StringComparison.Ordinal);
        return (Number(first), Number(second)) switch
        {
            (null, _) or (_, null) => null,
            (int d, int m) when isDayFirst || d > 12 => Of(year, m, d, today),
            (int m, int d) when style == DateStyle.MonthFirst || d > 12 || m == d => Of(year, m, d, today),
            _ => null,
        };
    }

    private static DateOnly? Of(int? year, int month, int? day, DateOnly today)
    {
        if (year is { } given)
        {
            var full = given < 100 ? 2000 + given : given;
            return full is > 1999 and < 2200 && IsDay(full, month, day) ? new DateOnly(full, month, day!.Value) : null;
        }

        DateOnly[] near = [.. Enumerable.Range(today.Year - 1, 3).Where(y => IsDay(y, month, day)).Select(y => new DateOnly(y, month, day!.Value))];
        return near.Length == 0 ? null : near.MinBy(d => Math.Abs(d.DayNumber - today.DayNumber));
    }

    private static bool IsDay(int year, int month, int? day) =>
        month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month);

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static int? MonthOf(string word)
    {
        var at = word.Length >= 3 && word.All(char.IsLetter) ? Array.FindIndex(Months, m => m.Any(n => word.StartsWith(n, StringComparison.Ordinal))) : -1;
        return at < 0 ? null : at + 1;
    }

    private static bool IsWeekday(string word) =>
        word is "mon" or "tue" or "wed" or "thu" or "fri" or "sat" or "sun" || (word.Length > 3 && word.EndsWith("day", StringComparison.Ordinal));
}
