using System.Security.Cryptography;

namespace Tagend.Station.Guard;

/// <summary>What came of a code that a device showed.</summary>
internal enum CodeAnswer
{
    /// <summary>It is the code, which lets no other device in from now on.</summary>
    Right,

    /// <summary>It is not, or it is too old.</summary>
    Wrong,

    /// <summary>Too many were wrong a moment ago: none is looked at before the wait is over.</summary>
    TooSoon,
}

/// <summary>The one code that lets the next device in. Wrong ones slow down: each doubles the wait before another is looked at.</summary>
internal sealed class EntryCode(TimeProvider clock)
{
    /// <summary>Without letters and digits that look alike.</summary>
    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    private const int Length = 8;
    private static readonly TimeSpan Lives = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(5);

    private readonly Lock _trying = new();
    private string? _code;
    private DateTimeOffset _until;
    private DateTimeOffset _next;
    private int _wrong;

    /// <summary>The code of the moment: a new one where there is none, or it is too old.</summary>
    public string Current
    {
        get
        {
            lock (_trying)
            {
                if (_code is null || clock.GetUtcNow() >= _until)
                {
                    (_code, _until) = (RandomNumberGenerator.GetString(Letters, Length), clock.GetUtcNow() + Lives);
                }

                return _code;
            }
        }
    }

    /// <summary>Tries a code.</summary>
    /// <param name="wait">How long none is looked at from now on.</param>
    public CodeAnswer Try(string code, out TimeSpan wait)
    {
        lock (_trying)
        {
            var now = clock.GetUtcNow();
            wait = _next - now;
            if (wait > TimeSpan.Zero)
            {
                return CodeAnswer.TooSoon;
            }

            if (_code is not null && now < _until
                && CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(code.ToUpperInvariant()), System.Text.Encoding.UTF8.GetBytes(_code)))
            {
                (_code, _wrong, wait) = (null, 0, TimeSpan.Zero);
                return CodeAnswer.Right;
            }

            _wrong++;
            wait = TimeSpan.FromSeconds(Math.Min(Math.Pow(2, _wrong - 1), LongestWait.TotalSeconds));
            _next = now + wait;
            return CodeAnswer.Wrong;
        }
    }
}
