using System.Globalization;
using System.Text;
using Tagend.Measures;

namespace Tagend.Workshop.Shops;

/// <summary>What only a shop itself knows, for its new templates. What is null stays out: nothing is assumed for it.</summary>
/// <param name="Name">The shop's name, as papers print it.</param>
/// <param name="Phone">Its telephone number, as papers print it.</param>
/// <param name="Unit">The unit of the lengths it reads and prints; with millimeters the paper is A4.</param>
/// <param name="PostDiameter">The diameter of its jig's posts, measured.</param>
public sealed record ShopOwn(string? Name, string? Phone, LengthUnit? Unit, Length? PostDiameter)
{
    /// <summary>A shop that has said nothing yet.</summary>
    public static ShopOwn Nothing { get; } = new(null, null, null, null);

    /// <summary>The text of a shop.toml with these values in it.</summary>
    internal string In(string shopToml)
    {
        var text = shopToml;
        if (Name is not null)
        {
            text = text.Replace("name = \"\"", $"name = {Quoted(Name)}", StringComparison.Ordinal);
        }

        if (Phone is not null)
        {
            text = text.Replace("phone = \"\"", $"phone = {Quoted(Phone)}", StringComparison.Ordinal);
        }

        if (Unit == LengthUnit.Millimeter)
        {
            text = text.Replace("unit = \"in\"", "unit = \"mm\"", StringComparison.Ordinal)
                .Replace("paper = \"letter\"", "paper = \"a4\"", StringComparison.Ordinal);
        }

        return PostDiameter is not { } post ? text : text.Replace(
            "# post_diameter = \"1 in\"", $"post_diameter = \"{ExactNumber.Spelled(post, Unit ?? LengthUnit.Inch)}\"", StringComparison.Ordinal);
    }

    /// <summary>As a TOML text: backslashes, quotes and what does not print are escaped.</summary>
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            quoted.Append(c is '"' or '\\' ? $"\\{c}"
                : char.IsControl(c) ? $"\\u{((int)c).ToString("X4", CultureInfo.InvariantCulture)}"
                : c.ToString());
        }

        return quoted.Append('"').ToString();
    }
}
