using LureSim.Light;

namespace LureSim.Sight;

/// <summary>Sighting distance by colour and depth, for one eye and one direction. Immutable.</summary>
/// <param name="Eye">The eye.</param>
/// <param name="Direction">Where it looks.</param>
/// <param name="Colours">Columns.</param>
/// <param name="Depths">Rows: depths of the target (m).</param>
/// <param name="Sightings">One row a depth, one entry a colour, in their order.</param>
public sealed record SightChart(
    FishEye Eye,
    ViewDirection Direction,
    IReadOnlyList<LureColour> Colours,
    IReadOnlyList<double> Depths,
    IReadOnlyList<IReadOnlyList<Sighting>> Sightings)
{
    /// <summary>Distance (m) from which fish in tanks turned to prey of 5 cm or longer, a depth each (<see cref="ReactionDistance"/>).</summary>
    public required IReadOnlyList<double> Reactions { get; init; }

    /// <summary>Computes a chart.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="eye">The eye.</param>
    /// <param name="direction">Where it looks.</param>
    /// <param name="colours">Columns.</param>
    /// <param name="depths">Rows: depths of the target (m), 0-500.</param>
    /// <param name="targetSize">Size of the target (m).</param>
    public static SightChart Of(
        LightField field, FishEye eye, ViewDirection direction, IReadOnlyList<LureColour> colours, IReadOnlyList<double> depths, double targetSize = 0.04)
    {
        ArgumentNullException.ThrowIfNull(colours);
        ArgumentNullException.ThrowIfNull(depths);
        double[] reactions = [.. depths.Select(depth => ReactionDistance.In(field, depth))];
        return new SightChart(eye, direction, [.. colours], [.. depths], [.. depths.Select(depth =>
        {
            var scene = new SightScene(field, eye, direction, depth, targetSize);
            return (IReadOnlyList<Sighting>)[.. colours.Select(scene.Sight)];
        })])
        {
            Reactions = reactions,
        };
    }

    /// <summary>Colours by mean rank over the depths, best first: the choice when the depth is not known.</summary>
    public IReadOnlyList<LureColour> ByMeanRank()
    {
        double[] ranks = new double[Colours.Count];
        foreach (IReadOnlyList<Sighting> row in Sightings)
        {
            for (int c = 0; c < ranks.Length; c++)
                ranks[c] += row.Count(other => other.Distance > row[c].Distance);
        }

        return [.. Enumerable.Range(0, ranks.Length).OrderBy(c => ranks[c]).Select(c => Colours[c])];
    }
}
