namespace LureSim.Light;

/// <summary>A lure against the water behind it at growing distance, for a strip of pictures.</summary>
/// <param name="Name">The lure.</param>
/// <param name="Direction">Where the eye looks.</param>
/// <param name="Depth">Depth of the lure (m).</param>
/// <param name="Distances">Distances (m).</param>
/// <param name="Views">What is seen at each distance.</param>
/// <param name="Swatches">Lure and water as screen colours at each distance, all at one exposure.</param>
public sealed record SilhouetteStrip(
    string Name,
    ViewDirection Direction,
    double Depth,
    IReadOnlyList<double> Distances,
    IReadOnlyList<Seen> Views,
    IReadOnlyList<SeenSwatches> Swatches)
{
    /// <summary>Computes a strip.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="lure">The lure, by its mean radiance.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the lure (m), 0-1000.</param>
    /// <param name="distances">Distances (m), 0-500; those that would put the eye out of the water are cut short.</param>
    public static SilhouetteStrip Of(LightField field, LurePattern lure, ViewDirection direction, double depth, IReadOnlyList<double> distances)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(lure);
        ArgumentNullException.ThrowIfNull(distances);
        Spectrum inherent = lure.Inherent(field, direction, depth);
        double[] cut = [.. distances.Select(d => Math.Min(d, Appearance.FarthestDistance(field, direction, depth)))];
        Seen[] views = [.. cut.Select(d => Appearance.Through(field, inherent, direction, depth, d))];

        // One exposure for the whole strip: brightness can be compared along it.
        double top = views.Select(Appearance.BrightestOf).DefaultIfEmpty(0.0).Max();
        return new SilhouetteStrip(lure.Name, direction, depth, cut, views, [.. views.Select(v => Appearance.Swatches(field, v, top))]);
    }
}
