using System.Globalization;
using Tagend.Books;

// Tagend.Books short|long [SEED [PART]], in the project's folder: job books under many writers, kills and restarts, and with a
// million jobs. Every acknowledged writing must be there once. PART of the names of the trials that are wanted, or "searches".
// It also runs as the writers that it starts.
var root = Environment.CurrentDirectory;
if (Writer.Of(args) is { } writer)
{
    writer.Run(root);
    return 0;
}

if (Season.Run(args, root))
{
    return 0;
}

var isLong = args is ["long", ..];
var random = new Random(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1);
var folder = Directory.CreateTempSubdirectory("tagend-books-").FullName;
using var server = Server.Missing is null ? new Server(isSafe: true) : null;
var trials = new Trials(root, folder, server, random);
var faults = 0;
var only = args.ElementAtOrDefault(2);
foreach (var outcome in only is "searches" ? [] : isLong ? trials.Long(only) : trials.Short(only))
{
    faults += outcome.Faults.Count;
    Console.WriteLine(outcome);
}

foreach (var line in only is not null and not "searches" ? [] : trials.Searches(isLong ? 1_000_000 : 2_000))
{
    Console.WriteLine(line);
}

if (Server.Missing is { } missing)
{
    Console.WriteLine(missing);
}

Directory.Delete(folder, recursive: true);
return faults == 0 ? 0 : 1;
