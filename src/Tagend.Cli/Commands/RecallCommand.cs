using System.CommandLine;

namespace Tagend.Commands;

/// <summary><c>tagend recall</c>: a tag's text, a scanner's lines or a picture becomes the spec, a page or an order again.</summary>
internal static class RecallCommand
{
    public static Command Create()
    {
        var sources = new Argument<string[]>("TAG")
        {
            Description = $"Pictures of tags, a tag's text in quotes, or {TagScan.StandardInput} for a scanner's lines on standard input, "
                + "shown as they come until the input ends.",
            Arity = ArgumentArity.OneOrMore,
        };
        var json = new Option<bool>("--json") { Description = "A list, one object a code found, for scripts." };
        var posts = new Option<bool>("--posts") { Description = "Only the post setting, in large type." };
        var again = new AgainOptions();
        var command = new Command("recall", "Shows the spec a tag was printed from, prints it again, or orders it again.") { sources, json, posts };
        again.AddTo(command);
        command.Validators.Add(result =>
        {
            if (result.GetValue(json) && result.GetValue(posts))
            {
                result.AddError("--json and --posts: choose one of them");
            }
        });
        command.SetAction(parsed =>
        {
            using var list = parsed.GetValue(json) ? new ScanJson() : null;
            var show = list is null ? scan => ScanText.Write(scan, parsed.GetValue(posts)) : (Action<TagScan>)list.Write;
            return Run(parsed.GetValue(sources)!.SelectMany(TagScan.Read), show, again.RunOf(parsed));
        });
        return command;
    }

    /// <param name="again">What to make of each tag; null to show it only.</param>
    private static int Run(IEnumerable<TagScan> scans, Action<TagScan> show, AgainRun? again)
    {
        var (read, unread, garbage) = (0, 0, 0);
        foreach (var scan in scans)
        {
            if (again is null || (scan.IsFromScanner && !again.OwnsOutput))
            {
                show(scan);
            }

            if (scan.Message is { } message)
            {
                Console.Error.WriteLine($"{scan.Source}: {message}");
                _ = scan.IsFromScanner ? garbage++ : unread++;
                continue;
            }

            read++;
            again?.Add(scan.Specs);
        }

        if (read + unread + garbage == 0)
        {
            Console.Error.WriteLine("standard input: nothing was scanned");
        }

        return unread > 0 || read == 0 ? ExitCode.NothingRead : again?.End() ?? ExitCode.Done;
    }
}
