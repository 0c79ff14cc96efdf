using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>A picture of the rainbow for orientation, not colorimetry: hue by wavelength, faded at both ends.</summary>
internal static class Rainbow
{
    /// <summary>Colour of a wavelength (nm).</summary>
    public static OxyColor Colour(double nm)
    {
        (double r, double g, double b) = nm switch
        {
            < 440 => ((440 - nm) / 60, 0.0, 1.0),
            < 490 => (0.0, (nm - 440) / 50, 1.0),
            < 510 => (0.0, 1.0, (510 - nm) / 20),
            < 580 => ((nm - 510) / 70, 1.0, 0.0),
            < 645 => (1.0, (645 - nm) / 65, 0.0),
            _ => (1.0, 0.0, 0.0),
        };
        double fade = nm < 420 ? 0.4 + (0.6 * (nm - 380) / 40) : nm > 660 ? 0.4 + (0.6 * Math.Max(0, 740 - nm) / 80) : 1;
        return OxyColor.FromRgb(Channel(r, fade), Channel(g, fade), Channel(b, fade));
    }

    private static byte Channel(double value, double fade) => (byte)Math.Round(255 * Math.Clamp(value, 0, 1) * Math.Clamp(fade, 0, 1));
}
