namespace Tagend.Qr.Read;

/// <summary>Pixels that may still be looked at before a picture is given up: the same on every machine, unlike a time.</summary>
internal sealed class PixelBudget(long pixels)
{
    public long Left { get; private set; } = pixels;

    public bool IsSpent => Left <= 0;

    public void Spend(long looks) => Left -= looks;
}
