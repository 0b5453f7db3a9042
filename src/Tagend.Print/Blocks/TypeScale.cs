using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>All type sizes, in points. Nothing on sheets and cards is smaller than <see cref="Smallest"/>.</summary>
public static class TypeScale
{
    /// <summary>The smallest type on sheets and cards.</summary>
    public const float Smallest = 7;

    /// <summary>The smallest type of what the hand works by, read at arm's length.</summary>
    public const float ArmsLength = 11;

    /// <summary>Captions over values, units, the small print.</summary>
    public static TextStyle Caption { get; } = new(Weight.Regular, 7, Leading: 1.2f);

    /// <summary>Captions that head a part of a page.</summary>
    public static TextStyle Heading { get; } = new(Weight.Bold, 7.5f, Leading: 1.15f) { HeadingLevel = 2 };

    /// <summary>Tables, and running text of cards.</summary>
    public static TextStyle Body { get; } = new(Weight.Regular, 8);

    /// <summary>The same where a card is well filled.</summary>
    public static TextStyle CloseBody { get; } = Body with { Leading = 1.15f };

    /// <summary>The same where a card is full.</summary>
    public static TextStyle TightBody { get; } = new(Weight.Regular, 7, Leading: 1.15f);

    public static TextStyle BodyBold { get; } = new(Weight.Bold, 8);

    /// <summary>Running text of sheets.</summary>
    public static TextStyle Sheet { get; } = new(Weight.Regular, 10, Leading: 1.4f);

    public static TextStyle SheetBold { get; } = new(Weight.Bold, 10, Leading: 1.4f);

    /// <summary>The title of a sheet.</summary>
    public static TextStyle SheetTitle { get; } = new(Weight.Bold, 22, Tracking: -0.4f, Leading: 1.15f) { HeadingLevel = 1 };

    /// <summary>Numbers of a step of the work.</summary>
    public static TextStyle Bench { get; } = new(Weight.Bold, ArmsLength, Leading: 1.15f);

    /// <summary>Numbers the bench works by.</summary>
    public static TextStyle Figure { get; } = new(Weight.Bold, 14, Leading: 1.15f);

    /// <summary>The name of a piece on its card.</summary>
    public static TextStyle Title { get; } = new(Weight.Bold, 16, Leading: 1.15f) { HeadingLevel = 1 };

    /// <summary>The one number a card is for, read at arm's length.</summary>
    public static TextStyle Post { get; } = new(Weight.Bold, 52, Tracking: -1.5f, Leading: 0.95f);
}
