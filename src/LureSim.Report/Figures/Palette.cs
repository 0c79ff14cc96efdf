using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>Colours of the figures. No meaning rests on hue alone: marker, dash, thickness or a label repeats it.</summary>
internal static class Palette
{
    public static readonly OxyColor Ink = OxyColor.FromRgb(0x1B, 0x26, 0x31);
    public static readonly OxyColor SoftInk = OxyColor.FromRgb(0x4A, 0x58, 0x66);
    public static readonly OxyColor Grid = OxyColor.FromRgb(0xDD, 0xE3, 0xE8);
    public static readonly OxyColor Line = OxyColor.FromRgb(0x7C, 0x88, 0x93);
    public static readonly OxyColor Halo = OxyColor.FromArgb(0xE6, 0xFF, 0xFF, 0xFF);
    public static readonly OxyColor Water = OxyColor.FromRgb(0xE4, 0xF1, 0xF8);
    public static readonly OxyColor Surface = OxyColor.FromRgb(0x2B, 0x7B, 0xB0);
    public static readonly OxyColor Sky = OxyColor.FromRgb(0xFB, 0xFC, 0xFD);

    // Okabe & Ito (2008), a palette made for colour-blind readers.
    public static readonly OxyColor Yellow = OxyColor.FromRgb(0xF0, 0xE4, 0x42);
    public static readonly OxyColor BluishGreen = OxyColor.FromRgb(0x00, 0x9E, 0x73);
    public static readonly OxyColor Blue = OxyColor.FromRgb(0x00, 0x72, 0xB2);
    public static readonly OxyColor SkyBlue = OxyColor.FromRgb(0x56, 0xB4, 0xE9);
    public static readonly OxyColor Orange = OxyColor.FromRgb(0xE6, 0x9F, 0x00);
    public static readonly OxyColor Vermilion = OxyColor.FromRgb(0xD5, 0x5E, 0x00);

    /// <summary>The orange for marks and lines that no outline sets off from white.</summary>
    public static readonly OxyColor DarkOrange = OxyColor.FromRgb(0xB0, 0x6A, 0x00);

    public static readonly OxyColor Zone = OxyColor.FromRgb(0xF8, 0xEF, 0xB8);
    public static readonly OxyColor ZoneEdge = OxyColor.FromRgb(0x8A, 0x7A, 0x00);
    public static readonly OxyColor Grass = OxyColor.FromRgb(0x3E, 0x8E, 0x5A);

    // Ordered from light to dark, every step also darker in grey: weights stay in order for any eye and in
    // black-and-white print. The lightest keeps a contrast of 3:1 against the water.
    private static readonly OxyColor[] Weights =
    [
        OxyColor.FromRgb(0xE0, 0x5A, 0x1B),
        OxyColor.FromRgb(0xC9, 0x3B, 0x4B),
        OxyColor.FromRgb(0x9B, 0x28, 0x6F),
        OxyColor.FromRgb(0x63, 0x1E, 0x7C),
        OxyColor.FromRgb(0x33, 0x16, 0x62),
        OxyColor.FromRgb(0x0B, 0x0A, 0x2A),
    ];

    /// <summary>Colour of the weight at a place in the order, 0 lightest to 1 heaviest.</summary>
    public static OxyColor Weight(double place)
    {
        double at = Math.Clamp(place, 0, 1) * (Weights.Length - 1);
        int below = Math.Min((int)at, Weights.Length - 2);
        return OxyColor.Interpolate(Weights[below], Weights[below + 1], at - below);
    }

    /// <summary>Colour of a share from 0 to 1: the Cividis ramp (Nunez, Anderton and Renslow 2018), dark to light.</summary>
    public static OxyColor Share(double share)
    {
        IList<OxyColor> ramp = Cividis.Colors;
        double at = Math.Clamp(double.IsFinite(share) ? share : 0, 0, 1) * (ramp.Count - 1);
        return ramp[(int)Math.Round(at)];
    }

    /// <summary>Black or white, whichever reads better on a background (WCAG relative luminance).</summary>
    public static OxyColor TextOn(OxyColor background)
    {
        double luminance = Luminance(background);
        // Contrast is (lighter + 0.05) / (darker + 0.05); it is equal against black and white at 0.179.
        return luminance > 0.179 ? OxyColors.Black : OxyColors.White;
    }

    /// <summary>Relative luminance of an sRGB colour, 0 to 1.</summary>
    public static double Luminance(OxyColor colour) =>
        (0.2126 * Linear(colour.R)) + (0.7152 * Linear(colour.G)) + (0.0722 * Linear(colour.B));

    private static readonly OxyPalette Cividis = OxyPalettes.Cividis(101);

    private static double Linear(byte value)
    {
        double v = value / 255.0;
        return v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
    }
}
