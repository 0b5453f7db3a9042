using Tagend.Problems;

namespace Tagend.Streams;

/// <summary>Where everything ends that no command has caught: a sentence and an exit code, never a stack.</summary>
internal static class LastHandler
{
    /// <param name="command">Returns its exit code.</param>
    public static int Run(Func<int> command)
    {
        var code = Handled(command);
        if (Terminal.OutputFault is { } fault)
        {
            Say.Error($"standard output cannot be written ({SystemReason.Of(fault)}): make sure that there is space where it goes");
            return ExitCode.World;
        }

        return code;
    }

    private static int Handled(Func<int> command)
    {
        try
        {
            return command();
        }
        catch (TagendException e)
        {
            Say.Error(e.Message);
            return e.Blame == Blame.UnknownName ? ExitCode.Usage : ExitCode.World;
        }
        catch (IOException e)
        {
            // Files have sentences of their own, and output is let go: what is left is the input.
            Say.Error($"standard input cannot be read ({SystemReason.Of(e)})");
        }
        catch (Exception e)
        {
            Say.Error($"this is a fault in the program, not yours ({e.GetType().Name}); files that were written are whole");
            Say.Error("to report it, send this message, the command and the files it read, without customers' names, to where you got Tagend");
        }

        return ExitCode.World;
    }
}
