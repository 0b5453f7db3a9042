using CsCheck;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Tests.Tags;

/// <summary>Random specs: any value that a piece can have, likely or not.</summary>
internal static class Specimen
{
    /// <summary>One in so many is tried: of all where the tests run, of fewer for each of several hundred mutants.</summary>
#if MUTANTS
    public const int Share = 25;
#else
    public const int Share = 1;
#endif

    private static readonly Gen<string> Name = Gen.Char["abcdefghijklmnopqrstuvwxyzéß0123456789 -._"].Array[1, 12].Select(c => new string(c));

    private static readonly Gen<Length> Length = Gen.Long[0, 3_302_000_000].Select(Tagend.Measures.Length.FromNanometers);

    /// <summary>Of a piece, and of a tape's step, which are never nothing.</summary>
    private static readonly Gen<Length> SomeLength = Gen.Long[10_000_000, 3_302_000_000].Select(Tagend.Measures.Length.FromNanometers);

    private static readonly Gen<Force> Force = Gen.Long[0, 20_000_000_000].Select(Tagend.Measures.Force.FromMicronewtons);

    private static readonly Gen<Bundle> Bundle =
        Gen.Select(Name, Gen.Int[1, 60], Length).Select((m, n, d) => new Bundle(m, n * 2, d));

    private static readonly Gen<FittedAmount> Fitted =
        Gen.Select(Length, Length, Gen.Int[1, 9999]).Select((amount, error, builds) => new FittedAmount(amount, error, builds));

    private static readonly Gen<TakeUp> TakeUp = Gen.Select(Gen.Enum<TakeUpModel>(), Length, Length, Fitted)
        .Select((model, rule, helix, fitted) => new TakeUp(model, rule, helix, model == TakeUpModel.Fitted ? fitted : null));

    private static readonly Gen<Twist> Twist = Gen.Select(Gen.Int[0, 500], Gen.Enum<Hand>(), Gen.Enum<Hand>(), TakeUp)
        .Select((turns, hand, servings, takeUp) => new Twist(turns, hand, servings, takeUp));

    private static readonly Gen<PostSetting> Posts =
        Gen.Select(Length, Length, Length, SomeLength, Gen.Bool)
            .Select((post, pin, outside, step, given) => new PostSetting(given ? post : pin, pin, outside, step, given));

    private static readonly Gen<Layup> Layup = Gen.Select(Gen.Select(Name, Gen.Int[1, 30]).Array[1, 4], Length)
        .Select((colors, tail) => Tagend.Specs.Layup.Of(colors.Select(c => (c.Item1, c.Item2)), tail));

    private static readonly Gen<ValueList<Serving>> Servings =
        Gen.Select(Gen.Enum<ServingRole>(), Length, Length, Gen.Int[17, 30], Gen.OneOf(Name, Gen.Const("")))
            .Select((role, from, to, size, color) =>
                new Serving(role, from, to, $"t0{size}", Tagend.Measures.Length.FromInches(size / 1000.0), color))
            .Array[0, 10].Select(s => s.ToValueList());

    private static readonly Gen<Stretch> Stretch =
        Gen.Select(Force, Gen.Int[0, 9999], Gen.OneOf(Length.Select(g => (Length?)g), Gen.Const((Length?)null))).Select((load, minutes, reading) => new Stretch(load, minutes, reading));

    private static readonly Gen<Mass?> Mass = Gen.OneOf(
        Gen.Long[0, 100_000_000].Select(m => (Mass?)Tagend.Measures.Mass.FromMilligrams(m)), Gen.Const((Mass?)null));

    private static readonly Gen<EndLoops?> Loops = Gen.OneOf(
        Gen.Select(Length, Length, Gen.Int[0, 3]).Select((a, b, thread) => (EndLoops?)new EndLoops(
            a,
            thread == 1 ? a : b,
            thread == 0 ? null : new LoopServing($"t02{thread}", Tagend.Measures.Length.FromInches(0.02 + (thread / 1000.0)), thread == 2 ? "red" : ""))),
        Gen.Const((EndLoops?)null));

    private static readonly Gen<Yoke?> Yoke = Gen.OneOf(
        Gen.Select(Length, Gen.Int[0, 50]).Select((split, turns) => (Yoke?)new Yoke(split, turns)), Gen.Const((Yoke?)null));

    private static readonly Gen<ValueList<Mark>> Marks =
        Gen.Select(Gen.Enum<MarkKind>(), Length).Select((kind, at) => new Mark(kind, at)).Array[0, 6].Select(m => m.ToValueList());

    private static readonly Gen<(string Order, string Piece, string Kind, int Revision, DateOnly Date, LengthUnit Unit)> Head =
        Gen.Select(Name, Name, Name, Gen.Int[1, 9999], Gen.Int[0, 30000], Gen.Enum<LengthUnit>()).Select(
            (order, piece, kind, revision, day, unit) => (
                Capital(order), piece, kind, revision, new DateOnly(2020, 1, 1).AddDays(day), unit));

