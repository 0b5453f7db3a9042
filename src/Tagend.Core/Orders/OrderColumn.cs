namespace Tagend.Orders;

/// <summary>The columns of an order file, as their headers are spelled.</summary>
public static class OrderColumn
{
    public const string Order = "order";
    public const string Piece = "piece";
    public const string Kind = "kind";
    public const string Revision = "revision";
    public const string FinishedLength = "finished_length";
    public const string BowLength = "bow_length";
    public const string Material = "material";
    public const string Strands = "strands";
    public const string Colors = "colors";
    public const string DrawWeight = "draw_weight";
    public const string Servings = "servings";
    public const string CenterServing = "center_serving";
    public const string NockPoint = "nock_point";
    public const string Peep = "peep";
    public const string SpeedNocks = "speed_nocks";
    public const string NockGroove = "nock_groove";
    public const string Twists = "twists";
    public const string Customer = "customer";
    public const string Bow = "bow";
    public const string Due = "due";
    public const string Notes = "notes";
    public const string Language = "language";
    public const string Units = "units";
    public const string Accessories = "accessories";

    public static IReadOnlyList<string> All { get; } =
    [
        Order, Piece, Kind, Revision, FinishedLength, BowLength, Material, Strands, Colors, DrawWeight, Servings,
        CenterServing, NockPoint, Peep, SpeedNocks, NockGroove, Twists, Customer, Bow, Due, Notes, Language, Units, Accessories,
    ];
}
