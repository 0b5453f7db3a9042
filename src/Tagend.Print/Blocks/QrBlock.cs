using Tagend.Output;
using Tagend.Qr.Encode;

namespace Tagend.Blocks;

/// <summary>A QR code with its quiet zone.</summary>
/// <param name="Module">Side of a module, in points.</param>
public sealed record QrBlock(QrSymbol Symbol, float Module) : Block
{
    /// <summary>What the code is of.</summary>
    public string InWords { get; init; } = "QR";

    /// <summary>Side of the square with its quiet zone, in points.</summary>
    public float Side => (Symbol.Modules + (2 * QrSymbol.QuietModules)) * Module;

    public override Placement Place(Fonts fonts, Room room)
    {
        var quiet = QrSymbol.QuietModules * Module;
        return room.HoldsWidth(Side) && room.HoldsHeight(Side)
            ? new Placed(Side, Side, new BarsInk(quiet, quiet, Module, Symbol.Bars)) { Part = new PartStart(PartKind.Figure, InWords) }
            : new Misfit($"a QR code of {Side:0.#} pt has {room.Width:0.#} × {room.Height:0.#} pt");
    }
}
