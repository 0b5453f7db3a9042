namespace Tagend.Specs.Explained;

/// <summary>Where the formulas and constants of an explanation come from.</summary>
internal static class ExplainedSource
{
    public const string Amo = "AMO Standards FP-3, 2000";
    public const string Hearle =
        "Hearle, Grosberg and Backer, Structural Mechanics of Fibers, Yarns, and Fabrics, 1969: an ideal helical yarn, not a measurement";

    public const string Bowyer = "The Traditional Bowyer's Bible";
    public const string NaglerAndFord = "Archery: The Technical Side, 1947 (Nagler's tests, Ford's averages)";
    public const string HickmanAndKlopsteg = "Hickman and Klopsteg, in Archery: The Technical Side, 1947";
    public const string Nist = "NIST SP 811";
    public const string Geometry = "geometry";
    public const string HelixLength = "geometry: the length of a helix";
    public const string Hooke =
        "Hooke's law with the catalog's modulus (materials.toml), strands taken as straight: a twisted string gives more";

    public const string FibreSection = "definition of tex (g/km); fibre density of the textile handbooks (materials.toml)";
    public const string CommonPractice = "common practice";
    public const string ShopValue = "the shop's own value (shop.toml)";
    public const string Builds = "the shop's own builds in the job book, least squares (tagend fit)";
    public const string Order = "the order";

    /// <summary>For a value that is common practice until the shop writes its own.</summary>
    public static string Practice(bool isCommon) => isCommon ? CommonPractice : ShopValue;
}
