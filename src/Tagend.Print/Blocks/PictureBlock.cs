using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A picture at its own proportions, as large as it may be.</summary>
/// <param name="MostWidth">In points.</param>
/// <param name="MostHeight">In points.</param>
public sealed record PictureBlock(Picture Picture, float MostWidth, float MostHeight) : Block
{
    private float Scale => Math.Min(MostWidth / Picture.Width, MostHeight / Picture.Height);

    private float Width => Picture.Width * Scale;

    private float Height => Picture.Height * Scale;

    public override Placement Place(Fonts fonts, Room room) => room.HoldsWidth(Width) && room.HoldsHeight(Height)
        ? new Placed(Width, Height, new PictureInk(0, 0, Width, Height, Picture))
        : new Misfit($"a picture takes {Width:0.#} × {Height:0.#} pt and has {room.Width:0.#} × {room.Height:0.#} pt");

    public override float NaturalWidth(Fonts fonts) => Width;
}
