namespace Tagend.Catalog;

/// <summary>What a shop has and how it works, read from its templates folder.</summary>
/// <param name="Folder">Where the templates are.</param>
/// <param name="Materials">By name.</param>
/// <param name="Threads">By name.</param>
/// <param name="Stocks">Label stocks by name.</param>
/// <param name="Plans">Piece kinds by name.</param>
public sealed record ShopCatalog(
    string Folder,
    Shop Shop,
    IReadOnlyDictionary<string, StrandMaterial> Materials,
    IReadOnlyDictionary<string, ServingThread> Threads,
    IReadOnlyDictionary<string, LabelStock> Stocks,
    IReadOnlyDictionary<string, PiecePlan> Plans);
