using System.Text;
using Tagend.Orders;

namespace Tagend.Imports;

/// <summary>What the words of a header or of an option's label stand for, as shops and stores use them.</summary>
/// <param name="Pieces">Pieces named among the words; <c>cable</c> stands for all cables of a row.</param>
/// <param name="Column">Of an order, or one of the columns of a map; null where no word is known.</param>
/// <param name="Number">Behind the words, as in <c>Color 2</c>; null for none.</param>
internal sealed record HeaderMeaning(IReadOnlyList<string> Pieces, string? Column, int? Number);

/// <summary>Reads the words of headers. The list is common practice; a shop mends the map that comes of it.</summary>
internal static class HeaderWords
{
    /// <summary>A column whose texts say which rows are to be built.</summary>
    public const string Paid = "paid";

    /// <summary>A column that says what kind of bow a string is for.</summary>
    public const string BowType = "bow type";

    /// <summary>The piece that a bare <c>cable</c> is, where no cable has a name of its own.</summary>
    public const string Cable = "cable";

    private static readonly string[] PieceWords = ["string", "buss", "control", "yoke", Cable];

    // Longer phrases are looked for first.
    private static readonly (string Column, string[] Phrases)[] Known =
    [
        (MapTarget.Never,
        [
            "e mail", "email", "phone", "telephone", "tel", "mobile", "address", "street", "city", "town", "zip", "zip code", "postal code", "postcode",
            "country", "province", "county", "company", "payment", "payment method", "payment id", "paid with", "paid by", "price", "item price", "unit price",
            "total", "subtotal", "amount", "tax", "vat", "discount", "discount code", "shipping", "shipping cost", "shipping method", "currency", "sku",
            "transaction", "transaction id", "card", "coupon", "order date", "date", "created", "created at", "date ordered", "ordered on", "order status",
            "fulfillment status", "balance", "deposit", "invoice date", "tracking", "tracking number", "newsletter", "item id", "product id", "item sku",
            "vendor", "tags", "gift wrap",
        ]),
        (OrderColumn.Order, ["order", "order no", "order number", "order nr", "order id", "order name", "no", "nr", "number", "job", "job no", "job number", "ticket", "invoice"]),
        (OrderColumn.Customer, ["customer", "customer name", "client", "client name", "buyer", "name", "ship to", "ship to name", "shipping name", "billing name", "recipient", "archer"]),
        (OrderColumn.Bow, ["bow", "bow model", "model", "bow name", "make and model", "bow make and model", "make model"]),
        (OrderColumn.Due, ["due", "due date", "date due", "ship by", "ship by date", "ship date", "needed by", "need by", "wanted by", "deadline", "promised", "finish by"]),
        (OrderColumn.Notes, ["notes", "note", "comment", "comments", "remark", "remarks", "instructions", "special instructions", "order notes", "customer note", "message", "serving color", "peep size", "draw length", "arrow length", "axle to axle", "ata", "brace height", "hand", "bow hand"]),
        (OrderColumn.Colors, ["color", "colors", "colour", "colours"]),
        (OrderColumn.Strands, ["strands", "strand", "strand count", "number of strands", "no of strands", "total strands"]),
        (OrderColumn.Material, ["material", "string material", "fiber", "fibre"]),
        (OrderColumn.DrawWeight, ["draw weight", "poundage", "peak weight", "peak draw weight", "bow weight"]),
        (OrderColumn.FinishedLength, ["length", "finished length", "size", "len"]),
        (OrderColumn.BowLength, ["bow length", "amo length", "amo bow length"]),
        (OrderColumn.Servings, ["servings", "end servings"]),
        (OrderColumn.CenterServing, ["center serving", "centre serving"]),
        (OrderColumn.NockPoint, ["nock point", "nocking point", "nock height"]),
        (OrderColumn.Peep, ["peep", "peep height", "peep position", "peep location"]),
        (OrderColumn.SpeedNocks, ["speed nocks", "speed nock"]),
        (OrderColumn.NockGroove, ["nock groove", "nock throat"]),
        (OrderColumn.Twists, ["twists", "twist rate", "twists per inch", "turns per inch"]),
        (OrderColumn.Piece, ["item", "item name", "product", "product name", "line item", "lineitem name", "line item name", "title", "item title", "piece", "description"]),
        (OrderColumn.Kind, ["kind"]),
        (OrderColumn.Language, ["language"]),
        (OrderColumn.Accessories, ["accessories", "extras", "add ons"]),
        (MapTarget.Quantity, ["qty", "quantity", "count", "pieces", "item quantity", "lineitem quantity", "line item quantity", "how many"]),
        (Paid, ["paid", "payment status", "financial status", "paid yes no"]),
        (BowType, ["bow type", "type of bow", "kind of bow"]),
    ];

