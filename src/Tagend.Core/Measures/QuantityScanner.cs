using System.Globalization;
using System.Text;

namespace Tagend.Measures;

/// <summary>Steps through a quantity as people write it: a number or a fraction, then a unit.</summary>
/// <param name="plainText">Made by <see cref="Plain"/>.</param>
internal ref struct QuantityScanner(ReadOnlySpan<char> plainText)
{
    // So many digits times any unit stay within the 28 of a decimal, and the nanometers within a long.
    private const int MostDigits = 9;

    /// <summary>What is not read yet.</summary>
    public ReadOnlySpan<char> Rest { get; private set; } = plainText;

    /// <summary>The same text with one kind of space, slash and hyphen, and with 1/4 for ¼.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length + 8);
        foreach (var c in text.AsSpan().Trim())
        {
            if (Fraction(c) is not { } fraction)
            {
                plain.Append(PlainCharacter(c));
                continue;
            }

            var joins = plain.Length > 0 && char.IsAsciiDigit(plain[^1]);
            plain.Append(joins ? " " : "").Append(fraction).Append(' ');
        }

        return plain.ToString().TrimEnd();
    }

    public void SkipSpaces() => Rest = Rest.TrimStart(' ');

    public bool TrySkip(string word)
    {
        if (!Rest.StartsWith(word, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        Rest = Rest[word.Length..];
        return true;
    }

    /// <summary>A whole number, a decimal number, a fraction, or a whole number and a fraction.</summary>
    public bool TryReadMixed(out decimal value)
    {
        if (TryReadFraction(out value))
        {
            return true;
        }

        if (!TryReadDecimal(out value, out var isWhole))
        {
            return false;
        }

        var afterWhole = Rest;
        if (isWhole && TrySkipJoint() && TryReadFraction(out var fraction))
        {
            value += fraction;
        }
        else
        {
            Rest = afterWhole;
        }

        return true;
    }

    /// <summary>Digits with a decimal point or comma, at most nine on each side of it.</summary>
    /// <remarks>
    /// Refused because it may be either of two numbers: a comma that could be a thousands separator, such as <c>1,530</c>.
    /// </remarks>
    public bool TryReadDecimal(out decimal value, out bool isWhole)
    {
        value = 0;
        var whole = TakeDigits();
        isWhole = Rest.IsEmpty || Rest[0] is not ('.' or ',');
        if (isWhole)
        {
            return whole.Length is > 0 and <= MostDigits && TryParse(whole, out value);
        }

        var mark = Rest[0];
        Rest = Rest[1..];
        var decimals = TakeDigits();
        var maybeThousands = mark == ',' && decimals.Length == 3 && whole.Length is >= 1 and <= 3 && whole[0] != '0';
        return decimals.Length is > 0 and <= MostDigits
            && whole.Length <= MostDigits
            && !maybeThousands
            && TryParse($"{whole}.{decimals}", out value);
    }

    /// <summary>A part of an inch as tapes have them, halves to sixty-fourths, less than a whole.</summary>
    private bool TryReadFraction(out decimal value)
    {
        value = 0;
        var start = Rest;
        if (TryParse(TakeDigits(), out var parts)
            && TrySkip("/")
            && TryParse(TakeDigits(), out var all)
            && all is 2 or 4 or 8 or 16 or 32 or 64
            && parts > 0
            && parts < all)
        {
            value = parts / all;
            return true;
        }

        Rest = start;
        return false;
    }

    /// <summary>What stands between a whole number and its fraction: spaces or a hyphen, not both.</summary>
    private bool TrySkipJoint()
    {
        if (TrySkip("-"))
        {
            return true;
        }

        var before = Rest.Length;
        SkipSpaces();
        return Rest.Length < before;
    }

    private ReadOnlySpan<char> TakeDigits()
    {
        var count = Rest.IndexOfAnyExceptInRange('0', '9');
        var digits = count < 0 ? Rest : Rest[..count];
        Rest = Rest[digits.Length..];
        return digits;
    }

    private static bool TryParse(ReadOnlySpan<char> digits, out decimal value) =>
        decimal.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);

    private static char PlainCharacter(char c) => c switch
    {
        '\u2044' or '\u2215' => '/',
        '\u2010' or '\u2011' or '\u2012' or '\u2013' => '-',
        _ when char.IsWhiteSpace(c) => ' ',
        _ => c,
    };

    private static string? Fraction(char c) => c switch
    {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        _ => null,
    };
}
