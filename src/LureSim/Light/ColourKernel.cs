using System.Numerics;

namespace LureSim.Light;

/// <summary>The inner loop of the colour chart: tables are laid out once, then any number of depths is computed without allocation.</summary>
/// <remarks>Not safe for use by two threads at once: it owns its scratch memory.</remarks>
internal sealed class ColourKernel
{
    /// <summary>Exposure of the swatches: a perfect white is shown at 85 % of the screen's white, so that a fluorescent colour brighter than white paint keeps its hue; in coloured light darker, so that white keeps its tint (<see cref="Srgb.RoomFor"/>).</summary>
    public const double DisplayExposure = 0.85;

    private readonly LightField field;
    private readonly LureColour[] colours;
    private readonly double[] reflectances; // colour-major rows
    private readonly double[] irradiance;
    private readonly double[] weighted;     // irradiance times xbar, ybar, zbar, three rows
    private readonly double[] exitance;
    private readonly double[] observer;     // xbar, ybar, zbar times the step, three rows
    private readonly int count;
    private readonly Xyz surfaceWhite;
    private readonly ChromaticAdaptation.Adaptation surfaceAdaptation;

    public ColourKernel(LightField field, IReadOnlyList<LureColour> colours)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(colours);
        if (colours.Count == 0)
            throw new ArgumentException("A chart needs a colour.", nameof(colours));
        this.field = field;
        this.colours = [.. colours];
        WavelengthGrid grid = WavelengthGrid.Visible;
        count = grid.Count;
        reflectances = new double[this.colours.Length * count];
        for (int c = 0; c < this.colours.Length; c++)
            this.colours[c].Reflectance.Values.CopyTo(reflectances.AsSpan(c * count));
        irradiance = new double[count];
        exitance = new double[count];
        weighted = new double[3 * count];
        observer = new double[3 * count];
        for (int i = 0; i < count; i++)
        {
            observer[i] = Colorimetry.XBar[i] * grid.StepNm;
            observer[count + i] = Colorimetry.YBar[i] * grid.StepNm;
            observer[(2 * count) + i] = Colorimetry.ZBar[i] * grid.StepNm;
        }

