namespace Tagend.Jobs;

/// <summary>How far a piece has come.</summary>
public enum PieceState
{
    /// <summary>In an order file, and never printed.</summary>
    New,

    /// <summary>Its newest papers are printed, and no build by them stands.</summary>
    Printed,

    /// <summary>To be made again: what was built before is not what the customer gets.</summary>
    Remade,

    /// <summary>A build by its newest papers stands.</summary>
    Built,

    /// <summary>It has left the shop.</summary>
    Shipped,

    /// <summary>It is not to be made.</summary>
    Cancelled,
}
