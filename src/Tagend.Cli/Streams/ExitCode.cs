namespace Tagend.Streams;

/// <summary>What the program's exit codes mean. Documented in the README.</summary>
internal static class ExitCode
{
    public const int Done = 0;
    public const int Usage = 2;

    /// <summary>Problems in the orders or the templates; what could be printed was.</summary>
    public const int Problems = 3;

    /// <summary>Nothing read from the picture or the scanned text.</summary>
    public const int NothingRead = 4;

    /// <summary>Disk, printer or job book.</summary>
    public const int World = 5;

    /// <summary>Stopped by Ctrl-C; what stands in the folder is whole.</summary>
    public const int Stopped = 130;
}
