using System.CommandLine;
using Tagend.Addresses;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Workshop;

namespace Tagend.Commands;

/// <summary><c>tagend book</c>: copies the job book, and takes a customer's name out of it.</summary>
internal static class BookCommand
{
    public static Command Create(string name) => new(name, "Copies the job book to another place, or removes a customer's name from it.")
    {
        CreateCopy(),
        CreateForget(),
    };

    private static Command CreateCopy()
    {
        var target = new Argument<string>("ADDRESS")
        {
            Description = "Where the copy goes, which must be empty: a file, or a server as postgres://USER@HOST/DATABASE.",
        }.NamesSomething();
        var book = new BookOptions();
        var command = new Command("copy", "Copies the job book as it is now, even while others use it: for a backup, or to move to a server and back.") { target };
        book.AddTo(command);
        command.SetAction(parsed =>
        {
            if (book.ReadCatalog(parsed) is not { } catalog)
            {
                return ExitCode.Problems;
            }

            using var opened = book.Open(parsed, catalog);
            var address = JobBookAddressReader.Read(parsed.GetValue(target)!);
            Console.WriteLine($"{address.Text}: {Counted.Of(opened.CopyTo(address), "row")} copied, and each read back and compared");
            return ExitCode.Done;
        });
        return command;
    }

    private static Command CreateForget()
    {
        var customer = new Argument<string>("CUSTOMER") { Description = "The customer's whole name, in any case." };
        var book = new BookOptions();
        var command = new Command("forget", "Removes a customer's name from the job book; the pieces and their builds stay.") { customer };
        book.AddTo(command);
        command.SetAction(parsed =>
        {
            if (book.ReadCatalog(parsed) is not { } catalog)
            {
                return ExitCode.Problems;
            }

            using var opened = book.Open(parsed, catalog);
            var jobs = opened.Forget(parsed.GetValue(customer)!);
            if (jobs == 0)
            {
                Say.Error("no piece in the job book has a customer of that name; tagend jobs --customer finds names by any part of them");
                return ExitCode.NothingRead;
            }

            Console.WriteLine($"the name was removed from {Counted.Of(jobs, "piece")}; copies of the book may still contain it");
            return ExitCode.Done;
        });
        return command;
    }
}
