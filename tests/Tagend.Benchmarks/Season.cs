using System.Globalization;
using System.Text;

namespace Tagend.Benchmarks;

/// <summary>Invented orders of a season, the same for the same number: sets of string, buss and control cable.</summary>
internal static class Season
{
    private const int Seed = 20260314;
    private const int PiecesInSet = 3;

    private static readonly string[] Colors = ["black:12 red:12", "black:24", "silver:8 blue:16", "flo-green:12 black:12", "red:8 silver:8 black:8"];

    public static string Csv(int pieces)
    {
        var random = new Random(Seed);
        var text = new StringBuilder(
            "order,customer,bow,due,draw_weight,piece,kind,finished_length,material,strands,colors,servings,center_serving,nock_point,peep,notes\n");
        var colors = "";
        for (var piece = 0; piece < pieces; piece++)
        {
            var order = 10001 + (piece / PiecesInSet);
            colors = piece % PiecesInSet == 0 ? Colors[random.Next(Colors.Length)] : colors;
            var rest = (piece % PiecesInSet) switch
            {
                0 => $"string,compound-string,{Inches(58, 62)},hmpe-0145,24,{colors},A 0..7 1/2 t021 black; B 0..8 t021 black,"
                    + $"26 1/4..31 t017 black,{Inches(28, 30)},{Inches(22, 25)},Peep turned a quarter when it came in; check under draw.",
                1 => $"buss,buss-cable,{Inches(36, 40)},hmpe-0145,24,{colors},A 0..5 t021 black; 17 1/2..25 t019 black; B 0..9 t021 black,,,,",
                _ => $"control,control-cable,{Inches(39, 42)},hmpe-0145,24,{colors},A 0..8 t021 black; 19..26 1/2 t019 black; B 0..8 t021 black,,,,",
            };
            text.Append(CultureInfo.InvariantCulture, $"{order},Demo customer {order - 10000},\"compound bow, hybrid cam, 70 lb\",3 May,70,{rest}\n");
        }

        return text.ToString();

        string Inches(int from, int to) => string.Create(
            CultureInfo.InvariantCulture, $"{random.Next(from, to)} {(2 * random.Next(8)) + 1}/16");
    }
}
