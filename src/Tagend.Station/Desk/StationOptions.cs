using Tagend.Jobs;

namespace Tagend.Station.Desk;

/// <summary>What a station is started with.</summary>
public sealed record StationOptions
{
    /// <summary>The port where none is named.</summary>
    public const int UsualPort = 5480;

    /// <summary>The port it answers at, on this machine alone; from 1 to 65535.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>The shop's own templates folder; it may not be there yet.</summary>
    public required string Templates { get; init; }

    /// <summary>The shop's folder: its templates, order files and papers, and what the station keeps.</summary>
    public string Folder => Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Templates)) ?? Templates;

    /// <summary>The templates that came with the program.</summary>
    public required string ShippedTemplates { get; init; }

    /// <summary>The job book; null where none is wanted.</summary>
    public required JobBookAddress? Book { get; init; }

    /// <summary>Whether other devices are let in, by HTTPS at <see cref="NetworkPort"/>; else it answers on this machine alone.</summary>
    public bool IsOnNetwork { get; init; }

    /// <summary>The port for other devices.</summary>
    public int NetworkPort => Port + 1;

    /// <summary>What the station keeps for itself: secret, certificate, devices, drafts.</summary>
    public string OwnFolder => Path.Combine(Folder, "station");

    /// <summary>Where the station is, kept with what is logged here; empty where benches have no names.</summary>
    public string Bench { get; init; } = "";

    /// <summary>The clock of dates and drafts.</summary>
    public required TimeProvider Clock { get; init; }
}
