using System.Globalization;
using Tagend.Measures;
using Tagend.Problems;
using Tomlyn.Syntax;

namespace Tagend.Catalog;

/// <summary>The entries of one TOML section, read by type. Each wrong or unknown entry becomes a problem with its line.</summary>
internal sealed class TomlSection
{
    /// <summary>Of a text: none is longer than a few lines.</summary>
    private const int MostCharacters = 1_000;

    private readonly string _file;
    private readonly int _line;
    private readonly ICollection<Problem> _problems;
    private readonly Dictionary<string, (ValueSyntax Value, int Line)> _entries = [];
    private readonly HashSet<string> _asked = [];
    private readonly Dictionary<string, Problem> _missing = [];
    private readonly HashSet<Problem> _told = [];

    public TomlSection(
        string file, string name, int line, IEnumerable<KeyValueSyntax> entries, ICollection<Problem> problems)
    {
        (_file, Name, _line, _problems) = (file, name, line, problems);
        foreach (var entry in entries)
        {
            var key = TomlKey.Plain(entry.Key!);
            _entries[key] = (entry.Value!, entry.Span.Start.Line + 1);
        }
    }

    public string Name { get; }

    public int Line => _line;

    public IEnumerable<string> Keys => _entries.Keys;

    /// <summary>No mistake is known in it so far: what its entries say together can be judged.</summary>
    public bool IsSound { get; private set; } = true;

    public string Text(string key) => OptionalText(key) ?? Missing(key, CatalogWording.AText(MostCharacters), "");

    public string Text(string key, string fallback) => OptionalText(key) ?? fallback;

    public string? OptionalText(string key) => Get(key) switch
    {
        null => null,
        StringValueSyntax text when text.Value!.Length <= MostCharacters && IsShown(text.Value) => text.Value,
        var other => Wrong<string>(key, other, CatalogWording.AText(MostCharacters)),
    };

    /// <summary>A text or a number, as a cell of an order has it; null where the entry is missing.</summary>
    public string? Cell(string key) => Get(key) switch
    {
        IntegerValueSyntax number => number.Value.ToString(CultureInfo.InvariantCulture),
        FloatValueSyntax number => number.Value.ToString(CultureInfo.InvariantCulture),
        _ => OptionalText(key),
    };

    /// <summary>One text, or several in brackets; null where the entry is missing.</summary>
    public string[]? Texts(string key)
    {
        switch (Get(key))
        {
            case null:
                return null;
            case StringValueSyntax when OptionalText(key) is { } text:
                return [text];
            case StringValueSyntax:
                return [];
            case ArraySyntax array when array.Items.Select(i => (i.Value as StringValueSyntax)?.Value).ToArray() is var texts
                && texts.All(t => t is { Length: <= MostCharacters } && IsShown(t)):
                return [.. texts.Select(t => t!)];
            case var other:
                Report(key, Shown(other), CatalogWording.Expected(CatalogWording.Texts));
                return [];
        }
    }

    public double Number(string key, double least, double most) =>
        OptionalNumber(key, least, most) ?? Missing(key, NumberBetween(least, most), least);

    public double Number(string key, double least, double most, double fallback) =>
        OptionalNumber(key, least, most) ?? fallback;

    public double? OptionalNumber(string key, double least, double most)
    {
        double? number = Get(key) switch
        {
            null => null,
            FloatValueSyntax value => value.Value,
            IntegerValueSyntax value => value.Value,
            var other => WrongValue<double>(key, other, NumberBetween(least, most)),
        };
        return number is null || (number >= least && number <= most)
            ? number
            : WrongValue<double>(key, Get(key)!, NumberBetween(least, most));
    }

    public int Whole(string key, int least, int most, int fallback) => OptionalWhole(key, least, most) ?? fallback;

    public int? OptionalWhole(string key, int least, int most)
    {
        var expected = $"a whole number from {least} to {most}";
        return Get(key) switch
        {
            null => null,
            IntegerValueSyntax value when value.Value >= least && value.Value <= most => (int)value.Value,
            var other => WrongValue<int>(key, other, expected),
        };
    }

    public bool Flag(string key, bool fallback) => Get(key) switch
    {
        null => fallback,
        BooleanValueSyntax flag => flag.Value,
        var other => WrongValue<bool>(key, other, "true or false") ?? fallback,
    };

    /// <summary>A length in quotes with its unit.</summary>
    public Length Length(string key) =>
        OptionalLength(key) ?? (_entries.ContainsKey(key) ? default : Missing<Length>(key, CatalogWording.ALength, default));

    public Length Length(string key, Length fallback) => OptionalLength(key) ?? fallback;

    public Length? OptionalLength(string key) => Get(key) switch
    {
        null => null,
        var value => ReadLength(value) ?? WrongValue<Length>(key, value, IsBare(value) ? CatalogWording.AUnit : CatalogWording.ALength),
    };

    /// <summary>A length that can be what it is said to be; null where it is left out or refused.</summary>
    public Length? OptionalLength(string key, LengthRange range)
    {
        var length = OptionalLength(key);
        if (length is not { } given || range.Holds(given))
        {
            return length;
        }

        Report(key, Shown(_entries[key].Value), CatalogWording.Beyond(range));
        return null;
    }

