using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>A picture at its own proportions, as large as it may be.</summary>
/// <param name="MostWidth">In points.</param>
/// <param name="MostHeight">In points.</param>
public sealed record PictureBlock(Picture Picture, float MostWidth, float MostHeight) : Block
{
    /// <summary>What the picture shows; empty where it only decorates.</summary>
    public string InWords { get; init; } = "";

    private float Scale => Math.Min(MostWidth / Picture.Width, MostHeight / Picture.Height);

    private float Width => Picture.Width * Scale;

    private float Height => Picture.Height * Scale;

    public override Placement Place(Fonts fonts, Room room) => room.HoldsWidth(Width) && room.HoldsHeight(Height)
        ? new Placed(Width, Height, new PictureInk(0, 0, Width, Height, Picture)) { Part = InWords.Length > 0 ? new PartStart(PartKind.Figure, InWords) : null }
        : new Misfit($"a picture takes {Width:0.#} × {Height:0.#} pt and has {room.Width:0.#} × {room.Height:0.#} pt");

    public override float NaturalWidth(Fonts fonts) => Width;
}
