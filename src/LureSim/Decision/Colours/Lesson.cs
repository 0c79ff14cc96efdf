using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>A lesson in light and sight: two waters to compare, and the spot of a scenario.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Clear">Red in clear water under a high sun.</param>
/// <param name="Stained">Red in tannin-stained water under the same sun.</param>
/// <param name="Colours">The colours of the box at the spot.</param>
/// <param name="Sight">How far off they are made out.</param>
/// <param name="Spot">Red beside white and chartreuse in the spot's own water.</param>
public sealed record Lesson(Scenario Scenario, RedLesson Clear, RedLesson Stained, ColourFinding Colours, SightFinding Sight, SpotLesson Spot)
{
    /// <summary>Elevation of the sun over the two waters, degrees: the one for which the tables of the documentation are made.</summary>
    public const double SunElevationDegrees = 60;

    // Typical of their kinds, and those of the documentation's tables: Secchi depths in m.
    private const double ClearSecchi = 15;
    private const double StainedSecchi = 3;

    /// <summary>Computes a lesson.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="scale">Lengths in which depths and distances are round.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1; null for none.</param>
    /// <param name="cancellation">Stops the work between its parts.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Lesson Compute(Scenario scenario, LengthScale scale, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(scale);
        Spot spot = scenario.Spot;
        cancellation.ThrowIfCancellationRequested();
        ColourFinding colours = SpotColours.At(scenario, (spot.StrikeZone.Top + spot.StrikeZone.Bottom) / 2, scale);
        Done(0.3);
        RedLesson clear = Red(WaterKind.ClearOcean, ClearSecchi);
        Done(0.55);
        RedLesson stained = Red(WaterKind.TanninStained, StainedSecchi);
        Done(0.8);
        SightFinding sight = SightFinding.Of(scenario, colours, scale);
        Done(1);
        return new Lesson(scenario, clear, stained, colours, sight, SpotLesson.Of(colours));

        RedLesson Red(WaterKind kind, double secchi)
        {
            // Deep water: the bottom of the spot would end the lesson too soon.
            var field = new LightField(OpticalWater.FromSecchi(kind, secchi), Atmosphere.Illuminate(SunElevationDegrees));
            double[] depths = [.. scale.LessonDepths.Select(depth => depth * scale.Unit)];
            return new RedLesson(kind, secchi, SpectralPlate.Of(field, LureColours.Red, depths), Darkening.Of(field, LureColours.Red, colours.Eye));
        }

        void Done(double share)
        {
            progress?.Report(share);
            cancellation.ThrowIfCancellationRequested();
        }
    }
}
