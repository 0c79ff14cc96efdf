using System.Diagnostics;

namespace LureSim.Light;

/// <summary>What reaches an eye from a target and from the water behind it (W/(m2 sr nm)).</summary>
/// <param name="Direction">Where the eye looks.</param>
/// <param name="TargetDepth">Depth of the target (m).</param>
/// <param name="EyeDepth">Depth of the eye (m).</param>
/// <param name="Distance">Length of the sight line (m).</param>
/// <param name="Inherent">Radiance of the target itself, at no distance.</param>
/// <param name="Apparent">Radiance of the target at the eye: what is left of its own plus the light scattered into the path.</param>
/// <param name="Background">Radiance of the water beside the target at the eye.</param>
/// <param name="PathRadiance">The part of <paramref name="Apparent"/> that the water adds.</param>
public sealed record Seen(
    ViewDirection Direction,
    double TargetDepth,
    double EyeDepth,
    double Distance,
    Spectrum Inherent,
    Spectrum Apparent,
    Spectrum Background,
    Spectrum PathRadiance)
{
    /// <summary>Photopic Weber contrast of the target with the water beside it, (L - Lb)/Lb; -1 for black at no distance; 0 where no light comes from behind.</summary>
    public double LuminanceContrast
    {
        get
        {
            double behind = Background.Dot(Colorimetry.YBar);
            return behind > 0.0 ? (Apparent.Dot(Colorimetry.YBar) / behind) - 1.0 : 0.0;
        }
    }
}

/// <summary>Target and water behind it as two screen colours of one picture.</summary>
/// <param name="Target">The target.</param>
/// <param name="Water">The water behind it.</param>
/// <param name="LuminanceContrast">Photopic Weber contrast.</param>
public readonly record struct SeenSwatches(Srgb Target, Srgb Water, double LuminanceContrast);

/// <summary>From the radiance of a surface to what reaches an eye through water.</summary>
/// <remarks>
/// On every path the difference between target and background falls by exp(-c r), so
/// L(r) = Lb(eye) + (L(0) - Lb(target)) exp(-c r) (Duntley 1963, duntley1963light; Zaneveld and Pegau 2003, zaneveld2003robust). The
/// background is that of <see cref="LightField.Radiance"/> at both depths, which takes care of the change of light along an upward or downward path.
/// </remarks>
public static class Appearance
{
    /// <summary>Half angle of the lobe into which a foil spreads the mirrored sun (degrees), 10 (assumed; a wobbling, crumpled foil).</summary>
    private const double FlashLobeHalfAngle = 10.0 * Math.PI / 180.0;

