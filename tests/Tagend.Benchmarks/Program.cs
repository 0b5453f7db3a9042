using System.Globalization;
using Tagend.Benchmarks;
using Tagend.Tags;

// Tagend.Benchmarks tiny|usual|long|station TAGEND FLOOR WEBFLOOR FOLDER: measures the program, as published, against the floors and
// the peers, and its parts in one process; writes FOLDER.md. "station" measures the station alone, and writes its table to the terminal.
var (mode, tagend, floor, webFloor, folder) = (args[0], Path.GetFullPath(args[1]), Path.GetFullPath(args[2]), Path.GetFullPath(args[3]), Path.GetFullPath(args[4]));
var (rounds, batchRounds, rows) = mode == "tiny" ? (1, 1, 12) : (9, 3, 100_000);
int[] batches = mode switch { "tiny" => [2, 4], "long" => [5, 500, 1000, 25_000, 50_000, 100_000], _ => [5, 500, 1000] };
const int Sides = 2; // of a card
Environment.SetEnvironmentVariable("TAGEND_JOB_BOOK", "none");
Environment.SetEnvironmentVariable("XDG_DATA_HOME", Path.Combine(Path.GetTempPath(), "tagend-bench-none"));
Directory.CreateDirectory(folder);
var before = Machine.Load;
var templates = Path.Combine(Layout.Root, "templates");
var bench = new Bench(templates);
if (mode == "station")
{
    Console.Write(ResultTable.Of(await Station(), $"load {before} at the start, {Machine.Load} at the end", TimeProvider.System));
    return 0;
}

var cards = bench.Cards(10);
DisplayList.Write(cards, bench.Fonts, folder, "cards");
var single = Directory.CreateDirectory(Path.Combine(folder, "single")).FullName;
DisplayList.Write([.. cards.Take(Sides)], bench.Fonts, single, "card");
var front = Directory.CreateDirectory(Path.Combine(folder, "front")).FullName;
DisplayList.Write([cards[0]], bench.Fonts, front, "front");
var peers = new Peers(folder, Path.Combine(templates, "fonts"), folder);
var standings = new List<Standing>();
var race = new Race("one order, from a cold start", rounds,
[
    new("the floor, 1 card page", floor, Path.Combine(front, "front.list"), "OUT/card.pdf", "1") { Pages = 1 },
    new("the writer alone, 1 card page", floor, Path.Combine(front, "front.list"), "OUT/card.pdf", "1", "1", Path.Combine(templates, "fonts")) { Pages = 1 },
    new("the floor, both sides of a card", floor, Path.Combine(single, "card.list"), "OUT/card.pdf", "2") { Pages = Sides },
    Print("tagend, both sides of a card", Orders(1), "cards", Sides),
    Print("tagend, an order of three pieces: 3 cards, 4 tags, sheet", Path.Combine(Layout.Root, "demo-orders", "demo.csv"), "cards,tags,sheets", null, "--order", "1001"),
    .. peers.Of(Path.Combine(front, "front.list")),
]);
Measure(race);
foreach (var pieces in batches)
{
    var orders = Orders(pieces);
    var turns = pieces > 10_000 ? 1 : batchRounds;
    var pages = pieces * Sides;
    Measure(new Race(Count(pages) + " card pages on one core", turns, [Floor(pages, 1), Writer(pages, 1), Print("tagend", orders, "cards", pages) with { OnOneCore = true }]));
    Measure(new Race(Count(pages) + " card pages on two cores", turns, [Floor(pages, 2), Writer(pages, 2), Print("tagend", orders, "cards", pages)]));
}

var known = Math.Min(rows, 1000);
var check = new Contender("tagend check", tagend, "check", Orders(rows));
Measure(new Race(Count(rows) + " order rows, checked", Math.Min(rounds, 3), [check, check with { Name = $"tagend check, with a job book of {Count(known)} pieces", Environment = BookOf(known) }]));
foreach (var (size, width, height) in new[] { ("1 megapixel", 1152, 864), ("12 megapixels", 4000, 3000) })
{
    var picture = Path.Combine(folder, $"{width}.jpg");
    Bench.Photograph(TagWriter.Write(bench.Sets(File.ReadAllBytes(Orders(1)))[0].Builds[0].Spec), width, height, picture);
    Measure(new Race($"a tag's picture of {size}, from a cold start", rounds, [new("tagend recall", tagend, "recall", picture)]));
}

var parts = PartRuns.Run(Path.Combine(folder, "parts"), once: mode == "tiny");
var figures = await Station();
var load = $"load {before} at the start, {Machine.Load} at the end";
var table = ResultTable.Of(standings, parts, peers.Versions(), load, TimeProvider.System) + "\n" + ResultTable.Of(figures, load, TimeProvider.System);
File.WriteAllText(folder + ".md", table);
Console.Write(table);
return standings.Exists(s => s.Failure is not null && s.Program.Command.Any(word => word == tagend || word == floor)) ? 1 : 0;

Task<IReadOnlyList<StationFigure>> Station() => new StationRuns(tagend, webFloor, templates, Path.Combine(folder, "station")).Run(bench, once: mode == "tiny");

void Measure(Race next) => standings.AddRange(next.Run(Path.Combine(folder, "work")));

// Where a job book is that has some of the pieces.
Dictionary<string, string> BookOf(int pieces)
{
    var book = Path.Combine(folder, "book.db");
    File.Delete(book);
    Dictionary<string, string> environment = new() { ["TAGEND_JOB_BOOK"] = book };
    _ = (Print("", Orders(pieces), "cards", null) with { Environment = environment }).Run(Directory.CreateDirectory(Path.Combine(folder, "work")).FullName);
    return environment;
}

string Orders(int pieces)
{
    var path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"season-{pieces}.csv"));
    File.WriteAllText(path, Season.Csv(pieces));
    return path;
}

Contender Floor(int pages, int workers) =>
    new("the floor", floor, Path.Combine(folder, "cards.list"), "OUT/cards.pdf", Plain(pages), Plain(workers)) { Pages = pages, OnOneCore = workers == 1 };

Contender Writer(int pages, int workers) => Floor(pages, workers) with
{
    Name = "the writer alone",
    Command = [.. Floor(pages, workers).Command, Path.Combine(templates, "fonts")],
};

Contender Print(string name, string orders, string papers, int? pages, params string[] more) =>
    new(name, [tagend, "print", orders, "--out", "OUT", "--only", papers, "--date", "2026-03-14", "--templates", templates, .. more]) { Pages = pages };

static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);

static string Count(int number) => number.ToString("#,0", CultureInfo.InvariantCulture);
