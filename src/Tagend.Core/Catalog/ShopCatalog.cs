using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Catalog;

/// <summary>What a shop has and how it works, read from its templates folder, and what its own builds have taught it.</summary>
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
    IReadOnlyDictionary<string, PiecePlan> Plans)
{
    /// <summary>Of all papers but a customer's sheet that has its own.</summary>
    public required PaperLanguage Words { get; init; }

    /// <summary>All that there are words for, by name.</summary>
    public required IReadOnlyList<string> Languages { get; init; }

    /// <summary>The shop's colors by every name; none where there is no colors.toml.</summary>
    public ColorNames Colors { get; init; } = ColorNames.None;

    /// <summary>Of a jig card, in the order of the work.</summary>
    public IReadOnlyList<CardStep> CardSteps { get; init; } = CardStep.Usual;

    /// <summary>From the shop's log, where it has one; one a material and strand count.</summary>
    public ValueList<FittedTakeUp> Fits { get; init; } = [];

    /// <summary>Turns per inch where the order names none: the plan's, else the material's, else the shop's.</summary>
    public double TurnsPerInch(PiecePlan plan, StrandMaterial material) => plan.TurnsPerInch ?? material.TurnsPerInch ?? Shop.TurnsPerInch;

    /// <summary>Take-up of one turn by the rule model: the plan's, else the material's, else the shop's.</summary>
    public Length RuleTakeUpPerTurn(PiecePlan plan, StrandMaterial material) =>
        plan.RuleTakeUpPerTurn ?? material.RuleTakeUpPerTurn ?? Shop.RuleTakeUpPerTurn;

    /// <summary>The plan that a name is of, or one of the plan's other names; null where there is none.</summary>
    public PiecePlan? PlanCalled(string name) =>
        Plans.GetValueOrDefault(name) ?? Plans.Values.FirstOrDefault(p => p.IsCalled(name));

    /// <summary>The fit to be used for a piece; null where the shop's builds do not serve for it.</summary>
    public FittedTakeUp? FitOf(string material, int strands, int turns, Length finishedLength, Length tolerance) => Fits.FirstOrDefault(f =>
        f.Material == material && f.Strands == strands && f.Serves(turns, finishedLength, tolerance));
}
