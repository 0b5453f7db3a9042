using System.Globalization;
using System.Text.Json;
using Tagend.Pictures;

// tagend-pictures FOLDER SEED PER-STRENGTH MODULES [DECODER]: makes a set of hard pictures and scores decoders on it.
var (folder, seed, perStrength, modules) = (args[0], int.Parse(args[1], CultureInfo.InvariantCulture), int.Parse(args[2], CultureInfo.InvariantCulture), args[3]);
var only = args.Length > 4 ? args[4] : "";
var pictures = PictureSet.Make(folder, seed, perStrength);
var scores = new Dictionary<string, List<Reading>>();
foreach (var (name, decode) in Decoders.All.Where(d => d.Key.Contains(only, StringComparison.Ordinal)))
{
    var kept = Path.Combine(folder, $"{name}.json");
    if (name == "Tagend" || !File.Exists(kept))
    {
        Console.Error.WriteLine($"reading with {name}");
        File.WriteAllText(kept, JsonSerializer.Serialize(decode([.. pictures.Select(p => p.Path)], modules).ToList()));
    }

    scores[name] = JsonSerializer.Deserialize<List<Reading>>(File.ReadAllText(kept))!;
}

ScoreTable.Write(Console.Out, pictures, scores);
