using LureSim.Light;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>A depth at which the lure runs.</summary>
/// <param name="Depth">Depth (m).</param>
/// <param name="Weight">Share of the time that it stands for, 0 to 1; the weights add to 1.</param>
public readonly record struct RunningDepth(double Depth, double Weight);

/// <summary>A direction from which fish look at the lure.</summary>
/// <param name="Direction">Where the eye looks.</param>
/// <param name="Weight">Share of the fish, 0 to 1; the weights add to 1.</param>
public readonly record struct LookShare(ViewDirection Direction, double Weight);

/// <summary>What a colour of the box is worth where the lure runs.</summary>
/// <param name="Name">Colour.</param>
/// <param name="Distance">Sighting distance, mean over depths and directions (m).</param>
/// <param name="Swath">The same with every distance cut at the reaction distance (m).</param>
/// <param name="DifferenceToForage">Difference to the forage close up in the eye of the fish, just-noticeable steps: colour and brightness, by the root of their squares.</param>
/// <param name="Mode">How it stands against the water, in the direction of most weight.</param>
public sealed record ColourWorth(string Name, double Distance, double Swath, double DifferenceToForage, SightMode Mode);

/// <summary>What the choice of colour rests on.</summary>
public enum ColourGround
{
    /// <summary>The nearest match to the forage is seen as far as a fish will come: looking right decides.</summary>
    NaturalMatch,

    /// <summary>The match would be missed: a colour brighter than the water carries farther.</summary>
    Brightness,

    /// <summary>The match would be missed: a dark shape carries farther.</summary>
    Silhouette,

    /// <summary>No colour is made out.</summary>
    Unseen,
}

/// <summary>Which colours common practice takes.</summary>
public enum ColourPractice
{
    /// <summary>Natural colours, in clear water.</summary>
    NaturalInClear,

    /// <summary>White, chartreuse or another bright colour, in murky water.</summary>
    BrightInMurky,

    /// <summary>A dark lure for its silhouette, in dim light.</summary>
    DarkInDim,
}

/// <summary>What the eye behind a choice of colour is worth.</summary>
public enum EyeCertainty
{
    /// <summary>The cones of the fish were measured.</summary>
    Measured,

    /// <summary>The cones are borrowed; the choice is the same at both ends of the peaks that they may have.</summary>
    SameAtBothEnds,

    /// <summary>The cones are borrowed, and at one end of the peaks that they may have another colour is chosen: it cannot be told.</summary>
    CannotTell,
}

