using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>A stretch of thread that is wound on a piece, without its tails.</summary>
/// <param name="Color">Empty where the shop's stock decides.</param>
public sealed record ThreadUse(string Thread, string Color, Length Wound)
{
    /// <summary>All that is wound on a piece: its servings, those of a yoke's legs twice, and its served end loops.</summary>
    public static IEnumerable<ThreadUse> Of(BuildSpec spec)
    {
        foreach (var serving in spec.Servings)
        {
            var use = new ThreadUse(serving.Thread, serving.Color, spec.WorkOf(serving).Thread);
            yield return use;
            if (spec.IsOnLegs(serving))
            {
                yield return use;
            }
        }

        if (spec.EndLoops is { Serving: { } thread } loops)
        {
            var (pin, bundle) = (spec.Posts.PinDiameter, spec.Bundle);
            var (a, b) = (loops.AtA(pin, bundle, spec.Yoke), loops.AtB(pin, bundle));
            yield return OfLoop(spec, thread, a, ServingRole.EndA);
            if (spec.Yoke is not null)
            {
                yield return OfLoop(spec, thread, a, ServingRole.EndA);
            }

            yield return OfLoop(spec, thread, b, ServingRole.EndB);
        }
    }

    /// <summary>In the color of the serving at its end, where that is of the same thread.</summary>
    private static ThreadUse OfLoop(BuildSpec spec, LoopServing thread, EndLoop loop, ServingRole end)
    {
        var color = spec.Servings.FirstOrDefault(s => s.Role == end && s.Thread == thread.Thread)?.Color ?? thread.Color;
        var wound = ServingWork.Of(loop.Around, thread.ThreadDiameter, (loop.HalfLeg - thread.ThreadDiameter) * 2).Thread;
        return new ThreadUse(thread.Thread, color, wound);
    }
}