    /// <summary>A length that can be what it is said to be, or the fallback where it is left out.</summary>
    public Length Length(string key, LengthRange range, Length fallback) => OptionalLength(key, range) ?? fallback;

    /// <summary>A length that must be given and can be what it is said to be.</summary>
    public Length Length(string key, LengthRange range) =>
        OptionalLength(key, range) ?? Missing<Length>(key, CatalogWording.ALength, default);

    /// <summary>So many lengths in brackets, such as <c>["4 in", "2 in"]</c>, each of which can be what it is said to be.</summary>
    public Length[] Lengths(string key, int count, LengthRange range, Length[]? fallback = null)
    {
        var expected = $"{count} lengths in brackets, such as [\"4 in\", \"2 in\"]";
        switch (Get(key))
        {
            case null:
                return fallback ?? Missing(key, expected, new Length[count]);
            case ArraySyntax array when array.Items.Select(i => ReadLength(i.Value)).ToArray() is var lengths
                && lengths.Length == count && lengths.All(l => l is not null):
                if (!lengths.All(l => range.Holds(l!.Value)))
                {
                    Report(key, Shown(array), CatalogWording.Beyond(range));
                }

                return [.. lengths.Select(l => l!.Value)];
            case var other:
                Report(key, Shown(other), CatalogWording.Expected(expected));
                return new Length[count];
        }
    }

    /// <summary>A force in quotes, such as <c>44 lbf</c> or <c>200 N</c>.</summary>
    public Force? OptionalForce(string key) => Get(key) switch
    {
        null => null,
        StringValueSyntax text when ForceReader.TryRead(text.Value!, out var force) => force,
        var other => WrongValue<Force>(key, other, CatalogWording.AForce),
    };

    public Force Force(string key) => OptionalForce(key) ?? Missing<Force>(key, CatalogWording.AForce, default);

    /// <summary>One of some words; the first is the fallback.</summary>
    public T Choice<T>(string key, params ReadOnlySpan<(string Word, T Value)> choices)
    {
        var text = OptionalText(key);
        foreach (var (word, value) in choices)
        {
            if (word == text)
            {
                return value;
            }
        }

        if (text is not null)
        {
            var words = string.Join(", ", choices.ToArray().Select(c => $"\"{c.Word}\""));
            Report(key, text, CatalogWording.Expected($"one of {words}"));
        }

        return choices[0].Value;
    }

    /// <summary>Call last: every entry that nobody asked for is a problem. One that was meant for a missing one is not missed as well.</summary>
    public void RefuseUnknown()
    {
        foreach (var key in _entries.Keys.Where(k => !_asked.Contains(k)))
        {
            var meant = NearestName.Meant(key, _missing.Keys) ?? NearestName.Meant(key, _asked.Where(a => !_entries.ContainsKey(a)));
            if (meant is not null && _missing.Remove(meant, out var missed))
            {
                _problems.Remove(missed);
            }

            Report(key, null, CatalogWording.UnknownKey(meant, [.. _asked.Order(StringComparer.Ordinal)]));
        }
    }

    /// <summary>Adds a problem at an entry, or at the section where the key is null or absent; once, however often the entry is asked for.</summary>
    public void Report(string? key, string? text, string message)
    {
        var line = key is not null && _entries.TryGetValue(key, out var entry) ? entry.Line : _line;
        var place = Name.Length == 0 ? key : key is null ? $"[{Name}]" : $"[{Name}] {key}";
        var problem = new Problem(new Place(_file, line, place), text, message);
        IsSound = false;
        if (_told.Add(problem))
        {
            _problems.Add(problem);
        }
    }

    /// <summary>Null also for a number without a unit, which could be inches or millimeters.</summary>
    private static Length? ReadLength(SyntaxNode? value) =>
        !IsBare(value) && value is StringValueSyntax text
            && LengthReader.TryRead(text.Value!, LengthUnit.Inch, out var length) && length > default(Length)
            ? length
            : null;

    private static bool IsBare(SyntaxNode? value) => value is StringValueSyntax text && LengthReader.IsBare(text.Value!);

    // A value's own text has the comment behind it as well.
    private static string Shown(ValueSyntax value) =>
        value is StringValueSyntax text ? text.Value! : value.ToString().Split('#')[0].Trim();

    private static string NumberBetween(double least, double most) =>
        FormattableString.Invariant($"a number from {least} to {most}");

    private ValueSyntax? Get(string key)
    {
        _asked.Add(key);
        return _entries.TryGetValue(key, out var entry) ? entry.Value : null;
    }

    private T Missing<T>(string key, string expected, T standIn)
    {
        if (!_entries.ContainsKey(key) && !_missing.ContainsKey(key))
        {
            Report(key, null, CatalogWording.Missing(key, expected));
            _missing[key] = _problems.Last();
        }

        return standIn;
    }

    private T? Wrong<T>(string key, ValueSyntax value, string expected)
        where T : class
    {
        Report(key, Shown(value), CatalogWording.Expected(expected));
        return null;
    }

    private T? WrongValue<T>(string key, ValueSyntax value, string expected)
        where T : struct
    {
        Report(key, Shown(value), CatalogWording.Expected(expected));
        return null;
    }

    /// <summary>A text may have lines.</summary>
    private static bool IsShown(string text) => ShownText.IsShown(text.ReplaceLineEndings(" ").Replace('\t', ' '));
}
