using LureSim.Light;

namespace LureSim.Sight;

/// <summary>Four ways to say that a colour has gone dark.</summary>
public enum DarkCriterion
{
    /// <summary>Its luminance falls below 6.2 % of that of a perfect white at the same depth (L* 30, Munsell value 3).</summary>
    LuminanceAgainstWhite,

    /// <summary>Its chroma, to an eye adapted to the light there, falls below 10: no hue is left.</summary>
    Chroma,

    /// <summary>Seen level, its side is less than half as bright as the water behind it (contrast -0.5 or below): a plain silhouette.</summary>
    ContrastToWater,

    /// <summary>No cone of the fish catches more than 6.2 % of what it catches from a perfect white at the same depth.</summary>
    FishCones,
}

/// <summary>The depth at which a colour goes dark by one criterion.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Depth">First depth at which it is met (m); 0 when it is met at the surface, null when it is not met while a person can see at all.</param>
/// <param name="DeepestSearched">Depth to which it was searched (m).</param>
public sealed record DarkDepth(DarkCriterion Criterion, double? Depth, double DeepestSearched)
{
    /// <summary>
    /// Depths (m) at both ends of the peaks that a borrowed eye may have, in the order of <see cref="FishEye.Ends"/>; empty where the eye does
    /// not count or is measured. An entry is null as <see cref="Depth"/> is.
    /// </summary>
    public IReadOnlyList<double?> AtEnds { get; init; } = [];

    /// <summary>True where the peaks that are not known decide: the depths at both ends are more than a factor of 1.5 (or 1 m) apart, or one of them is not met.</summary>
    public bool CannotTell => AtEnds.Count == 2 && (AtEnds[0] is not { } a || AtEnds[1] is not { } b
        ? AtEnds[0] != AtEnds[1]
        : Math.Abs(a - b) > Math.Max(1.0, 0.5 * Math.Min(a, b)));
}

/// <summary>Depths at which a colour goes dark.</summary>
public static class Darkening
{
    /// <summary>Weber contrast to the water at which a target counts as a silhouette, -0.5: half as bright as the water (this model's choice).</summary>
    public const double SilhouetteContrast = -0.5;

    private const double DarkestIlluminance = 0.005 * Math.PI; // lx on white at the end of human colour vision
    private const int ScanSteps = 240;

    /// <summary>The depth at which a colour goes dark by each criterion.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="colour">The colour.</param>
    /// <param name="fish">The eye for the cone criterion.</param>
    /// <param name="deepest">Depth to search to (m), above 0 to 1000; the search also ends where a person sees no colour any more.</param>
    /// <returns>One result a criterion, in the order of the enumeration.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside its range.</exception>
    public static IReadOnlyList<DarkDepth> Of(LightField field, LureColour colour, FishEye fish, double deepest = 100.0)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(colour);
        ArgumentNullException.ThrowIfNull(fish);
        _ = Guard.InRange(deepest, 1e-3, 1000.0, nameof(deepest), "m");
        double end = Crossing.First(d => Math.Log(field.Illuminance(d) / DarkestIlluminance), 0.0, deepest, ScanSteps) ?? deepest;
        return [.. Enum.GetValues<DarkCriterion>().Select(criterion =>
        {
            double? depth = end > 0.0 ? Crossing.First(d => Margin(criterion, field, colour, fish, d), 0.0, end, ScanSteps) : 0.0;
            return new DarkDepth(criterion, depth, end)
            {
                AtEnds = criterion != DarkCriterion.FishCones ? [] : [.. fish.Ends.Select(other =>
                    end > 0.0 ? Crossing.First(d => Margin(criterion, field, colour, other, d), 0.0, end, ScanSteps) : 0.0)],
            };
        })];
    }

    /// <summary>How far a colour is from being dark by a criterion at a depth: positive while it is not, zero at the limit. Dimensionless.</summary>
    /// <param name="criterion">The criterion.</param>
    /// <param name="field">Light in the water.</param>
    /// <param name="colour">The colour.</param>
    /// <param name="fish">The eye for the cone criterion.</param>
    /// <param name="depth">Depth (m), 0-1000.</param>
    public static double Margin(DarkCriterion criterion, LightField field, LureColour colour, FishEye fish, double depth)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(colour);
        ArgumentNullException.ThrowIfNull(fish);
        switch (criterion)
        {
            case DarkCriterion.LuminanceAgainstWhite:
                return ColourChart.Of(field, [colour], [depth])[0, 0].RelativeLuminance - ColourLimits.NearBlackLuminance;
            case DarkCriterion.Chroma:
                return ColourChart.Of(field, [colour], [depth])[0, 0].Chroma - ColourLimits.GreyChroma;
            case DarkCriterion.ContrastToWater:
                double background = field.Radiance(ViewDirection.Level, depth).Dot(Colorimetry.YBar);
                Spectrum side = (1.0 / Math.PI) * colour.Exitance(field.FaceIrradiance(ViewDirection.Level, depth));
                return background > 0.0 ? (side.Dot(Colorimetry.YBar) / background) - 1.0 - SilhouetteContrast : 0.0;
            case DarkCriterion.FishCones:
                Spectrum white = field.Downwelling(depth);
                Spectrum reflected = colour.Exitance(white);
                double best = 0.0;
                foreach (Photoreceptor cone in fish.Cones)
                {
                    double reference = cone.Catch(white);
                    if (reference > 0.0)
                        best = Math.Max(best, cone.Catch(reflected) / reference);
                }

                return best - ColourLimits.NearBlackLuminance;
            default:
                throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Unknown criterion.");
        }
    }
}
