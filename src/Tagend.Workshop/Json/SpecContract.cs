using System.Text.Json.Serialization;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Workshop.Json;

/// <summary>A spec. Names and units: docs/JSON.md. What stands before and after it in an object is in the types that inherit.</summary>
internal record SpecContract
{
    internal SpecContract(BuildSpec spec)
    {
        Kind = spec.Kind;
        Revision = spec.Revision;
        Date = DateWriter.Iso(spec.Date);
        FinishedLength = LengthContract.Of(spec.FinishedLength);
        Tolerance = LengthContract.Of(spec.Tolerance);
        DrawWeight = ForceContract.Of(spec.DrawWeight);
        Material = spec.Bundle.Material;
        Strands = spec.Bundle.Strands;
        Turns = spec.Twist.Turns;
        TurnsToPutIn = spec.TurnsToPutIn;
        TwistHand = spec.Twist.Hand.ToString();
        TwistDirection = Words.Of(spec.Twist.Direction);
        TakeUp = TakeUpContract.Of(spec);
        BundleDiameter = LengthContract.Of(spec.Bundle.Diameter);
        Settle = LengthContract.Of(spec.Settle);
        LaidUpLength = LengthContract.Of(spec.LaidUpLength);
        PostSetting = PostSettingContract.Of(spec);
        TurnSensitivity = LengthContract.Of(spec.TurnSensitivity);
        Loops = spec.Layup.Loops;
        Colors = [.. spec.Layup.Colors.Select(c => new ColorContract(c.Color, c.Strands, c.Strands / 2.0, c.Post.ToString(), c.EndPost.ToString()))];
        Tags = [.. spec.EndTags().Select(t => new EndTagContract(t.Post.ToString(), t.Leg, t.IsDummy, [.. t.Colors]))];
        EndLoops = EndLoopsContract.Of(spec.EndLoops);
        Yoke = YokeContract.Of(spec);
        Separators = [.. spec.Separators.Select(s => SeparatorContract.Of(s, spec))];
        ServingHand = spec.Twist.ServingHand.ToString();
        ServingDirection = Words.Of(spec.Twist.ServingDirection);
        Servings = [.. spec.Servings.Select(s => ServingContract.Of(s, spec))];
        Marks = [.. spec.Marks.Select(m => MarkContract.Of(m, spec))];
        NockFit = NockFitContract.Of(spec.NockFit);
        Stretch = new StretchContract(
            ForceContract.Of(spec.Stretch.Load), spec.Stretch.Minutes, LengthContract.Of(spec.Stretch.Reading), spec.StretchShare);
        Strength = new StrengthContract(ForceContract.Of(spec.Strength.Breaking), ForceContract.Of(spec.Strength.Floor), spec.Strength.Ratio);
        Mass = spec.Mass is { } mass ? new MassContract(mass.Grains, mass.Grams, PieceMass.ArrowShare(mass).Grains) : null;
        Lots = spec.Lots.Count > 0 ? [.. spec.Lots] : null;
    }

    public string Kind { get; }

    public int Revision { get; }

    public string Date { get; }

    public LengthContract FinishedLength { get; }

    public LengthContract Tolerance { get; }

    public ForceContract? DrawWeight { get; }

    public string Material { get; }

    public int Strands { get; }

    public int Turns { get; }

    public double TurnsToPutIn { get; }

    public string TwistHand { get; }

    public string TwistDirection { get; }

    public TakeUpContract TakeUp { get; }

    public LengthContract BundleDiameter { get; }

    public LengthContract Settle { get; }

    public LengthContract LaidUpLength { get; }

    public PostSettingContract PostSetting { get; }

    public LengthContract TurnSensitivity { get; }

    public int Loops { get; }

    public IReadOnlyList<ColorContract> Colors { get; }