    public static Gen<BuildSpec> Specs { get; } =
        Gen.Select(
            Gen.Select(Head, SomeLength, Length, Gen.OneOf(Force.Select(f => (Force?)f), Gen.Const((Force?)null))),
            Gen.Select(Bundle, Twist, Posts, Layup),
            Gen.Select(Gen.Select(Name, Length).Array[0, 3], Servings, Marks, Force),
            Gen.Select(Length, Stretch, Gen.OneOf(Length.Select(g => (Length?)g), Gen.Const((Length?)null)), Mass),
            Gen.Select(Loops, Yoke, Name.Array[0, 3], Gen.Bool)).Select(
            (a, b, c, d, e) => new BuildSpec
            {
                Order = a.Item1.Order,
                Piece = a.Item1.Piece,
                Kind = a.Item1.Kind,
                Revision = a.Item1.Revision,
                Date = a.Item1.Date,
                Unit = a.Item1.Unit,
                FinishedLength = a.Item2,
                Tolerance = a.Item3,
                DrawWeight = a.Item4,
                Bundle = b.Item1,
                Twist = b.Item2,
                Posts = b.Item3,
                Layup = b.Item4,
                Separators = c.Item1.Select(s => new Separator(s.Item1, s.Item2, b.Item1.Strands / 2)).ToValueList(),
                Servings = c.Item2,
                Marks = c.Item3,
                Strength = new Strength(c.Item4, e.Item4 ? a.Item4 * Strength.SafetyFactor : null),
                Settle = d.Item1,
                Stretch = d.Item2,
                NockGroove = d.Item3,
                Mass = d.Item4,
                EndLoops = e.Item1,
                Yoke = e.Item2,
                Lots = e.Item3.Select(Capital).ToValueList(),
            }).Select(Possible);

    /// <summary>Places within the piece, colors that make up its strands, nothing thicker than a palm, and no force of nothing.</summary>
    private static BuildSpec Possible(BuildSpec spec)
    {
        var end = spec.FinishedLength;
        var colors = spec.Layup.Colors.Select((c, i) => (c.Color, c.Strands + (i == 0 ? spec.Layup.Strands % 2 : 0)));
        var takeUp = spec.Twist.TakeUp;
        return spec with
        {
            Tolerance = In(spec.Tolerance),
            DrawWeight = spec.DrawWeight is { } weight ? Some(weight) : null,
            Bundle = spec.Bundle with { Strands = colors.Sum(c => c.Item2), Diameter = Thick(spec.Bundle.Diameter) },
            Twist = spec.Twist with
            {
                TakeUp = takeUp with
                {
                    Rule = In(takeUp.Rule),
                    Helix = In(takeUp.Helix),
                    Fitted = takeUp.Fitted is { } fitted ? fitted with { Amount = In(fitted.Amount), Error = In(fitted.Error) } : null,
                },
            },
            Settle = In(spec.Settle),
            Posts = new PostSetting(
                Thick(spec.Posts.IsPostGiven ? spec.Posts.PostDiameter : spec.Posts.PinDiameter), Thick(spec.Posts.PinDiameter), Long(spec.Posts.Outside), Thick(spec.Posts.TapeStep), spec.Posts.IsPostGiven),
            Layup = Tagend.Specs.Layup.Of(colors, spec.Layup.Tail),
            Separators = spec.Separators.Select(s => new Separator(s.Name, In(s.Position), colors.Sum(c => c.Item2) / 2)).ToValueList(),
            Servings = spec.Servings.Select(s => s with { From = Least(In(s.From), In(s.To)), To = Most(In(s.From), In(s.To)) }).ToValueList(),
            Marks = spec.Marks.Select(m => m with { Position = In(m.Position) }).ToValueList(),
            Strength = new Strength(Some(spec.Strength.Breaking), spec.Strength.Floor is null ? null : Some(spec.DrawWeight!.Value) * Strength.SafetyFactor),
            Stretch = new Stretch(Some(spec.Stretch.Load), spec.Stretch.Minutes, spec.Stretch.Reading is { } reading ? Long(reading) : null),
            NockGroove = spec.NockGroove is { } groove ? Thick(groove) : null,
            EndLoops = spec.EndLoops is { } loops ? loops with { A = In(loops.A), B = In(loops.B) } : null,
            Yoke = spec.Yoke is { } yoke ? yoke with { Split = In(yoke.Split) } : null,
        };

        Length In(Length place) => Tagend.Measures.Length.FromNanometers(place.Nanometers % (end.Nanometers + 1));

        static Length Thick(Length diameter) => Tagend.Measures.Length.FromNanometers(1 + (diameter.Nanometers % 250_000_000));

        static Length Long(Length length) => Tagend.Measures.Length.FromNanometers(10_000_000 + length.Nanometers);

        static Length Least(Length a, Length b) => Tagend.Measures.Length.Min(a, b);

        static Length Most(Length a, Length b) => Tagend.Measures.Length.Max(a, b);

        static Force Some(Force force) => Tagend.Measures.Force.FromMicronewtons(force.Micronewtons + 1);
    }

    private static string Capital(string name) => name.ToUpperInvariant();
}
