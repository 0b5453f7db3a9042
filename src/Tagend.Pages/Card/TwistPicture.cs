using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The hand of a twist: a piece held upright whose strands slope as the letter's middle stroke does, and a hook seen from its front with the way it turns.</summary>
/// <remarks>ISO 2:1973.</remarks>
internal sealed record TwistPicture(Twist Twist) : Block
{
    public const float Width = 30;

    private const float Height = 30;
    private const float Line = 0.8f;
    private const float Rod = 9;
    private const float Slope = 7;
    private const int Strands = 4;
    private const float HookCenter = 21.5f;
    private const float HookRadius = 6.5f;
    private const int ArcSteps = 14;

    public override Placement Place(Fonts fonts, Room room) => room.HoldsWidth(Width) && room.HoldsHeight(Height)
        ? new Placed(Width, Height, [.. Piece(), .. Hook()])
        : new Misfit($"a picture of the twist of {Width:0.#} × {Height:0.#} pt has {room.Width:0.#} × {room.Height:0.#} pt");

    private IEnumerable<Ink> Piece()
    {
        yield return new LineInk(0, 0, 0, Height, Line);
        yield return new LineInk(Rod, 0, Rod, Height, Line);
        for (var i = 0; i < Strands; i++)
        {
            var top = i * Height / Strands;
            var (left, right) = Twist.Hand == Hand.S ? (top, top + Slope) : (top + Slope, top);
            yield return new LineInk(0, left, Rod, right, Line);
        }
    }

    /// <summary>Three quarters of a circle with an arrow's head.</summary>
    private IEnumerable<Ink> Hook()
    {
        const float Middle = Height / 2;
        var way = Twist.Direction == TwistDirection.Clockwise ? 1 : -1;
        var points = Enumerable.Range(0, ArcSteps + 1)
            .Select(i => way * ((MathF.PI * 1.5f * i / ArcSteps) - (MathF.PI * 0.75f)))
            .Select(angle => (X: HookCenter + (HookRadius * MathF.Sin(angle)), Y: Middle - (HookRadius * MathF.Cos(angle))))
            .ToList();
        foreach (var (from, to) in points.Zip(points.Skip(1)))
        {
            yield return new LineInk(from.X, from.Y, to.X, to.Y, Line);
        }

        var (tip, along) = (points[^1], (X: points[^1].X - points[^2].X, Y: points[^1].Y - points[^2].Y));
        var length = MathF.Sqrt((along.X * along.X) + (along.Y * along.Y));
        var (x, y) = (along.X / length, along.Y / length);
        yield return new ShapeInk([(tip.X + (4 * x), tip.Y + (4 * y)), (tip.X - (2.4f * y), tip.Y + (2.4f * x)), (tip.X + (2.4f * y), tip.Y - (2.4f * x))], Fill: 0);
        yield return new OvalInk(HookCenter, Middle, 1.6f, 1.6f, Fill: 0);
    }
}
