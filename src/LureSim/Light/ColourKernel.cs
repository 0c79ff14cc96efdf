using System.Numerics;

namespace LureSim.Light;

/// <summary>The inner loop of the colour chart: tables are laid out once, then any number of depths is computed without allocation.</summary>
/// <remarks>Not safe for use by two threads at once: it owns its scratch memory.</remarks>
internal sealed class ColourKernel
{
    /// <summary>Exposure of the swatches: a perfect white is shown at 85 % of the screen's white, so that a fluorescent colour brighter than white paint keeps its hue.</summary>
    public const double DisplayExposure = 0.85;

    private readonly LightField _field;
    private readonly LureColour[] _colours;
    private readonly double[] _reflectances; // colour-major rows
    private readonly double[] _irradiance;
    private readonly double[] _weighted;     // irradiance times xbar, ybar, zbar, three rows
    private readonly double[] _exitance;
    private readonly double[] _observer;     // xbar, ybar, zbar times the step, three rows
    private readonly int _count;
    private readonly Xyz _surfaceWhite;
    private readonly ChromaticAdaptation.Adaptation _surfaceAdaptation;

    public ColourKernel(LightField field, IReadOnlyList<LureColour> colours)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(colours);
        if (colours.Count == 0)
            throw new ArgumentException("A chart needs a colour.", nameof(colours));
        _field = field;
        _colours = [.. colours];
        var grid = WavelengthGrid.Visible;
        _count = grid.Count;
        _reflectances = new double[_colours.Length * _count];
        for (var c = 0; c < _colours.Length; c++)
            _colours[c].Reflectance.Values.CopyTo(_reflectances.AsSpan(c * _count));
        _irradiance = new double[_count];
        _exitance = new double[_count];
        _weighted = new double[3 * _count];
        _observer = new double[3 * _count];
        for (var i = 0; i < _count; i++)
        {
            _observer[i] = Colorimetry.XBar[i] * grid.StepNm;
            _observer[_count + i] = Colorimetry.YBar[i] * grid.StepNm;
            _observer[(2 * _count) + i] = Colorimetry.ZBar[i] * grid.StepNm;
        }

        field.Downwelling(0.0, _irradiance);
        _surfaceWhite = Project(_irradiance, _observer);
        _surfaceAdaptation = _surfaceWhite.Y > 0.0
            ? ChromaticAdaptation.Adaptation.Between((1.0 / _surfaceWhite.Y) * _surfaceWhite, Colorimetry.D65White)
            : default;
    }

    /// <summary>Computes all colours at all depths.</summary>
    /// <param name="depths">Depths, m.</param>
    /// <param name="cells">Room for depths times colours cells, depth-major.</param>
    /// <param name="illuminance">Room for one illuminance a depth, lx.</param>
    public void Compute(ReadOnlySpan<double> depths, Span<ColourCell> cells, Span<double> illuminance)
    {
        for (var d = 0; d < depths.Length; d++)
        {
            _field.Downwelling(depths[d], _irradiance);
            for (var i = 0; i < _count; i++)
            {
                var energy = _irradiance[i];
                _weighted[i] = energy * _observer[i];
                _weighted[_count + i] = energy * _observer[_count + i];
                _weighted[(2 * _count) + i] = energy * _observer[(2 * _count) + i];
            }

            var white = Project(_irradiance, _observer);
            illuminance[d] = Colorimetry.MaximumLuminousEfficacy * white.Y;
            var vision = VisionAt(illuminance[d]);
            var adaptation = ChromaticAdaptation.Adaptation.Between(white, Colorimetry.D65White);
            for (var c = 0; c < _colours.Length; c++)
                cells[(d * _colours.Length) + c] = Cell(Stimulus(c), white, adaptation, vision);
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
        var diffuse = Project(_reflectances.AsSpan(colour * _count, _count), _weighted);
        if (!_colours[colour].IsFluorescent)
            return diffuse;
        Array.Clear(_exitance);
        foreach (var dye in _colours[colour].Dyes)
            dye.AddExitance(_irradiance, _exitance);
        return diffuse + Project(_exitance, _observer);
    }

    /// <summary>Three dot products at once: the spectrum is loaded once and the three sums do not wait for each other.</summary>
    private Xyz Project(ReadOnlySpan<double> spectrum, double[] rows)
    {
        ReadOnlySpan<double> first = rows.AsSpan(0, _count), second = rows.AsSpan(_count, _count), third = rows.AsSpan(2 * _count, _count);
        Vector<double> x = Vector<double>.Zero, y = Vector<double>.Zero, z = Vector<double>.Zero;
        var i = 0;
        for (; i <= _count - Vector<double>.Count; i += Vector<double>.Count)
        {
            var value = new Vector<double>(spectrum[i..]);
            x += value * new Vector<double>(first[i..]);
            y += value * new Vector<double>(second[i..]);
            z += value * new Vector<double>(third[i..]);
        }

        double sumX = Vector.Sum(x), sumY = Vector.Sum(y), sumZ = Vector.Sum(z);
        for (; i < _count; i++)
        {
            sumX += spectrum[i] * first[i];
            sumY += spectrum[i] * second[i];
            sumZ += spectrum[i] * third[i];
        }

        return new Xyz(sumX, sumY, sumZ);
    }

    private ColourCell Cell(Xyz stimulus, Xyz white, in ChromaticAdaptation.Adaptation adaptation, VisionState vision)
    {
        // Without any light there is nothing to divide by: black on every count.
        if (!(_surfaceWhite.Y > NoLight))
            return default;
        var fromSurface = (1.0 / _surfaceWhite.Y) * stimulus;
        var unadapted = _surfaceAdaptation.Apply(fromSurface);
        if (!(white.Y > NoLight))
            return new ColourCell(fromSurface, 0.0, default, Colorimetry.ToLab(unadapted, Colorimetry.D65White), default, Srgb.FromXyz(DisplayExposure * unadapted), ColourWord.Unseen);
        var adapted = adaptation.Apply(stimulus);
        var lab = Colorimetry.ToLab(adapted, Colorimetry.D65White);
        return new ColourCell(
            fromSurface,
            stimulus.Y / white.Y,
            lab,
            Colorimetry.ToLab(unadapted, Colorimetry.D65White),
            Srgb.FromXyz(DisplayExposure * adapted),
            Srgb.FromXyz(DisplayExposure * unadapted),
            Word(lab, vision));
    }

    private static ColourWord Word(Lab adapted, VisionState vision) => vision == VisionState.Scotopic
        ? ColourWord.Unseen
        : adapted.L switch
        {
            < ColourLimits.NearBlackLightness when adapted.Chroma < ColourLimits.DeepChroma => ColourWord.NearBlack,
            < ColourLimits.DarkLightness => ColourWord.Dark,
            >= ColourLimits.BrightLightness => ColourWord.Bright,
            _ => adapted.Chroma >= ColourLimits.LivelyChroma ? ColourWord.Bright : ColourWord.Muted,
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
