using System.Globalization;
using Tagend.Measures;

namespace Tagend.Tags.Text;

/// <summary>A text cut at a separator, read part by part from the left.</summary>
internal sealed class TagFields(string text, char separator, TagFault fault)
{
    private readonly string[] _parts = text.Split(separator);
    private int _next;

    /// <summary>The fields behind the mark of a text whose check fits.</summary>
    public static TagFields Open(string text, TagFault fault)
    {
        var body = TagCheck.Strip(text);
        if (body is null)
        {
            fault.Report(TagFaultWording.BadCheck);
        }

        var behindMark = (body ?? text).IndexOf(TagSigns.Field, StringComparison.Ordinal) + 1;
        return new TagFields((body ?? text)[behindMark..], TagSigns.Field, fault);
    }

    public bool IsAtEnd => _next >= _parts.Length;

    /// <summary>A part that starts with a letter, cut into its own parts.</summary>
    public TagFields Parts(char letter) => new(Lettered(letter), TagSigns.Part, fault);

    /// <summary>Whether the next part starts with a letter: a field that is left out where it has nothing to say.</summary>
    public bool Has(char letter) => !IsAtEnd && _parts[_next].StartsWith(letter);

    /// <summary>As <see cref="Items"/>; none where the field is left out.</summary>
    public ValueList<T> OptionalItems<T>(char letter, Func<TagFields, T> read) => Has(letter) ? Items(letter, read) : [];

    /// <summary>A part that starts with a letter and holds any number of items.</summary>
    public ValueList<T> Items<T>(char letter, Func<TagFields, T> read)
    {
        var list = Lettered(letter);
        var items = list.Length == 0 ? [] : list.Split(TagSigns.Item);
        return items.Select(item =>
        {
            var parts = new TagFields(item, TagSigns.Part, fault);
            var value = read(parts);
            parts.End();
            return value;
        }).ToValueList();
    }

    public string Lower(string what) => Name(what).ToLowerInvariant();

    /// <summary>A name, in capitals.</summary>
    public string Name(string what)
    {
        var part = Next();
        return TagName.Unescape(part) is { Length: > 0 } name ? name.ToUpperInvariant() : Wrong(part, what, "");
    }

    public int Whole(string what)
    {
        var part = Next();
        return part.Length is > 0 and < 10 && int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var whole)
            ? whole
            : Wrong(part, what, 0);
    }

    public DateOnly Date()
    {
        var part = Next();
        return DateOnly.TryParseExact(part, TagSigns.DateFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : Wrong(part, "a date", default(DateOnly));
    }

    public Length Length(LengthUnit unit) => OptionalLength(unit) ?? Wrong("", "a length", default(Length));

    /// <returns>Null where the part is empty.</returns>
    public Length? OptionalLength(LengthUnit unit)
    {
        var part = Next();
        return part.Length == 0 ? null
            : TagNumber.TryRead(part, unit, out Length length) ? length
            : Wrong(part, "a length", default(Length));
    }

    public Force Force(LengthUnit unit) => OptionalForce(unit) ?? Wrong("", "a force", default(Force));

    /// <returns>Null where the part is empty.</returns>
    public Force? OptionalForce(LengthUnit unit)
    {
        var part = Next();
        return part.Length == 0 ? null
            : TagNumber.TryRead(part, unit, out Force force) ? force
            : Wrong(part, "a force", default(Force));
    }

    /// <summary>A part that can only be one word; true.</summary>
    public bool Word(string word)
    {
        var part = Next();
        return part == word || Wrong(part, word, true);
    }

    /// <summary>A whole part that stands for a value.</summary>
    public T Code<T>(LetterCode<T> code, string what)
        where T : struct
    {
        var part = Next();
        return code.Find(part) ?? Wrong(part, what, default(T));
    }

    /// <summary>The first letter of the next part stands for a value; the rest of the part stays to be read.</summary>
    public T Letter<T>(LetterCode<T> code, string what)
        where T : struct
    {
        var part = IsAtEnd ? "" : _parts[_next];
        if (part.Length == 0 || code.Find(part.AsSpan(0, 1)) is not { } value)
        {
            return Wrong(part, what, default(T));
        }

        _parts[_next] = part[1..];
        return value;
    }

    /// <summary>Nothing may be left.</summary>
    public void End()
    {
        if (!IsAtEnd)
        {
            Wrong(_parts[_next], "nothing more", 0);
        }
    }

    private string Lettered(char letter)
    {
        var part = Next();
        return part.StartsWith(letter) ? part[1..] : Wrong(part, $"the field {letter}", "");
    }

    private string Next() => IsAtEnd ? Wrong("", "more", "") : _parts[_next++];

    private T Wrong<T>(string part, string expected, T standIn)
    {
        fault.Report(TagFaultWording.BadField(part, expected));
        return standIn;
    }
}
