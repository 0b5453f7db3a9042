namespace Tagend.Pages;

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
