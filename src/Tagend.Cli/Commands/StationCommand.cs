using System.CommandLine;
using System.Diagnostics;
using Tagend.Options;
using Tagend.Station;
using Tagend.Station.Desk;
using Tagend.Streams;
using Tagend.Workshop.Shops;

namespace Tagend.Commands;

/// <summary><c>tagend station</c>: the shop's work in a browser, served by this machine.</summary>
internal sealed class StationCommand
{
    private readonly Option<int> _port = new("--port")
    {
        Description = $"The port it answers at. Default: {StationOptions.UsualPort}.",
        HelpName = "N",
        DefaultValueFactory = _ => StationOptions.UsualPort,
    };

    private readonly Option<bool> _noBrowser = new("--no-browser") { Description = "Open no browser; say the address alone." };

    private readonly Option<bool> _lan = new("--lan")
    {
        Description = "Also let phones and tablets in, by HTTPS at the next port: each by a code that the station shows.",
    };

    private readonly Option<string?> _templates = new Option<string?>("--templates")
    {
        Description = "The shop's templates folder; orders and papers are beside it. Default: ./templates, else your own, which the first start makes.",
        HelpName = "DIR",
    }.NamesSomething();

    private readonly Option<string?> _jobBook = JobBookOption.Create();

    public static Command Create(string name)
    {
        var station = new StationCommand();
        var command = new Command(name, "Serves the whole job to browsers on this machine, until Ctrl-C: orders, papers, build, scan, book.")
        {
            station._port, station._noBrowser, station._lan, station._templates, station._jobBook,
        };
        station._port.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && (!int.TryParse(token.Value, out var port) || port is < 1 or > 65535))
            {
                result.AddError($"--port \"{token.Value}\": expected a whole number from 1 to 65535, such as {StationOptions.UsualPort}");
            }
        });
        command.SetAction(station.Run);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        // The program's own templates are nobody's shop: the first start copies them.
        var folders = ShopFolders.Here;
        var templates = folders.Templates(parsed.GetValue(_templates));
        templates = folders.IsShipped(templates) ? folders.Own : templates;
        var options = new StationOptions
        {
            Port = parsed.GetValue(_port),
            Templates = Path.GetFullPath(templates),
            IsOnNetwork = parsed.GetValue(_lan),
            ShippedTemplates = folders.Shipped,
            Book = JobBookOption.AddressOf(parsed.GetValue(_jobBook), templates),
            Bench = BenchName.Here,
            Clock = TimeProvider.System,
        };
        var isBrowserWanted = !parsed.GetValue(_noBrowser);
        if (isBrowserWanted && StationServer.IsRunning(options))
        {
            Console.WriteLine($"A station is running at {StationServer.AddressOf(options)} already; it opens in the browser.");
            OpenBrowser(StationServer.AddressOf(options));
            return ExitCode.Done;
        }

        StationServer.Run(options, address =>
        {
            Console.WriteLine($"The station is at {address}");
            if (options.IsOnNetwork)
            {
                Console.WriteLine($"Phones and tablets: {address}devices shows the code that lets them in");
            }

            Console.WriteLine("Ctrl-C stops it; nothing that was typed is lost.");
            if (isBrowserWanted)
            {
                OpenBrowser(address);
            }
        });
        return ExitCode.Done;
    }

    private static void OpenBrowser(string address)
    {
        try
        {
            using var opened = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true });
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            Console.WriteLine("No browser could be opened: type the address into one.");
        }
    }
}