    public IReadOnlyList<EndTagContract> Tags { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public EndLoopsContract? EndLoops { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public YokeContract? Yoke { get; }

    public IReadOnlyList<SeparatorContract> Separators { get; }

    public string ServingHand { get; }

    public string ServingDirection { get; }

    public IReadOnlyList<ServingContract> Servings { get; }

    public IReadOnlyList<MarkContract> Marks { get; }

    public NockFitContract? NockFit { get; }

    public StretchContract Stretch { get; }

    public StrengthContract Strength { get; }

    public MassContract? Mass { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Lots { get; }
}

/// <summary>Take-up by each model, and which was used.</summary>
/// <param name="Fitted">Null where the shop's builds do not serve; error and builds are left out then.</param>
internal sealed record TakeUpContract(
    LengthContract Rule,
    LengthContract Helix,
    LengthContract? Fitted,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] LengthContract? FittedError,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? FittedBuilds,
    string Used,
    bool ModelsDisagree)
{
    internal static TakeUpContract Of(BuildSpec spec)
    {
        var takeUp = spec.Twist.TakeUp;
        return new TakeUpContract(
            LengthContract.Of(takeUp.Rule),
            LengthContract.Of(takeUp.Helix),
            takeUp.Fitted is { } fitted ? LengthContract.Of(fitted.Amount) : null,
            takeUp.Fitted is { } known ? LengthContract.Of(known.Error) : null,
            takeUp.Fitted?.Builds,
            Words.Of(takeUp.Used),
            spec.ModelsDisagree);
    }
}

/// <summary>Where the posts stand, and between which settings the models of take-up disagree.</summary>
internal sealed record PostSettingContract
{
    public required LengthContract Outside { get; init; }

    public required LengthContract Centers { get; init; }

    public required LengthContract Tape { get; init; }

    public required LengthContract Residual { get; init; }

    public required double ResidualTurns { get; init; }

    public required bool PostGiven { get; init; }

    public required LengthContract RangeLeast { get; init; }

    public required LengthContract RangeMost { get; init; }

    public required bool MeasureFirstEarly { get; init; }

    internal static PostSettingContract Of(BuildSpec spec) => new()
    {
        Outside = LengthContract.Of(spec.Posts.Outside),
        Centers = LengthContract.Of(spec.Posts.Centers),
        Tape = LengthContract.Of(spec.Posts.Tape),
        Residual = LengthContract.Of(spec.Posts.Residual),
        ResidualTurns = spec.ResidualTurns,
        PostGiven = spec.Posts.IsPostGiven,
        RangeLeast = LengthContract.Of(spec.SettingRange().Least),
        RangeMost = LengthContract.Of(spec.SettingRange().Most),
        MeasureFirstEarly = spec.IsSettingUncertain,
    };
}

/// <summary>A color's share of the strands.</summary>
internal sealed record ColorContract(string Color, int Strands, double Loops, string Post, string EndPost);

/// <summary>What is tied at a post.</summary>
internal sealed record EndTagContract(string Post, int Leg, bool Dummy, IReadOnlyList<string> Colors);

/// <summary>The end loops, and the thread they are served with and its color; null where they are bare.</summary>
internal sealed record EndLoopsContract(LengthContract A, LengthContract B, string? Thread, string? Color)
{
    internal static EndLoopsContract? Of(EndLoops? loops) =>
        loops is null ? null : new EndLoopsContract(LengthContract.Of(loops.A), LengthContract.Of(loops.B), loops.Serving?.Thread, loops.Serving?.Color);
}

/// <summary>Where a yoke splits, and what its legs are of.</summary>
internal sealed record YokeContract(LengthContract Split, int LegTurns, IReadOnlyList<IReadOnlyList<StrandsContract>> Legs)
{
    internal static YokeContract? Of(BuildSpec spec) => spec.Yoke is { } yoke
        ? new YokeContract(LengthContract.Of(yoke.Split), yoke.LegTurns, [.. spec.Legs().Select(StrandsContract.Of)])
        : null;
}

/// <summary>Load and time on the stretcher.</summary>
internal sealed record StretchContract(ForceContract Load, int Minutes, LengthContract? ReadingUnderLoad, double ShareOfStrength);

/// <summary>Breaking strength, and the floor that it is held against; null where no draw weight is given.</summary>
internal sealed record StrengthContract(ForceContract Breaking, ForceContract? Floor, double? Ratio);

/// <summary>Mass of strands and servings.</summary>
internal sealed record MassContract(double Grains, double Grams, double ArrowShareGrains);