/// <summary>
/// The colour for where the lure really runs: of the colours that fish make out about as far as the best one, within the reach of
/// a strike, the one nearest to the forage. In clear water all are seen that far, and the match wins; in murky or dark water few are.
/// </summary>
/// <param name="Depths">Where the lure runs while reeling, in the zone where it gets there.</param>
/// <param name="Looks">From where fish in the strike zone look at it.</param>
/// <param name="Forage">Colour of the forage.</param>
/// <param name="ForageSeen">True where the scenario names the forage; false for the one usual for the season and fish.</param>
/// <param name="Colours">The colours of the box, in its order.</param>
/// <param name="Chosen">Index of the choice.</param>
/// <param name="Nearest">Index of the colour nearest to the forage.</param>
/// <param name="Farthest">Index of the colour that is made out farthest.</param>
/// <param name="Ground">What the choice rests on.</param>
/// <param name="Practice">What common practice takes here.</param>
/// <param name="PracticeAgrees">Whether the choice is one of practice's colours; null where the box has none of them.</param>
public sealed record ColourAdvice(
    IReadOnlyList<RunningDepth> Depths,
    IReadOnlyList<LookShare> Looks,
    string Forage,
    bool ForageSeen,
    IReadOnlyList<ColourWorth> Colours,
    int Chosen,
    int Nearest,
    int Farthest,
    ColourGround Ground,
    ColourPractice Practice,
    bool? PracticeAgrees)
{
    /// <summary>Distance from which a fish turns to a lure (m), mean over the depths (<see cref="ReactionDistance"/>): being made out from farther gains nothing.</summary>
    public required double Reach { get; init; }

    /// <summary>Colours chosen at the shortest and the longest peaks that a borrowed eye may have, by index; empty where the eye is measured.</summary>
    public IReadOnlyList<int> ChosenAtEnds { get; init; } = [];

    /// <summary>What the eye is worth for this choice.</summary>
    public EyeCertainty Certainty => ChosenAtEnds.Count == 0 ? EyeCertainty.Measured
        : ChosenAtEnds.All(c => c == Chosen) ? EyeCertainty.SameAtBothEnds
        : EyeCertainty.CannotTell;

    /// <summary>A colour made out within this share of the best one is as good to be found by (assumed, no source).</summary>
    public const double NearlyAsFar = 0.8;

    // Depths that stand for the run: middles of thirds of the time.
    private const int DepthBins = 3;

    // Steps of the strike zone over which fish are spread evenly.
    private const int ZoneSteps = 16;

    // Fish farther off than they can see do not count, but closer than this none looks (m).
    private const double LeastLook = 0.3;

    // Secchi depth from which practice calls inshore water clear (m); practice has no figure, this one is assumed.
    private const double PracticeClear = 1.5;

    private static readonly string[] NaturalColours = ["natural silver side", "natural green back", "tan", "shrimp brown", "smoke grey", "clear", "dark green-brown"];
    private static readonly string[] BrightColours = ["white", "chartreuse", "fluorescent pink", "fluorescent orange", "yellow"];
    private static readonly string[] DarkColours = ["black", "dark purple", "dark green-brown"];

    /// <summary>Works the advice out.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="body">The body, whose size is seen and whose kind of forage is matched where none was seen.</param>
    /// <param name="track">The track of the rig.</param>
    /// <param name="field">Light in the water.</param>
    /// <param name="eye">Eye of the fish.</param>
    /// <param name="colours">Colours of the box; at least one.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static ColourAdvice Of(Scenario scenario, LureBody body, Track track, LightField field, FishEye eye, IReadOnlyList<LureColour> colours)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(eye);
        ArgumentNullException.ThrowIfNull(colours);
        return With(scenario, body, track, field, eye, colours) with
        {
            ChosenAtEnds = [.. eye.Ends.Select(end => With(scenario, body, track, field, end, colours).Chosen)],
        };
    }

    private static ColourAdvice With(Scenario scenario, LureBody body, Track track, LightField field, FishEye eye, IReadOnlyList<LureColour> colours)
    {
        Spot spot = scenario.Spot;
        IReadOnlyList<RunningDepth> depths = Running(track, spot);
        double middle = depths[depths.Count / 2].Depth;
        double sight = new SightScene(field, eye, ViewDirection.Level, middle, body.ApparentSize).Rank(colours)[0].Distance;
        double[] reach = [.. depths.Select(at => ReactionDistance.In(field, at.Depth, body.Length))];
        double meanReach = depths.Zip(reach, (at, r) => at.Weight * r).Sum();
        IReadOnlyList<LookShare> looks = Look(spot.StrikeZone, depths, Math.Min(sight, meanReach));
        (LureColour forage, bool seen) = ForageColour(scenario, body);

        int count = colours.Count;
        double[] distance = new double[count], swath = new double[count], difference = new double[count];
        var mode = new SightMode[count];
        LookShare most = looks.MaxBy(look => look.Weight);
        for (int d = 0; d < depths.Count; d++)
        {
            RunningDepth at = depths[d];
            foreach (LookShare look in looks)
            {
                double weight = at.Weight * look.Weight;
                var scene = new SightScene(field, eye, look.Direction, at.Depth, body.ApparentSize);
                Spectrum natural = Appearance.Inherent(field, forage, look.Direction, at.Depth);
                for (int c = 0; c < count; c++)
                {
                    Sighting sighting = scene.Sight(colours[c]);
                    distance[c] += weight * sighting.Distance;
                    swath[c] += weight * Math.Min(sighting.Distance, reach[d]);
                    difference[c] += weight * Difference(eye, scene.RodsTakePart, Appearance.Inherent(field, colours[c], look.Direction, at.Depth), natural);
                    if (look == most) mode[c] = sighting.Mode;
                }
            }
        }

        ColourWorth[] worth = [.. Enumerable.Range(0, count).Select(c => new ColourWorth(colours[c].Name, distance[c], swath[c], difference[c], mode[c]))];
        int farthest = Best(c => swath[c] + (1e-6 * distance[c]), _ => true);
        int nearest = Best(c => -difference[c], _ => true);
        int chosen = swath[farthest] > 0 ? Best(c => -difference[c], c => swath[c] >= NearlyAsFar * swath[farthest]) : farthest;
        ColourGround ground = !(swath[farthest] > 0) ? ColourGround.Unseen
            : chosen == nearest ? ColourGround.NaturalMatch
            : mode[chosen] is SightMode.Silhouettes or SightMode.GoneDark ? ColourGround.Silhouette
            : ColourGround.Brightness;
        (ColourPractice practice, string[] names) = PracticeOf(field);
        bool? agrees = worth.Any(w => names.Contains(w.Name)) ? names.Contains(worth[chosen].Name) : null;
        return new ColourAdvice(depths, looks, forage.Name, seen, worth, chosen, nearest, farthest, ground, practice, agrees) { Reach = meanReach };

        int Best(Func<int, double> value, Func<int, bool> allowed) => Enumerable.Range(0, count).Where(allowed).MaxBy(value);
    }

    /// <summary>Where a lure runs from the first turn of the handle on, as the middles of equal shares of the time: in the zone if it gets there, otherwise anywhere.</summary>
    /// <param name="track">The track.</param>
    /// <param name="spot">The spot.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<RunningDepth> Running(Track track, Spot spot)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(spot);
        double[] all = [.. Enumerable.Range(0, track.Count).Where(i => (track.State[i] & TrackState.Falling) == 0).Select(i => Math.Clamp(track.Depth(i), 0, spot.Depth)).Order()];
        double[] inZone = [.. all.Where(spot.StrikeZone.Contains)];
        double[] use = inZone.Length > 0 ? inZone : all;
        if (use.Length == 0)
            return [new RunningDepth((spot.StrikeZone.Top + spot.StrikeZone.Bottom) / 2, 1)];
        return [.. Enumerable.Range(0, DepthBins).Select(k => new RunningDepth(use[(int)(((2 * k) + 1) * use.Length / (2.0 * DepthBins))], 1.0 / DepthBins))];
    }

    /// <summary>
    /// From where fish look at the lure: fish spread evenly over the strike zone, each at the distance at which it makes the lure out
    /// level, see it under the angle of their height over or under it; within 22.5 degrees of level is level.
    /// </summary>
    /// <param name="zone">The strike zone.</param>
    /// <param name="depths">Where the lure runs.</param>
    /// <param name="sight">How far off a fish minds it, looking level (m).</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<LookShare> Look(StrikeZone zone, IReadOnlyList<RunningDepth> depths, double sight)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(depths);
        double away = Math.Max(sight, LeastLook);
        var shares = new Dictionary<ViewDirection, double>();
        foreach (RunningDepth at in depths)
        {
            for (int k = 0; k < ZoneSteps; k++)
            {
                double fish = zone.Top + ((zone.Bottom - zone.Top) * (k + 0.5) / ZoneSteps);
                double angle = Math.Atan2(fish - at.Depth, away);
                ViewDirection direction = angle > 3 * Math.PI / 8 ? ViewDirection.Up
                    : angle > Math.PI / 8 ? ViewDirection.SlantUp
                    : angle < -Math.PI / 8 ? ViewDirection.Down
                    : ViewDirection.Level;
                shares[direction] = shares.GetValueOrDefault(direction) + (at.Weight / ZoneSteps);
            }
        }

        return [.. shares.OrderByDescending(pair => pair.Value).Select(pair => new LookShare(pair.Key, pair.Value))];
    }

    /// <summary>Difference of two radiances in an eye, just-noticeable steps: colour and brightness, by the root of their squares; in dim light to the rods alone.</summary>
    private static double Difference(FishEye eye, bool dim, Spectrum first, Spectrum second)
    {
        if (dim)
            return Finite(ReceptorNoise.Achromatic(eye.Rod.Catch(first), eye.Rod.Catch(second), FishEye.WeberFraction));
        double[] a = [.. eye.Cones.Select(cone => cone.Catch(first))], b = [.. eye.Cones.Select(cone => cone.Catch(second))];
        int commonest = Enumerable.Range(0, a.Length).MaxBy(i => (eye.Cones[i].Abundance, i));
        double colour = ReceptorNoise.Chromatic(a, b, [.. eye.ConeNoise]);
        double brightness = ReceptorNoise.Achromatic(a[commonest], b[commonest], eye.ConeNoise[commonest]);
        return Finite(Math.Sqrt((colour * colour) + (brightness * brightness)));

        static double Finite(double value) => double.IsFinite(value) ? Math.Min(value, 1000) : 1000;
    }

    private static (LureColour Colour, bool Seen) ForageColour(Scenario scenario, LureBody body)
    {
        ForageSighting? seen = scenario.Forage.OrderByDescending(item => item.Seen).FirstOrDefault();
        if (seen?.Colour is { } own)
            return (SpotColours.Colour(own), true);
        ForageKind kind = seen?.Kind ?? body.Kind.Imitates;
        LureColour usual = kind switch
        {
            ForageKind.Shrimp => LureColours.ShrimpBrown,
            ForageKind.Crab => LureColours.DarkGreenBrown,
            _ => LureColours.NaturalSilverSide,
        };
        return (usual, seen is not null);
    }

    private static (ColourPractice Practice, string[] Names) PracticeOf(LightField field) => field.Surface.Regime is LightRegime.Twilight or LightRegime.Night
        ? (ColourPractice.DarkInDim, DarkColours)
        : field.Water.SecchiDepth >= PracticeClear
            ? (ColourPractice.NaturalInClear, NaturalColours)
            : (ColourPractice.BrightInMurky, BrightColours);
}