    /// <summary>Radiance of a surface at no distance (W/(m2 sr nm)).</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="colour">The surface.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the target (m), 0-1000.</param>
    /// <remarks>
    /// Diffuse reflection and fluorescence of the light on the face turned to the eye, light from the far face let through
    /// and spread, the water behind seen through a clear body, and the mirror image of the water on the eye's own side.
    /// </remarks>
    public static Spectrum Inherent(LightField field, LureColour colour, ViewDirection direction, double depth)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(colour);
        Spectrum face = field.FaceIrradiance(direction, depth);
        Spectrum radiance = (1.0 / Math.PI) * colour.Exitance(face);
        if (colour.DiffuseTransmittance.Maximum() > 0.0)
            radiance += (1.0 / Math.PI) * (colour.DiffuseTransmittance * field.BackIrradiance(direction, depth));
        if (colour.ClearTransmittance.Maximum() > 0.0)
            radiance += colour.ClearTransmittance * field.Radiance(direction, depth);
        if (colour.MirrorReflectance.Maximum() > 0.0)
            radiance += colour.MirrorReflectance * field.Radiance(Opposite(direction), depth);
        return radiance;
    }

    /// <summary>Radiance of a mirror-like surface at the moment when it throws the sky overhead and the sun to the eye (W/(m2 sr nm)): the flash of a wobbling foil.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="colour">The surface.</param>
    /// <param name="depth">Depth of the target (m), 0-1000.</param>
    public static Spectrum Flash(LightField field, LureColour colour, double depth)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(colour);
        double lobe = 2.0 * Math.PI * (1.0 - Math.Cos(FlashLobeHalfAngle));
        double cosine = Math.Cos(WaterSurface.Refract(field.Surface.ZenithAngle));

        // The sun's image decays along its slant with beam attenuation less the light scattered within the lobe; absorption
        // plus backscattering is the smallest loss it can have, used here as the upper bound of a flash.
        Spectrum sun = field.DirectBelowSurface.Combine(
            field.Water.Optics.Absorption + field.Water.Optics.Backscattering,
            (irradiance, loss) => irradiance / cosine * Math.Exp(-loss * depth / cosine) / lobe);
        return (colour.MirrorReflectance * (field.Radiance(ViewDirection.Up, depth) + sun)) + ((1.0 / Math.PI) * colour.Exitance(field.Downwelling(depth)));
    }

    /// <summary>What an eye sees of a colour at a distance.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="colour">The surface.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="targetDepth">Depth of the target (m), 0-1000.</param>
    /// <param name="distance">Length of the sight line (m), 0-500; for an eye that looks down at most the depth of the target.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the eye would be in the air.</exception>
    public static Seen Of(LightField field, LureColour colour, ViewDirection direction, double targetDepth, double distance) =>
        Through(field, Inherent(field, colour, direction, targetDepth), direction, targetDepth, distance);

    /// <summary>What an eye sees of a target with a given radiance at a distance.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="inherent">Radiance of the target at no distance (W/(m2 sr nm)).</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="targetDepth">Depth of the target (m), 0-1000.</param>
    /// <param name="distance">Length of the sight line (m), 0-500; for an eye that looks down at most the depth of the target.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the eye would be in the air.</exception>
    public static Seen Through(LightField field, Spectrum inherent, ViewDirection direction, double targetDepth, double distance)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(inherent);
        _ = Guard.InRange(targetDepth, 0.0, 1000.0, nameof(targetDepth), "m");
        _ = Guard.InRange(distance, 0.0, Math.Min(500.0, FarthestDistance(field, direction, targetDepth)), nameof(distance), "m");
        double eyeDepth = Math.Max(0.0, targetDepth + (distance * direction.LightCosine()));
        Spectrum behindTarget = field.Radiance(direction, targetDepth);
        Spectrum behindAtEye = distance == 0.0 ? behindTarget : field.Radiance(direction, eyeDepth);
        Spectrum kept = field.Water.Optics.BeamAttenuation.Map(c => Math.Exp(-c * distance));

        // Path radiance is what the field has at the eye less what comes through from behind the target; rounding between
        // the two levels of light must not make it negative.
        Spectrum path = behindAtEye.Combine(behindTarget * kept, (at, through) => Math.Max(0.0, at - through));
        return new Seen(direction, targetDepth, eyeDepth, distance, inherent, (inherent * kept) + path, behindAtEye, path);
    }

    /// <summary>The longest sight line that stays between surface and bottom (m).</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="targetDepth">Depth of the target (m).</param>
    public static double FarthestDistance(LightField field, ViewDirection direction, double targetDepth)
    {
        ArgumentNullException.ThrowIfNull(field);
        double cosine = direction.LightCosine();
        double bottom = field.Bed?.Depth ?? 1000.0;
        return cosine < 0.0 ? targetDepth / -cosine : cosine > 0.0 ? Math.Max(0.0, bottom - targetDepth) / cosine : 500.0;
    }

    /// <summary>Target and water as screen colours, for an eye adapted in part to the colour of the light at the target (<see cref="ChromaticAdaptation.Degree"/>) and in brightness to what it looks at.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="seen">What is seen.</param>
    /// <returns>Both colours; the brighter of target and twice the water is shown at 85 % of the screen's white.</returns>
    public static SeenSwatches Swatches(LightField field, Seen seen)
    {
        ArgumentNullException.ThrowIfNull(seen);
        return Swatches(field, seen, BrightestOf(seen));
    }

    /// <summary>The luminance that fills the picture: the brighter of target and twice the water.</summary>
    internal static double BrightestOf(Seen seen) =>
        Math.Max(seen.Apparent.Dot(Colorimetry.YBar), 2.0 * seen.Background.Dot(Colorimetry.YBar));

    /// <summary>Screen colours with a given luminance at 85 % of the screen's white, for several views at one exposure.</summary>
    internal static SeenSwatches Swatches(LightField field, Seen seen, double top)
    {
        ArgumentNullException.ThrowIfNull(field);
        Xyz white = Colorimetry.Integrate(field.Downwelling(seen.TargetDepth));
        Xyz target = Colorimetry.Integrate(seen.Apparent), water = Colorimetry.Integrate(seen.Background);
        if (!(white.Y > 0.0 && top > 0.0))
            return new SeenSwatches(default, default, 0.0);
        double degree = ChromaticAdaptation.Degree(white, Colorimetry.MaximumLuminousEfficacy * white.Y / Math.PI);
        ChromaticAdaptation.Adaptation eye = ChromaticAdaptation.Adaptation.InPart((1.0 / white.Y) * white, Colorimetry.Integrate(field.Downwelling(0.0)), Colorimetry.D65White, degree);
        double exposure = ColourKernel.DisplayExposure * Srgb.RoomFor(ColourKernel.DisplayExposure * eye.Apply((1.0 / white.Y) * white)) / top;
        Srgb Show(Xyz value) => Srgb.FromXyz(eye.Apply(exposure * value));
        return new SeenSwatches(Show(target), Show(water), seen.LuminanceContrast);
    }

    private static ViewDirection Opposite(ViewDirection direction) => direction switch
    {
        ViewDirection.Up => ViewDirection.Down,
        ViewDirection.SlantUp or ViewDirection.Level => ViewDirection.Level,
        ViewDirection.Down => ViewDirection.Up,
        _ => throw new UnreachableException(),
    };
}
