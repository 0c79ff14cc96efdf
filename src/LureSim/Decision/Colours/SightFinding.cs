using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>How far off the lures of a box are seen where the lure runs at one depth.</summary>
/// <param name="Depth">Depth of the lure (m).</param>
/// <param name="Reach">Distance from which a fish turns to a lure there (m).</param>
/// <param name="Seen">How each is seen, in the order of <see cref="SightFinding.Lures"/>.</param>
public sealed record SightRow(double Depth, double Reach, IReadOnlyList<SeenLure> Seen);

/// <summary>How far off the fish of a spot sees the colours of the tackle box, and what it then sees.</summary>
/// <param name="Eye">The eye.</param>
/// <param name="Lures">Colours of the box, then its lures of several colours.</param>
/// <param name="Rows">By depth of the lure, shallow first: seen from where fish in the strike zone are (<see cref="SightMeasure"/>).</param>
/// <param name="Strips">The chosen lure against the water at growing distance: level, then from below.</param>
public sealed record SightFinding(FishEye Eye, IReadOnlyList<LurePattern> Lures, IReadOnlyList<SightRow> Rows, IReadOnlyList<SilhouetteStrip> Strips)
{
    private const int StripPanels = 5;

    /// <summary>Works out sight at a spot.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="colours">What was found about its colours.</param>
    /// <param name="scale">Lengths in which the distances are round where there is room.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static SightFinding Of(Scenario scenario, ColourFinding colours, LengthScale scale)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(colours);
        ArgumentNullException.ThrowIfNull(scale);
        LightField field = colours.Chart.Field;
        double bottom = scenario.Spot.Depth;
        LureBody body = colours.Advice.Body;
        LurePattern[] lures = [.. colours.Advice.Colours.Select(worth => worth.Lure)];
        SightRow[] rows =
        [
            .. colours.Chart.Depths.Where(d => d > 0).Order().Select(depth =>
            {
                var measure = new SightMeasure(field, colours.Eye, body, ColourAdvice.LooksAt(scenario.Spot.StrikeZone, [new RunningDepth(depth, 1)], field, colours.Eye, body, lures));
                return new SightRow(depth, measure.Reach, [.. lures.Select(measure.Of)]);
            }),
        ];

        // A fish below needs water below the lure: no deeper than the middle of the water.
        double level = colours.RunningDepth, above = Math.Min(level, bottom / 2);
        LurePattern lure = colours.Advice.Choice.Lure;
        return new SightFinding(colours.Eye, lures, rows,
        [
            Strip(ViewDirection.Level, level),
            Strip(ViewDirection.Up, above),
        ]);

        SilhouetteStrip Strip(ViewDirection direction, double depth)
        {
            // Contrast is down to a hundredth at about eight tenths of the Secchi depth (4.8/c for a black target).
            double farthest = Math.Min(0.8 * field.Water.SecchiDepth, Appearance.FarthestDistance(field, direction, depth));
            return SilhouetteStrip.Of(field, lure, direction, depth, Distances(farthest, scale));
        }
    }

    // From nothing to the farthest, each about twice the one before, in round numbers.
    private static double[] Distances(double farthest, LengthScale scale)
    {
        double unit = scale.Unit;

        // Short paths need finer steps to stay apart.
        double step = farthest / unit < scale.FineBelow ? scale.FineStep : scale.Step;
        List<double> distances = [0];
        for (int i = StripPanels - 2; i >= 0; i--)
        {
            double exact = farthest / Math.Pow(2, i) / unit;
            double round = Math.Floor((exact / step) + 1e-9) * step;
            double distance = Math.Min(farthest, (round > 0 ? round : exact) * unit);
            if (distance > distances[^1] * 1.2)
                distances.Add(distance);
        }

        return [.. distances];
    }
}
