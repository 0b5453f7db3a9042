using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs;

/// <summary>How the strands are laid on the jig: whole loops, a color after the other.</summary>
/// <param name="Colors">In the order they are laid.</param>
/// <param name="Tail">Length left at each tag end for tying.</param>
public sealed record Layup(ValueList<ColorShare> Colors, Length Tail)
{
    public int Strands => Colors.Sum(c => c.Strands);

    public int Loops => Strands / 2;

    /// <summary>What is tied at each post: the tag ends of its colors, or a dummy tag where there are none.</summary>
    public ValueList<EndTag> EndTags() =>
    [
        new EndTag(PieceEnd.A, Colors.Where(c => c.Post == PieceEnd.A).Select(c => c.Color).ToValueList()),
        new EndTag(PieceEnd.B, Colors.Where(c => c.Post == PieceEnd.B).Select(c => c.Color).ToValueList()),
    ];

    /// <summary>Gives each color its post: the first starts and ends at A, the second at B, and so on (common practice).</summary>
    public static Layup Of(IEnumerable<(string Color, int Strands)> colors, Length tail) => new(
        colors.Select((c, i) => new ColorShare(c.Color, c.Strands, i % 2 == 0 ? PieceEnd.A : PieceEnd.B)).ToValueList(),
        tail);
}

/// <summary>A color's share of the strands; it starts and ends at one post.</summary>
public sealed record ColorShare(string Color, int Strands, PieceEnd Post)
{
    public int Loops => Strands / 2;
}

/// <summary>The tag ends tied at one post.</summary>
public sealed record EndTag(PieceEnd Post, ValueList<string> Colors)
{
    /// <summary>No color ends here: a short bundle is tied in so that both end loops are equally thick.</summary>
    public bool IsDummy => Colors.Count == 0;
}
