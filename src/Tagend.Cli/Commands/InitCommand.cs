using System.CommandLine;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Workshop.Shops;

namespace Tagend.Commands;

/// <summary><c>tagend init DIR</c>: copies the shipped templates for a shop to edit, with what the shop says of itself.</summary>
internal sealed class InitCommand
{
    private readonly Argument<string?> _folder = new Argument<string?>("DIR")
    {
        Description = "The folder to make; it must not exist. Default: in your user's own folder, where every run finds it.",
        Arity = ArgumentArity.ZeroOrOne,
    }.NamesSomething();

    private readonly Option<string?> _name = new("--name") { Description = "Your shop's name, for sheets and bag tags.", HelpName = "NAME" };

    private readonly Option<string?> _phone = new("--phone") { Description = "Your shop's phone number.", HelpName = "NUMBER" };

    private readonly Option<string?> _unit =
        new Option<string?>("--unit") { Description = "The unit you work in: in or mm.", HelpName = "in|mm" }.TakesOneOf("in", "mm");

    private readonly Option<string?> _post = new("--post-diameter")
    {
        Description = "Diameter of your jig's posts, measured with a caliper.",
        HelpName = LengthWords.Value,
    };

    private readonly Option<bool> _move = new("--move")
    {
        Description = "Move what an earlier version kept beside the program, templates and job book, to your user's own folder.",
    };

    public static Command Create(string name)
    {
        var init = new InitCommand();
        var command = new Command(name, "Copies the templates for your shop to edit, and writes your answers into shop.toml.")
        {
            init._folder, init._name, init._phone, init._unit, init._post, init._move,
        };
        command.Check(result =>
        {
            if (result.GetValue(init._post) is { } text && !LengthReader.TryRead(text, LengthUnit.Inch, out _))
            {
                result.AddError($"--post-diameter \"{text}\": expected a length such as \"1 1/8 in\" or \"28.6 mm\"");
            }
        });
        command.SetAction(init.Run);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        if (parsed.GetValue(_move))
        {
            return Move();
        }

        var folder = parsed.GetValue(_folder) ?? ShopFolders.Here.Own;
        ShopTemplates.CheckIsNew(folder);
        var ask = Terminal.IsAttended && !Console.IsOutputRedirected;
        var unit = parsed.GetValue(_unit)
            ?? (ask ? Asked("Do you work in inches or millimeters? in or mm", t => t is "in" or "mm" ? null : "expected in or mm") : null);
        LengthUnit? works = unit switch { "mm" => LengthUnit.Millimeter, "in" => LengthUnit.Inch, _ => null };
        var bare = works ?? LengthUnit.Inch;
        var own = new ShopOwn(
            parsed.GetValue(_name) ?? (ask ? Asked("Your shop's name, for sheets and bag tags", _ => null) : null),
            parsed.GetValue(_phone) ?? (ask ? Asked("Its phone number", _ => null) : null),
            works,
            Length(parsed.GetValue(_post) ?? (ask
                ? Asked($"Diameter of your jig's posts in {LengthWriter.Symbol(bare)}, measured with a caliper", WhyNotPosts)
                : null)));
        var problems = ShopTemplates.Begin(ShopFolders.Here.Shipped, folder, own);
        if (problems.Count > 0)
        {
            Say.Problems(problems);
            return ExitCode.Usage;
        }

        Console.WriteLine($"Templates are in {folder}. Start with shop.toml; then: tagend print ORDERS.csv"
            + (folder == ShopFolders.Here.Own ? "" : $" --templates {folder}"));
        if (own.PostDiameter is null)
        {
            Console.WriteLine("The post diameter is not given: until post_diameter is in shop.toml, settings are for posts as thick as the pins.");
        }

        return ExitCode.Done;

        string? WhyNotPosts(string text) => LengthReader.TryRead(text, bare, out var post)
            ? Jig.WhyNotPosts(post)
            : "expected a length such as 1 1/8 in or 28.6 mm";

        Length? Length(string? text) => text is not null && LengthReader.TryRead(text, bare, out var length) ? length : null;
    }

    private static int Move()
    {
        if (ShopFolders.Here.BookBesideProgram is not { } book)
        {
            Console.WriteLine("There is no job book beside the program: nothing to move.");
            return ExitCode.Done;
        }

        ShopFolders.Here.MoveOwn(book);
        Console.WriteLine($"Templates and job book are in {Path.GetDirectoryName(ShopFolders.Here.Own)} now; a new version of the program leaves them alone.");
        return ExitCode.Done;
    }

    /// <summary>Asks until the answer can be taken; null where it is left empty.</summary>
    /// <param name="whyNot">What an answer has to be, in words; null where it can be taken.</param>
    private static string? Asked(string question, Func<string, string?> whyNot)
    {
        while (true)
        {
            Console.Write($"{question} (Enter to leave it out): ");
            var answer = Console.ReadLine()?.Trim() ?? "";
            if (answer.Length == 0)
            {
                return null;
            }

            if (whyNot(answer) is not { } expected)
            {
                return answer;
            }

            Console.WriteLine($"\"{answer}\": {expected}");
        }
    }
}
