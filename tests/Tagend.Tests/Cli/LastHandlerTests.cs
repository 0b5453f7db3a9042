using Tagend.Problems;
using Tagend.Streams;
using Xunit;

namespace Tagend.Tests.Cli;

public class LastHandlerTests
{
    [Fact]
    public void Run_WhatNobodyForesaw_IsASentenceAndAWayToReportItAndNoStack()
    {
        var said = Said(() => throw new InvalidCastException("inner words"));
        Assert.StartsWith("tagend: this is a fault in the program, not yours (InvalidCastException); files that were written are whole", said, StringComparison.Ordinal);
        Assert.Contains("tagend: to report it, send", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_ABrokenWorld_IsItsOwnSentence() =>
        Assert.Equal("tagend: the disk is full" + Environment.NewLine, Said(() => throw new TagendException("the disk is full")));

    [Fact]
    public void Run_InputThatCannotBeRead_SaysWhy() =>
        Assert.Equal("tagend: standard input cannot be read (Input/output error)" + Environment.NewLine, Said(() => throw new IOException("a name of a resource", 5)));

    private static string Said(Func<int> command)
    {
        var before = Console.Error;
        using var errors = new StringWriter();
        Console.SetError(errors);
        try
        {
            Assert.Equal(5, LastHandler.Run(command));
        }
        finally
        {
            Console.SetError(before);
        }

        return errors.ToString();
    }
}
