namespace Tagend.Problems;

/// <summary>What is said about an order's cells: every sentence in one place, so that tests can hold it.</summary>
public static class OrderWording
{
    public const string Length = "expected a length such as 60 1/4, 60.25 in or 1530 mm";
    public const string Force = "expected a force such as 70, 70 lb or 311 N";
    public const string Position = "expected a place such as 26 1/4 (from end A) or B 8";

    public const string NoServing = "expected servings such as A 0..7 1/2 t021 black; B 0..8 t021";
    public const string OneServing = "expected one serving such as 26 1/4..31 t021 red";

    public const string NoColor = "expected colors such as black:12 red:12, or black red to share the strands equally";
    public const string MixedColors = "give every color its number of strands, or none of them";

    public static string InItem(int number, string item, string message) => $"item {number} \"{item}\": {message}";

    public const string ServingPlaces = "expected where it starts and ends, such as A 0..7 1/2 t021 black";

    public static string ServingStart(string text) => $"cannot read where it starts, \"{text}\": {Length}";

    public static string ServingEnd(string text) => $"cannot read where it ends, \"{text}\": {Length}";

    public const string ServingOrder = "it must end farther from its end of the piece than it starts";

    public static string ColorWords(string words) =>
        $"\"{words}\": write a color as one word, joined by a hyphen if need be, and its strands as black:12";

    public static string ColorName(string name) =>
        $"\"{name}\": a color is letters, digits and hyphens with at least one letter, and its strands follow as in black:12";

    public static string ColorStrands(string color) =>
        $"\"{color}\": strands are an even number above 0, for a color takes whole loops of two strands";

    public static string ColorTwice(string name) => $"\"{name}\" is named twice";

    public const string NameEmpty = "expected a name of letters and digits";

    public static string NameLong(int most) => $"a name has {most} characters at most";

    public static string NameCharacter(string character) =>
        $"a name has letters, digits, spaces, hyphens, points and underscores only, not {character}";

    public const string NameEnds = "a name starts and ends with a letter or a digit";
}
