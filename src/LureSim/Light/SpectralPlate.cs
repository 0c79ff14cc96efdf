namespace LureSim.Light;

/// <summary>Light times colour is what is left, at one depth.</summary>
/// <param name="Depth">Depth (m).</param>
/// <param name="Illuminant">Downwelling irradiance over its largest value just below the surface, dimensionless.</param>
/// <param name="Left">Light that leaves the surface (reflected and fluorescent) on the same scale.</param>
/// <param name="LightLeft">Luminance of the light over that at the surface.</param>
/// <param name="RelativeLuminance">Luminance of the colour over that of white at this depth.</param>
/// <param name="Cell">Colours, swatches and the word for it.</param>
public sealed record PlateRow(
    double Depth, Spectrum Illuminant, Spectrum Left, double LightLeft, double RelativeLuminance, ColourCell Cell);

/// <summary>The lesson 'why red turns black': illuminant x reflectance = what is left, by depth, for one colour in one water.</summary>
/// <param name="Colour">The colour.</param>
/// <param name="Field">Light in the water.</param>
/// <param name="Rows">One row a depth.</param>
public sealed record SpectralPlate(LureColour Colour, LightField Field, IReadOnlyList<PlateRow> Rows)
{
    /// <summary>Computes a plate.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="colour">The colour.</param>
    /// <param name="depths">One or more depths (m), 0-1000.</param>
    /// <exception cref="ArgumentException">No depths.</exception>
    public static SpectralPlate Of(LightField field, LureColour colour, IReadOnlyList<double> depths)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(colour);
        ArgumentNullException.ThrowIfNull(depths);
        ColourChart chart = ColourChart.Of(field, [colour], depths);
        Spectrum surface = field.Downwelling(0.0);
        double top = surface.Maximum();
        double scale = top > 0.0 ? 1.0 / top : 0.0;
        double surfaceLuminance = surface.Dot(Colorimetry.YBar);
        return new SpectralPlate(colour, field, [.. depths.Select((depth, i) =>
        {
            Spectrum light = field.Downwelling(depth);
            return new PlateRow(
                depth,
                scale * light,
                scale * colour.Exitance(light),
                surfaceLuminance > 0.0 ? light.Dot(Colorimetry.YBar) / surfaceLuminance : 0.0,
                chart[i, 0].RelativeLuminance,
                chart[i, 0]);
        })]);
    }
}
