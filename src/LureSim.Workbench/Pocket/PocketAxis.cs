using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Workbench.Pocket;

/// <summary>What a table of the pocket page is laid out by.</summary>
internal enum PocketAxisKind
{
    /// <summary>Current at the surface (m/s), negative against the spot's direction.</summary>
    Current,

    /// <summary>Depth of the water (m).</summary>
    Depth,

    /// <summary>Reel speed (m/s).</summary>
    Speed,

    /// <summary>Length of the cast (m).</summary>
    Cast,
}

/// <summary>One axis of a table, by its computed steps.</summary>
/// <param name="Kind">What varies.</param>
/// <param name="Steps">Steps (SI), increasing, two or more; the scenario's own value is one of them.</param>
internal sealed record PocketAxis(PocketAxisKind Kind, IReadOnlyList<double> Steps)
{
    /// <summary>The axis with a step in the middle of each of its intervals.</summary>
    public PocketAxis Refined()
    {
        List<double> steps = [Steps[0]];
        for (int i = 1; i < Steps.Count; i++)
        {
            steps.Add((Steps[i - 1] + Steps[i]) / 2);
            steps.Add(Steps[i]);
        }

        return this with { Steps = steps };
    }

    /// <summary>Where a value lies: the step below it, and the part of the way to the next, 0 to 1. Beyond the ends it is the end.</summary>
    /// <param name="value">The value (SI).</param>
    public (int Below, double Part) Place(double value)
    {
        if (value <= Steps[0]) return (0, 0);
        int last = Steps.Count - 1;
        if (value >= Steps[last]) return (last - 1, 1);
        int below = 0;
        while (value > Steps[below + 1]) below++;
        return (below, (value - Steps[below]) / (Steps[below + 1] - Steps[below]));
    }

    /// <summary>A scenario and a presentation with a value of this axis.</summary>
    public (Spot Spot, Presentation Way) Apply(Spot spot, Presentation way, double value) => Kind switch
    {
        PocketAxisKind.Current => (SpotChange.WithCurrent(spot, value), way),
        PocketAxisKind.Depth => (SpotChange.WithDepth(spot, value), way),
        PocketAxisKind.Speed => (spot, way with { RetrieveSpeed = value }),
        PocketAxisKind.Cast => (spot, way with { CastLength = value }),
        _ => throw new ArgumentOutOfRangeException(nameof(value), Kind, "Not an axis."),
    };
}
