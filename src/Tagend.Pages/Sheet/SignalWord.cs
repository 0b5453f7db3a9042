using Tagend.Catalog;

namespace Tagend.Pages.Sheet;

/// <summary>How bad it can get, as ANSI Z535.6 defines the words.</summary>
public enum SignalWord
{
    /// <summary>Practices not related to injury, such as damage to the bow.</summary>
    Notice,

    /// <summary>If not avoided, could result in minor or moderate injury.</summary>
    Caution,

    /// <summary>If not avoided, could result in death or serious injury.</summary>
    Warning,

    /// <summary>If not avoided, will result in death or serious injury.</summary>
    Danger,
}

/// <summary>The words themselves.</summary>
internal static class SignalWording
{
    /// <summary>The word in capitals, in a language.</summary>
    public static string In(this SignalWord word, SheetLanguage language) => language.Words[word switch
    {
        SignalWord.Notice => "notice",
        SignalWord.Caution => "caution",
        SignalWord.Warning => "warning",
        SignalWord.Danger => "danger",
        _ => throw new InvalidOperationException($"no key for {word}"),
    }];
}
