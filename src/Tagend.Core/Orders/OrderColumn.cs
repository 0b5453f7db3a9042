namespace Tagend.Orders;

/// <summary>The columns of an order file, as their headers are spelled.</summary>
public static class OrderColumn
{
    /// <summary>The set's number; rows with the same one are one set.</summary>
    public const string Order = "order";

    /// <summary>The piece's name, one of its own in its set.</summary>
    public const string Piece = "piece";

    /// <summary>The plan that gives the defaults; empty where the piece's name is one.</summary>
    public const string Kind = "kind";

    /// <summary>The number of the issue, from 1 to 999.</summary>
    public const string Revision = "revision";

    /// <summary>Over measuring pins, outside to outside.</summary>
    public const string FinishedLength = "finished_length";

    /// <summary>A recurve's or longbow's nominal length, in place of the finished length.</summary>
    public const string BowLength = "bow_length";

    /// <summary>The strand material's name in materials.toml.</summary>
    public const string Material = "material";

    /// <summary>The total of strands, even.</summary>
    public const string Strands = "strands";

    /// <summary>Strand colors, with their strands or shared equally.</summary>
    public const string Colors = "colors";

    /// <summary>Peak draw weight of the bow.</summary>
    public const string DrawWeight = "draw_weight";

    /// <summary>Servings in place of those of the plan, but for the center serving.</summary>
    public const string Servings = "servings";

    /// <summary>The serving that the arrow is nocked on.</summary>
    public const string CenterServing = "center_serving";

    /// <summary>A place on the center serving.</summary>
    public const string NockPoint = "nock_point";

    /// <summary>The place of the peep separator.</summary>
    public const string Peep = "peep";

    /// <summary>Places of speed nocks.</summary>
    public const string SpeedNocks = "speed_nocks";

    /// <summary>The width of the arrow nock's throat.</summary>
    public const string NockGroove = "nock_groove";

    /// <summary>Turns per inch of finished length, in place of those of plan, material or shop.</summary>
    public const string Twists = "twists";

    /// <summary>Who it is for; on no tag.</summary>
    public const string Customer = "customer";

    /// <summary>The customer's bow, or a bow of the shop's book.</summary>
    public const string Bow = "bow";

    /// <summary>When it is due, as people write dates.</summary>
    public const string Due = "due";

    /// <summary>What is printed as it is.</summary>
    public const string Notes = "notes";

    /// <summary>The language of the customer's sheet, as words files are named.</summary>
    public const string Language = "language";

    /// <summary>The units of the customer's sheet, in or mm.</summary>
    public const string Units = "units";

    /// <summary>What is packed with the piece, with semicolons between.</summary>
    public const string Accessories = "accessories";

    /// <summary>All columns, in the order in which files written by the program have them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        Order, Piece, Kind, Revision, FinishedLength, BowLength, Material, Strands, Colors, DrawWeight, Servings,
        CenterServing, NockPoint, Peep, SpeedNocks, NockGroove, Twists, Customer, Bow, Due, Notes, Language, Units, Accessories,
    ];
}
