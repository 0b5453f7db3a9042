using System.CommandLine;
using Tagend.Options;
using Tagend.Problems;
using Tagend.Streams;
using Tagend.Texts;
using Tagend.Workshop.Json;
using Tagend.Workshop.Readings;

namespace Tagend.Commands;

/// <summary><c>tagend recall</c>: a tag's text, a scanner's lines or a picture becomes the spec, a page or an order again.</summary>
internal static class RecallCommand
{
    public static Command Create(string name)
    {
        var sources = new Argument<string[]>("TAG")
        {
            Description = $"Pictures of tags, a tag's text in quotes, an order or a piece in the job book such as 701/buss, or {TagScan.StandardInput} for a "
                + "scanner's lines on standard input, shown as they come until the input ends.",
            Arity = ArgumentArity.OneOrMore,
        }.NamesSomething();
        var json = new Option<bool>("--json") { Description = "A JSON list with one object per code, for scripts." };
        var posts = new Option<bool>("--posts") { Description = "Only the post setting, in large type." };
        var again = new AgainOptions();
        var command = new Command(name, "Shows the spec a tag was printed from, prints it again, or orders it again.") { sources, json, posts };
        again.AddTo(command);
        command.Check(result =>
        {
            if (result.GetValue(json) && result.GetValue(posts))
            {
                result.AddError("--json and --posts: choose one of them");
            }
        });
        command.SetAction(parsed =>
        {
            using var book = new KnownIssues(() => again.BookOf(parsed), () => again.CatalogOf(parsed));
            var printing = again.RunOf(parsed);
            var isForScripts = parsed.GetValue(json) || printing is { OwnsOutput: true };
            var recall = new Recall(printing, scan => book.Say(scan, isForScripts ? Console.Error : Console.Out));
            var shown = recall.Follow(parsed.GetValue(sources)!.SelectMany(source => Scans(source, book)));
            if (parsed.GetValue(json))
            {
                JsonList.Write(Terminal.Output, shown);
            }
            else
            {
                foreach (var scan in shown)
                {
                    ScanText.Write(scan, parsed.GetValue(posts));
                }
            }

            return recall.End();
        });
        return command;
    }

    /// <exception cref="TagendException">There is no such picture, order or piece; or the picture cannot be read.</exception>
    private static IEnumerable<TagScan> Scans(string source, KnownIssues book)
    {
        if (source == TagScan.StandardInput && Terminal.IsAttended)
        {
            Console.Error.WriteLine("scan tags, or paste their texts, a line each; Ctrl-D ends (on Windows Ctrl-Z and Enter)");
        }

        if (book.Find(source) is { } known)
        {
            return [known];
        }

        return File.Exists(source) || source == TagScan.StandardInput || source.Contains('*', StringComparison.Ordinal)
            ? TagScan.Read(source, Console.In)
            : throw new TagendException($"{source}: there is no such file, and the job book has no such order or piece: check the name");
    }

    /// <summary>Goes through scans as they come, and counts what became of them.</summary>
    /// <param name="again">What to make of each tag; null to show it only.</param>
    /// <param name="first">What is to be said of a tag before anything else.</param>
    private sealed class Recall(AgainPrinting? again, Action<TagScan> first)
    {
        private int _read;
        private int _unread;
        private int _garbage;

        /// <returns>The scans to be shown.</returns>
        public IEnumerable<TagScan> Follow(IEnumerable<TagScan> scans)
        {
            foreach (var scan in scans)
            {
                first(scan);
                if (again is null || (scan.IsFromScanner && !again.OwnsOutput))
                {
                    yield return scan;
                }

                if (scan.Message is { } message)
                {
                    Console.Error.WriteLine($"{scan.Source}: {message}");
                    _ = scan.IsFromScanner ? _garbage++ : _unread++;
                    continue;
                }

                _read++;
                again?.Add(scan.Specs);
            }
        }

        public int End()
        {
            if (_read + _unread + _garbage == 0)
            {
                Console.Error.WriteLine("standard input: nothing was scanned");
            }

            return _unread > 0 || _read == 0 ? ExitCode.NothingRead : again?.End() ?? ExitCode.Done;
        }
    }
}
