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
    public static string In(this SignalWord word, PaperLanguage language) => language[word switch
    {
        SignalWord.Notice => PaperWord.Notice,
        SignalWord.Caution => PaperWord.Caution,
        SignalWord.Warning => PaperWord.Warning,
        SignalWord.Danger => PaperWord.Danger,
        _ => throw new InvalidOperationException($"no text for {word}"),
    }];
}
