using LureSim.Light;

namespace LureSim.Sight;

/// <summary>A lure of one or several colours as an eye makes it out.</summary>
/// <param name="Distance">Distance from which it is made out (m): as a whole, or by one of its parts where that carries farther; 0 when it is not made out.</param>
/// <param name="Part">The part that carries farther than the whole; null where the whole does.</param>
/// <param name="Mode">What that whole or part does to the light.</param>
/// <param name="PartsApart">Distance to which two of its parts can be told apart (m), 0 where they never can; null for a lure of one colour from there.</param>
public sealed record LureSight(double Distance, PatternPart? Part, SightMode Mode, double? PartsApart);

/// <summary>Something to be made out: a lure or one of its parts.</summary>
/// <param name="Part">The part; null for the whole.</param>
/// <param name="Inherent">Its radiance at no distance (W/(m2 sr nm)).</param>
/// <param name="Size">Its size (m): the square root of its area.</param>
public readonly record struct SightTarget(PatternPart? Part, Spectrum Inherent, double Size);

/// <summary>How far off lures are made out, and how like something else they look, part by part.</summary>
/// <remarks>
/// From afar the parts run together: the whole counts by its mean radiance (<see cref="LurePattern.Inherent"/>) at its whole size. A part counts by its own radiance at its own
/// size, the square root of its share of the area: a black back that stands out carries a lure whose mean colour is that of the water. The distances are those of
/// <see cref="SightScene"/>; the greatest of them is the lure's.
/// </remarks>
public static class LureSights
{
    /// <summary>
    /// Difference in just-noticeable steps up to which one thing is a likeness of another, 1: what the receptor-noise model itself says cannot be told apart (Vorobyev and Osorio 1998,
    /// vorobyev1998receptor: 75 % of choices right at 1). A looser limit would not do: red paint stands 3 steps from the brown of a shrimp to a fish without a long-wave cone in clear water.
    /// </summary>
    public const double LikenessSteps = 1.0;

    // Steps of the scan for the distance at which parts run together.
    private const int ApartSteps = 40;

    /// <summary>How an eye makes a lure out.</summary>
    /// <param name="scene">The eye; its target size is that of the whole lure.</param>
    /// <param name="lure">The lure.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static LureSight Of(SightScene scene, LurePattern lure)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(lure);
        LureSight? best = null;
        foreach (SightTarget target in Targets(scene.Field, scene.Direction, scene.TargetDepth, scene.TargetSize, lure))
        {
            Sighting sighting = scene.Sight(lure.Name, target.Inherent, target.Size);
            if (best is null || sighting.Distance > best.Distance)
                best = new LureSight(sighting.Distance, target.Part, sighting.Mode, null);
        }

        IReadOnlyList<PatternRegion> regions = Regions(lure, scene.Direction);
        return regions.Count < 2 ? best! : best! with { PartsApart = ApartTo(scene, regions, best!.Distance) };
    }

    /// <summary>What there is to be made out of a lure: the whole by its mean radiance, then, where it shows several colours, each of them alone.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the lure (m), 0-500.</param>
    /// <param name="size">Size of the whole lure (m), above 0.</param>
    /// <param name="lure">The lure.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<SightTarget> Targets(LightField field, ViewDirection direction, double depth, double size, LurePattern lure)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(lure);
        var whole = new SightTarget(null, lure.Inherent(field, direction, depth), size);
        IReadOnlyList<PatternRegion> regions = Regions(lure, direction);
        return regions.Count < 2 ? [whole] : [whole, .. regions.Select(region => new SightTarget(region.Part, Appearance.Inherent(field, region.Colour, direction, depth), Size(size, region)))];
    }

    /// <summary>
    /// How far a lure is from looking like something else close up, just-noticeable steps to the cones (<see cref="SightScene.DifferenceCloseUp"/>): where parts of either can be
    /// told apart at a distance, the root of the mean square over the parts by their areas, each against the same part of the other; otherwise the difference of the means.
    /// </summary>
    /// <param name="scene">The eye; its target size is that of both.</param>
    /// <param name="lure">The lure.</param>
    /// <param name="other">What it is to look like.</param>
    /// <param name="distance">Distance at which the parts must be told apart (m), above 0.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static double Difference(SightScene scene, LurePattern lure, LurePattern other, double distance)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(lure);
        ArgumentNullException.ThrowIfNull(other);
        double means = scene.DifferenceCloseUp(lure.Inherent(scene.Field, scene.Direction, scene.TargetDepth), other.Inherent(scene.Field, scene.Direction, scene.TargetDepth));

        // The parts of the one that has more of them.
        IReadOnlyList<PatternRegion> own = Regions(lure, scene.Direction), theirs = Regions(other, scene.Direction);
        if (!Apart(scene, own, distance) && !Apart(scene, theirs, distance))
            return means;
        double square = 0.0;
        foreach (PatternRegion region in (own.Count >= theirs.Count ? lure : other).Face(scene.Direction))
        {
            // Whatever is eaten has an eye: a drawn one makes no lure unlike it.
            if (region.Part == PatternPart.Eye)
                continue;
            double steps = scene.DifferenceCloseUp(Inherent(scene, lure.ColourOf(region.Part)), Inherent(scene, other.ColourOf(region.Part)));
            square += region.Share * steps * steps;
        }

        return Math.Max(means, Math.Sqrt(square));
    }

    // Parts of one colour are one part, named for the largest of them.
    private static IReadOnlyList<PatternRegion> Regions(LurePattern lure, ViewDirection direction) =>
        [.. lure.Face(direction).GroupBy(region => region.Colour).Select(group => group.MaxBy(region => region.Share) with { Share = group.Sum(region => region.Share) })];

    private static double Size(double whole, PatternRegion region) => Math.Max(1e-3, Math.Sqrt(region.Share) * whole);

    private static Spectrum Inherent(SightScene scene, LureColour colour) => Appearance.Inherent(scene.Field, colour, scene.Direction, scene.TargetDepth);

    // Two parts are told apart where they differ by a step at the size of the smaller.
    private static bool Apart(SightScene scene, IReadOnlyList<PatternRegion> regions, double distance)
    {
        for (int i = 1; i < regions.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double size = Math.Min(Size(scene.TargetSize, regions[i]), Size(scene.TargetSize, regions[j]));
                if (scene.Difference(Inherent(scene, regions[i].Colour), Inherent(scene, regions[j].Colour), size, distance) >= 1.0)
                    return true;
            }
        }

        return false;
    }

    // Contrast falls with distance: the first step of the scan at which no two parts differ ends it.
    private static double ApartTo(SightScene scene, IReadOnlyList<PatternRegion> regions, double farthest)
    {
        const double Nearest = 0.02; // m
        if (farthest <= Nearest)
            return 0.0;
        double apart = 0.0;
        for (int k = 0; k <= ApartSteps; k++)
        {
            double distance = Nearest * Math.Pow(farthest / Nearest, k / (double)ApartSteps);
            if (!Apart(scene, regions, distance))
                return apart;
            apart = distance;
        }

        return apart;
    }
}
