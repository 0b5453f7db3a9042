using System.CommandLine;
using Tagend.Fits;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Texts;
using Tagend.Workshop;
using Tagend.Workshop.Json;
using Tagend.Workshop.Printing;

namespace Tagend.Commands;

/// <summary><c>tagend fit</c>: what the shop's own builds say about take-up and settle.</summary>
internal static class FitCommand
{
    public static Command Create(string name)
    {
        var options = new FitOptions();
        var command = new Command(name, "Shows take-up per turn and settle for each material and strand count, fitted to the builds in the job book.");
        options.AddTo(command);
        command.SetAction(parsed => Run(options, parsed));
        return command;
    }

    private static int Run(FitOptions options, ParseResult parsed)
    {
        if (options.Shop.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = options.Shop.Open(parsed, catalog);
        book.LeaveOut(parsed.GetValue(options.LeaveOut) ?? [], isLeftOut: true);
        book.LeaveOut(parsed.GetValue(options.TakeIn) ?? [], isLeftOut: false);
        var fits = TakeUpFit.All(BuildPoint.Of(book.Built()), catalog).Where(options.IsWanted(parsed)).ToList();
        if (fits.Count == 0)
        {
            Say.Error("no such build is logged yet; tagend built logs one");
            return ExitCode.NothingRead;
        }

        if (parsed.GetValue(options.Plot) is { } plot)
        {
            var drawn = FitPaper.Draw(fits, catalog, plot, DateOption.Of(null));
            Console.WriteLine($"{plot}: {Counted.Of(drawn, "fit")}");
        }
        else if (parsed.GetValue(options.Json))
        {
            JsonList.Write(Terminal.Output, fits);
        }
        else
        {
            FitText.Write(Console.Out, fits, catalog);
        }

        return ExitCode.Done;
    }
}

/// <summary>The options of <c>fit</c>.</summary>
internal sealed class FitOptions
{
    private readonly Option<string?> _material = new("--material") { Description = "Only builds of this material.", HelpName = "NAME" };
    private readonly Option<int?> _strands = new("--strands") { Description = "Only builds with this many strands.", HelpName = "N" };

    public BookOptions Shop { get; } = new();

    public Option<long[]> LeaveOut { get; } = new("--leave-out")
    {
        Description = "Leave this build out of the fit from now on; may be repeated.",
        HelpName = "BUILD",
    };

    public Option<long[]> TakeIn { get; } = new("--take-in")
    {
        Description = "Take this build into the fit again.",
        HelpName = "BUILD",
    };

    public Option<string?> Plot { get; } = new("--plot")
    {
        Description = "Draw measured against predicted lengths, with the tolerance: a .pdf or .png file.",
        HelpName = "FILE",
    };

    public Option<bool> Json { get; } = new("--json") { Description = "A JSON list with one object per material and strand count, for scripts." };

    public FitOptions() => Plot.Validators.Add(result =>
    {
        if (result.GetValueOrDefault<string?>() is { } path && !FitPaper.IsPicture(path) && !path.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
        {
            result.AddError($"--plot \"{path}\": expected a file whose name ends in .pdf or .png");
        }
    });

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _material, _strands, LeaveOut, TakeIn, Plot, Json })
        {
            command.Options.Add(option);
        }

        Shop.AddTo(command);
    }

    public Func<TakeUpFit, bool> IsWanted(ParseResult parsed)
    {
        var (material, strands) = (parsed.GetValue(_material), parsed.GetValue(_strands));
        return f => (material is null || f.Material.Equals(material, StringComparison.OrdinalIgnoreCase))
            && (strands is null || f.Strands == strands);
    }
}
