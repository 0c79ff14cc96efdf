using LureSim.Light;

namespace LureSim.Sight;

/// <summary>How long the parts of a lure stay apart.</summary>
public enum PartsApart
{
    /// <summary>The lure has one colour.</summary>
    OneColour,

    /// <summary>From a depth on they look alike.</summary>
    ToADepth,

    /// <summary>They stay apart as deep as was searched or as there is light.</summary>
    AsDeepAsThereIsLight,
}

/// <summary>The depth at which the parts of a lure can no longer be told apart, close up, by a person and by a fish.</summary>
/// <param name="Pattern">The lure.</param>
/// <param name="Person">First depth at which no two parts differ to an adapted person by more than <see cref="PersonStep"/> (m); null where they do as far as searched.</param>
/// <param name="Fish">First depth at which no two parts differ by a just-noticeable step in the colour channels of the fish (m); null where they do as far as searched.</param>
/// <param name="DeepestSearched">Depth to which it was searched (m): the bottom, or where a person sees no colour any more.</param>
/// <remarks>
/// Difference of brightness does not count for the fish, whose brightness channel tells light from dark parts as long as it sees at all; it
/// does for a person, in CIELAB. Lit from above, as in <see cref="ColourChart"/>.
/// </remarks>
public sealed record PatternParts(LurePattern Pattern, double? Person, double? Fish, double DeepestSearched)
{
    /// <summary>Difference in CIELAB that a person just notices side by side, 2.3 (Mahy et al. 1994, from memory).</summary>
    public const double PersonStep = 2.3;

    private const double DarkestIlluminance = 0.005 * Math.PI; // lx on white at the end of human colour vision
    private const int ScanSteps = 120;

    /// <summary>How it is for a person.</summary>
    public PartsApart ToPerson => State(Person);

    /// <summary>How it is for the fish.</summary>
    public PartsApart ToFish => State(Fish);

    /// <summary>Works it out.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="pattern">The lure.</param>
    /// <param name="fish">The eye.</param>
    /// <param name="deepest">Depth to search to (m), above 0 to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside its range.</exception>
    public static PatternParts Of(LightField field, LurePattern pattern, FishEye fish, double deepest)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(fish);
        _ = Guard.InRange(deepest, 1e-3, 1000.0, nameof(deepest), "m");
        IReadOnlyList<LureColour> parts = pattern.Parts;
        double end = Crossing.First(d => Math.Log(field.Illuminance(d) / DarkestIlluminance), 0.0, deepest, ScanSteps) ?? deepest;
        if (parts.Count < 2 || end <= 0.0)
            return new PatternParts(pattern, 0.0, 0.0, end);
        double[] noise = [.. fish.ConeNoise];
        return new PatternParts(
            pattern,
            Crossing.First(d => LargestToPerson(d) - PersonStep, 0.0, end, ScanSteps),
            Crossing.First(d => LargestToFish(d) - 1.0, 0.0, end, ScanSteps),
            end);

        double LargestToPerson(double depth)
        {
            ColourChart chart = ColourChart.Of(field, parts, [depth]);
            return Largest((i, j) => chart[0, i].Adapted.Distance(chart[0, j].Adapted));
        }

        double LargestToFish(double depth)
        {
            Spectrum light = field.Downwelling(depth);
            double[][] catches = [.. parts.Select(part => fish.Cones.Select(cone => cone.Catch(part.Exitance(light))).ToArray())];
            return Largest((i, j) => ReceptorNoise.Chromatic(catches[i], catches[j], noise));
        }

        double Largest(Func<int, int, double> difference)
        {
            double largest = 0.0;
            for (int i = 1; i < parts.Count; i++)
            {
                for (int j = 0; j < i; j++)
                    largest = Math.Max(largest, difference(i, j));
            }

            return largest;
        }
    }

    private PartsApart State(double? depth) => Pattern.Parts.Count < 2 ? PartsApart.OneColour
        : depth is null ? PartsApart.AsDeepAsThereIsLight
        : PartsApart.ToADepth;
}