        field.Downwelling(0.0, irradiance);
        surfaceWhite = Project(irradiance, observer);
        surfaceAdaptation = surfaceWhite.Y > 0.0
            ? ChromaticAdaptation.Adaptation.Between((1.0 / surfaceWhite.Y) * surfaceWhite, Colorimetry.D65White)
            : default;
    }

    /// <summary>Computes all colours at all depths.</summary>
    /// <param name="depths">Depths (m).</param>
    /// <param name="cells">Room for depths times colours cells, depth-major.</param>
    /// <param name="illuminance">Room for one illuminance a depth (lx).</param>
    public void Compute(ReadOnlySpan<double> depths, Span<ColourCell> cells, Span<double> illuminance)
    {
        for (int d = 0; d < depths.Length; d++)
        {
            field.Downwelling(depths[d], irradiance);
            for (int i = 0; i < count; i++)
            {
                double energy = irradiance[i];
                weighted[i] = energy * observer[i];
                weighted[count + i] = energy * observer[count + i];
                weighted[(2 * count) + i] = energy * observer[(2 * count) + i];
            }

            Xyz white = Project(irradiance, observer);
            illuminance[d] = Colorimetry.MaximumLuminousEfficacy * white.Y;
            VisionState vision = VisionAt(illuminance[d]);
            ChromaticAdaptation.Adaptation adaptation = ChromaticAdaptation.Adaptation.Between(white, Colorimetry.D65White);
            double degree = ChromaticAdaptation.Degree(white, illuminance[d] / Math.PI);
            ChromaticAdaptation.Adaptation eye = ChromaticAdaptation.Adaptation.InPart(white, surfaceWhite, Colorimetry.D65White, degree);
            double exposure = DisplayExposure * Srgb.RoomFor(DisplayExposure * eye.Apply(white));
            for (int c = 0; c < colours.Length; c++)
                cells[(d * colours.Length) + c] = Cell(Stimulus(c), white, adaptation, eye, exposure, vision);
        }
    }

    /// <summary>
    /// Luminous irradiance (W/m2) at which there is no light: a photon of 555 nm carries 3.6e-19 J, so less than one photon falls on a square metre in a
    /// thousand years. Numbers further down lose their digits and cannot be divided by.
    /// </summary>
    internal const double NoLight = 1e-30;

    /// <summary>State of the human eye looking at white under an illuminance: luminance E/pi.</summary>
    internal static VisionState VisionAt(double illuminance) => (illuminance / Math.PI) switch
    {
        >= 5.0 => VisionState.Photopic,
        >= 0.005 => VisionState.Mesopic,
        _ => VisionState.Scotopic,
    };

    private Xyz Stimulus(int colour)
    {
        Xyz diffuse = Project(reflectances.AsSpan(colour * count, count), weighted);
        if (!colours[colour].IsFluorescent)
            return diffuse;
        Array.Clear(exitance);
        foreach (Fluorophore dye in colours[colour].Dyes)
            dye.AddExitance(irradiance, exitance);
        return diffuse + Project(exitance, observer);
    }

    /// <summary>Three dot products at once: the spectrum is loaded once and the three sums do not wait for each other.</summary>
    private Xyz Project(ReadOnlySpan<double> spectrum, double[] rows)
    {
        ReadOnlySpan<double> first = rows.AsSpan(0, count), second = rows.AsSpan(count, count), third = rows.AsSpan(2 * count, count);
        Vector<double> x = Vector<double>.Zero, y = Vector<double>.Zero, z = Vector<double>.Zero;
        int i = 0;
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count)
        {
            var value = new Vector<double>(spectrum[i..]);
            x += value * new Vector<double>(first[i..]);
            y += value * new Vector<double>(second[i..]);
            z += value * new Vector<double>(third[i..]);
        }

        double sumX = Vector.Sum(x), sumY = Vector.Sum(y), sumZ = Vector.Sum(z);
        for (; i < count; i++)
        {
            sumX += spectrum[i] * first[i];
            sumY += spectrum[i] * second[i];
            sumZ += spectrum[i] * third[i];
        }

        return new Xyz(sumX, sumY, sumZ);
    }

    private ColourCell Cell(Xyz stimulus, Xyz white, in ChromaticAdaptation.Adaptation adaptation, in ChromaticAdaptation.Adaptation eye, double exposure, VisionState vision)
    {
        // Without any light there is nothing to divide by: black on every count.
        if (!(surfaceWhite.Y > NoLight))
            return default;
        Xyz fromSurface = (1.0 / surfaceWhite.Y) * stimulus;
        Xyz unadapted = surfaceAdaptation.Apply(fromSurface);
        if (!(white.Y > NoLight))
            return new ColourCell(fromSurface, 0.0, default, default, Colorimetry.ToLab(unadapted, Colorimetry.D65White), default, Srgb.Vivid(DisplayExposure * unadapted), ColourWord.Unseen);
        Xyz adapted = adaptation.Apply(stimulus);
        Xyz seen = eye.Apply(stimulus);
        Lab lab = Colorimetry.ToLab(seen, Colorimetry.D65White);
        return new ColourCell(
            fromSurface,
            stimulus.Y / white.Y,
            Colorimetry.ToLab(adapted, Colorimetry.D65White),
            lab,
            Colorimetry.ToLab(unadapted, Colorimetry.D65White),
            Srgb.Vivid(exposure * seen),
            Srgb.Vivid(DisplayExposure * unadapted),
            Word(lab, vision));
    }

    private static ColourWord Word(Lab seen, VisionState vision) => vision == VisionState.Scotopic
        ? ColourWord.Unseen
        : seen.L switch
        {
            < ColourLimits.NearBlackLightness when seen.Chroma < ColourLimits.DeepChroma => ColourWord.NearBlack,
            < ColourLimits.DarkLightness => ColourWord.Dark,
            _ when seen.Chroma >= ColourLimits.LivelyChroma => ColourWord.Bright,
            >= ColourLimits.BrightLightness => ColourWord.Light,
            _ => ColourWord.Muted,
        };
}

/// <summary>Limits between the colour words and of the dark criteria.</summary>
public static class ColourLimits
{
    /// <summary>
    /// L* 30, relative luminance 0.0624, about Munsell value 3. Colour names call black what lies under about value 2.5 (Kelly
    /// and Judd 1976, kelly1976color), and a real matt black lure of 3-5 % reflectance has L* 20-27; 30 is the first step above.
    /// </summary>
    public const double NearBlackLightness = 30.0;

    /// <summary>L* 45, the middle of what is called dark (common usage; Munsell value about 4.5).</summary>
    public const double DarkLightness = 45.0;

    /// <summary>L* 70, Munsell value about 7: light colours (common usage).</summary>
    public const double BrightLightness = 70.0;

    /// <summary>Chroma from which a colour counts as lively (common usage; Munsell chroma about 8).</summary>
    public const double LivelyChroma = 40.0;

    /// <summary>Chroma from which even a very dark colour keeps its hue name, such as deep blue (common usage).</summary>
    public const double DeepChroma = 30.0;

    /// <summary>Chroma below which a colour reads as black, grey or white: about Munsell chroma 2, where Kelly and Judd 1976 change from '-ish grey' to a hue name.</summary>
    public const double GreyChroma = 10.0;

    /// <summary>Relative luminance of <see cref="NearBlackLightness"/>.</summary>
    public static double NearBlackLuminance { get; } = Colorimetry.LuminanceOfLightness(NearBlackLightness);
}
