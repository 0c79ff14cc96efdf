using LureSim.Data;

namespace LureSim.Light;

/// <summary>CIE 1931 tristimulus values. Y is luminance or relative luminance, by context.</summary>
/// <param name="X">X.</param>
/// <param name="Y">Y.</param>
/// <param name="Z">Z.</param>
public readonly record struct Xyz(double X, double Y, double Z)
{
    /// <summary>Sum of two stimuli (Grassmann).</summary>
    public static Xyz operator +(Xyz left, Xyz right) => new(left.X + right.X, left.Y + right.Y, left.Z + right.Z);

    /// <summary>Stimulus scaled by a number.</summary>
    public static Xyz operator *(double factor, Xyz value) => new(factor * value.X, factor * value.Y, factor * value.Z);

    /// <summary>Named form of +.</summary>
    public static Xyz Add(Xyz left, Xyz right) => left + right;

    /// <summary>Named form of *.</summary>
    public static Xyz Multiply(double left, Xyz right) => left * right;

    /// <summary>Chromaticity and luminance; black takes the chromaticity (0, 0), which no stimulus has.</summary>
    public XyY ToXyY()
    {
        double sum = X + Y + Z;
        return sum > 0.0 ? new XyY(X / sum, Y / sum, Y) : new XyY(0.0, 0.0, 0.0);
    }
}

/// <summary>CIE 1931 chromaticity and luminance.</summary>
/// <param name="ChromaticityX">x.</param>
/// <param name="ChromaticityY">y.</param>
/// <param name="Luminance">Y.</param>
public readonly record struct XyY(double ChromaticityX, double ChromaticityY, double Luminance);

/// <summary>CIELAB coordinates (CIE 15:2004, ISO/CIE 11664-4).</summary>
/// <param name="L">Lightness L*, 0 black to 100 for the white; above 100 for what is brighter than the white.</param>
/// <param name="A">a*, green to red.</param>
/// <param name="B">b*, blue to yellow.</param>
public readonly record struct Lab(double L, double A, double B)
{
    /// <summary>Chroma C*ab = sqrt(a*^2 + b*^2).</summary>
    public double Chroma => Math.Sqrt((A * A) + (B * B));

    /// <summary>Hue angle h_ab, degrees from 0 up to 360; 0 for a neutral.</summary>
    public double HueDegrees
    {
        get
        {
            if (A == 0.0 && B == 0.0)
                return 0.0;
            double hue = Math.Atan2(B, A) * (180.0 / Math.PI);
            return hue < 0.0 ? hue + 360.0 : hue;
        }
    }

    /// <summary>Colour difference of 1976, the distance in CIELAB.</summary>
    /// <param name="other">The other colour.</param>
    public double Distance(Lab other)
    {
        double l = L - other.L, a = A - other.A, b = B - other.B;
        return Math.Sqrt((l * l) + (a * a) + (b * b));
    }
}

/// <summary>The CIE 1931 2-degree observer, illuminant D65 and CIELAB.</summary>
public static class Colorimetry
{
    /// <summary>Maximum luminous efficacy, lm W-1, K_m of the photopic observer (CIE 15:2004 rounds 683.002 to 683).</summary>
    public const double MaximumLuminousEfficacy = 683.0;

    private static readonly ReferenceTable Observer = ReferenceTable.Optics("cie1931_2deg_xyz");

    /// <summary>x-bar of the CIE 1931 observer.</summary>
    public static Spectrum XBar { get; } = Observer.OnGrid(WavelengthGrid.Visible, "xbar");

    /// <summary>y-bar of the CIE 1931 observer, equal to the photopic luminous efficiency V.</summary>
    public static Spectrum YBar { get; } = Observer.OnGrid(WavelengthGrid.Visible, "ybar");

    /// <summary>z-bar of the CIE 1931 observer.</summary>
    public static Spectrum ZBar { get; } = Observer.OnGrid(WavelengthGrid.Visible, "zbar");

    /// <summary>Relative spectral power of CIE illuminant D65 (100 at 560 nm).</summary>
    public static Spectrum D65 { get; } = ReferenceTable.Optics("cie_d65").OnGrid(WavelengthGrid.Visible, "relative_power");

    /// <summary>White point of D65 at Y = 1 from the two tables above.</summary>
    public static Xyz D65White { get; } = (1.0 / Integrate(D65).Y) * Integrate(D65);

    /// <summary>Tristimulus integrals of a spectrum (unit of the spectrum times nm; multiply by 683 lm/W for photometric units).</summary>
    /// <param name="spectrum">A spectrum on <see cref="WavelengthGrid.Visible"/>.</param>
    /// <exception cref="ArgumentException">The spectrum is on another grid.</exception>
    public static Xyz Integrate(Spectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        return new Xyz(spectrum.Dot(XBar), spectrum.Dot(YBar), spectrum.Dot(ZBar));
    }

    /// <summary>Tristimulus values of a diffuse reflectance under an illuminant, with Y = 1 for the perfect white.</summary>
    /// <param name="reflectance">Reflectance, 0-1.</param>
    /// <param name="illuminant">Spectral power of the illuminant, any unit; not all zero.</param>
    /// <exception cref="ArgumentException">The illuminant has no luminance, or a grid differs.</exception>
    public static Xyz OfReflectance(Spectrum reflectance, Spectrum illuminant)
    {
        ArgumentNullException.ThrowIfNull(reflectance);
        ArgumentNullException.ThrowIfNull(illuminant);
        double white = illuminant.Dot(YBar);
        if (!(white > 0.0))
            throw new ArgumentException("The illuminant has no luminance.", nameof(illuminant));
        return (1.0 / white) * Integrate(reflectance * illuminant);
    }

    /// <summary>CIELAB against a white. A white without light gives black (0, 0, 0).</summary>
    /// <param name="value">The stimulus.</param>
    /// <param name="white">The white, in the same unit.</param>
    public static Lab ToLab(Xyz value, Xyz white)
    {
        if (!(white.X > 0.0 && white.Y > 0.0 && white.Z > 0.0))
            return default;
        double fx = LabFunction(value.X / white.X), fy = LabFunction(value.Y / white.Y), fz = LabFunction(value.Z / white.Z);
        return new Lab((116.0 * fy) - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz));
    }

    /// <summary>Relative luminance of a CIELAB lightness, the inverse of L*(Y).</summary>
    /// <param name="lightness">L*, 0 or more.</param>
    public static double LuminanceOfLightness(double lightness)
    {
        double f = (lightness + 16.0) / 116.0;
        return f > 6.0 / 29.0 ? f * f * f : (f - (4.0 / 29.0)) * 3.0 * 36.0 / 841.0;
    }

    private static double LabFunction(double ratio)
    {
        // delta = 6/29; the linear part keeps the function defined and finite for black and for slightly negative ratios.
        const double Delta = 6.0 / 29.0;
        return ratio > Delta * Delta * Delta
            ? Math.Cbrt(ratio)
            : (ratio / (3.0 * Delta * Delta)) + (4.0 / 29.0);
    }
}