    private static readonly (string Column, string[] Words)[] Phrases =
        [.. Known.SelectMany(k => k.Phrases.Select(p => (k.Column, p.Split(' ')))).OrderByDescending(p => p.Item2.Length)];

    /// <summary>What a header stands for by its words alone.</summary>
    public static HeaderMeaning Read(string header)
    {
        var words = Words(header);
        int? number = words.Count > 1 && !PieceWords.Contains(words[^2]) && int.TryParse(words[^1], out var n) ? n : null;
        if (number is not null)
        {
            words.RemoveAt(words.Count - 1);
        }

        // A piece's word may be a part of a phrase, as in "string material".
        if (ColumnOf(words, isWhole: true) is { } whole)
        {
            return new HeaderMeaning([], whole, number);
        }

        var (pieces, rest) = (new List<string>(), new List<string>());
        for (var i = 0; i < words.Count; i++)
        {
            var isPiece = PieceWords.Contains(words[i]);
            var isNumbered = isPiece && i + 1 < words.Count && int.TryParse(words[i + 1], out _);
            (isPiece ? pieces : rest).Add(isNumbered ? $"{words[i]} {words[++i]}" : words[i]);
        }

        // A buss cable is one piece, not two.
        return new HeaderMeaning(
            pieces.Count > 1 ? [.. pieces.Where(p => p != Cable)] : pieces, ColumnOf(rest, isWhole: false), number);
    }

    /// <summary>The pieces that a product's name has among its words.</summary>
    public static IReadOnlyList<string> Pieces(string name) => [.. Words(name).Where(w => PieceWords.Contains(w)).Distinct()];

    /// <summary>Whether a text has a word or a run of words in it.</summary>
    public static bool Has(string text, string phrase) => Contains(Words(text), phrase.Split(' '));

    /// <param name="isWhole">The words must be a phrase and nothing else.</param>
    private static string? ColumnOf(List<string> words, bool isWhole) => Phrases
        .FirstOrDefault(p => isWhole ? words.SequenceEqual(p.Words) : Contains(words, p.Words)).Column;

    private static bool Contains(List<string> words, string[] phrase) =>
        Enumerable.Range(0, Math.Max(0, words.Count - phrase.Length + 1)).Any(i => words.Skip(i).Take(phrase.Length).SequenceEqual(phrase));

    /// <summary>In lower case, each run of letters or digits; strings and yokes without their s, and bowstring in two.</summary>
    private static List<string> Words(string text)
    {
        var spaced = new StringBuilder();
        foreach (var c in text.ToLowerInvariant())
        {
            var parts = spaced.Length > 0 && char.IsLetterOrDigit(c) && char.IsLetterOrDigit(spaced[^1]) && char.IsDigit(c) != char.IsDigit(spaced[^1]);
            spaced.Append(parts ? " " : "").Append(char.IsLetterOrDigit(c) ? c : ' ');
        }

        return
        [
            .. spaced.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => w switch
            {
                "bowstring" or "strings" => (string[])["string"],
                "bus" => ["buss"],
                "cables" => [Cable],
                "yokes" => ["yoke"],
                _ => [w],
            }),
        ];
    }
}
