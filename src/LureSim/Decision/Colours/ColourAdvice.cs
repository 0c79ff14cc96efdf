using LureSim.Decision.Trials;
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
/// <param name="Lure">The colour, or the lure of several colours.</param>
/// <param name="Seen">How it is seen: the one measure by which colours are compared is its <see cref="SeenLure.SeenFrom"/>.</param>
/// <param name="DifferenceToForage">Difference to the forage close up, just-noticeable steps (<see cref="LureSights.Difference"/>), at that end of the peaks that the eye may have at which it is greater.</param>
/// <param name="IsLikeness">True where that is no more than <see cref="LureSights.LikenessSteps"/> in light by which the fish tells colours.</param>
/// <param name="Tied">True where no colour is seen from farther by more than is known (<see cref="ColourAdvice.Sure"/>): the one seen farthest and all tied with it.</param>
/// <param name="Range">The measure over the draws of water, threshold and eye (m, <see cref="SightSpread"/>); the same draws for all colours.</param>
public sealed record ColourWorth(LurePattern Lure, SeenLure Seen, double DifferenceToForage, bool IsLikeness, bool Tied, Interval Range)
{
    /// <summary>Name.</summary>
    public string Name => Lure.Name;

    /// <summary>The measure (m), <see cref="SeenLure.SeenFrom"/>.</summary>
    public double SeenFrom => Seen.SeenFrom;
}

/// <summary>Three ways to choose a colour.</summary>
public enum ColourStrategy
{
    /// <summary>Brighter than the water behind it.</summary>
    Bright,

    /// <summary>Darker than the water behind it.</summary>
    DarkSilhouette,

    /// <summary>Like the forage, or as near to it as the box comes.</summary>
    Natural,
}

/// <summary>The best of the box for one strategy.</summary>
/// <param name="Strategy">The strategy.</param>
/// <param name="Best">Index of its colour: the one seen from farthest, for <see cref="ColourStrategy.Natural"/> the one nearest to the forage; null where the box has none.</param>
public readonly record struct StrategyWorth(ColourStrategy Strategy, int? Best);

/// <summary>What a choice of colour rests on.</summary>
public enum ColourReason
{
    /// <summary>The box holds one colour.</summary>
    OnlyColour,

    /// <summary>It is seen from farther than every other, by more than is not known.</summary>
    SeenFarthest,

    /// <summary>Several are seen from as far; it is a likeness of the forage that was named, the nearest of them.</summary>
    Likeness,

    /// <summary>Several are seen from as far and none is a likeness of a forage that was named; common practice takes it.</summary>
    CommonPractice,

    /// <summary>Several are seen from as far, none is a likeness of a named forage and none is one of practice's: no real difference.</summary>
    NoRealDifference,

    /// <summary>Even the one seen farthest is seen only from within a strike (<see cref="ColourAdvice.StrikeLength"/>): sight decides nothing; a dark silhouette, and sound or scent, by common practice.</summary>
    SightDecidesNothing,

    /// <summary>The angler asked for it.</summary>
    Given,
}

/// <summary>Which colours common practice takes.</summary>
public enum ColourPractice
{
    /// <summary>Natural colours, or light ones, in clear water.</summary>
    NaturalInClear,

    /// <summary>Gold, copper or a root-beer brown, in tannin-stained water.</summary>
    MetalInStained,

    /// <summary>White, chartreuse or another bright colour, or the darkest for its silhouette, in dirty water.</summary>
    BrightOrDarkInDirty,

    /// <summary>A dark lure for its silhouette, in dim light.</summary>
    DarkInDim,
}

/// <summary>How common practice and the choice stand to each other.</summary>
public enum PracticeOutcome
{
    /// <summary>Practice decided.</summary>
    Decides,

    /// <summary>The choice, made without it, is one of practice's colours.</summary>
    Agrees,

    /// <summary>The choice is none of practice's colours, of which the box has one: computing and practice part.</summary>
    Parts,

    /// <summary>The box has none of practice's colours.</summary>
    NotInBox,
}

/// <summary>What common practice takes here.</summary>
/// <param name="Practice">The practice.</param>
/// <param name="Colours">Indices of the colours of the box that it takes.</param>
/// <param name="Best">The one of them that is seen from farthest; null where there is none.</param>
/// <param name="Outcome">How it stands to the choice.</param>
public sealed record PracticeFinding(ColourPractice Practice, IReadOnlyList<int> Colours, int? Best, PracticeOutcome Outcome);

/// <summary>
/// The colour for where the lure really runs, by one measure: the distance from which a fish sees it from where fish see it, at that depth, in that light and water
/// (<see cref="SightMeasure"/>). Colours that differ in it by less than is known are tied; among the tied a likeness of the forage that was named decides, then common practice.
/// </summary>
/// <param name="Body">The body whose colour is chosen.</param>
/// <param name="Depths">Where the lure runs while reeling, in the zone where it gets there.</param>
/// <param name="Looks">From where fish in the strike zone look at it.</param>
/// <param name="Reach">Distance from which a fish turns to a lure (m), mean over the looks: being made out from farther gains nothing.</param>
/// <param name="Forage">Name of the forage's colour.</param>
/// <param name="ForageSeen">True where the scenario names the forage; false for the one that the body imitates.</param>
/// <param name="Colours">The colours of the box, in its order; then its lures of several colours.</param>
/// <param name="Chosen">Index of the choice.</param>
/// <param name="Reason">What the choice rests on.</param>
/// <param name="Strategies">The three strategies, compared by the one measure.</param>
/// <param name="Practice">What common practice takes here.</param>
public sealed record ColourAdvice(
    LureBody Body,
    IReadOnlyList<RunningDepth> Depths,
    IReadOnlyList<LookShare> Looks,
    double Reach,
    string Forage,
    bool ForageSeen,
    IReadOnlyList<ColourWorth> Colours,
    int Chosen,
    ColourReason Reason,
    IReadOnlyList<StrategyWorth> Strategies,
    PracticeFinding Practice)
{
    /// <summary>
    /// Length of a strike (m), 0.17. A pike of 0.38 m moves 0.132 m in its short feeding starts (Harper and Blake 1991, harper1991prey), 0.35 of its length; this is that share of a
    /// fish of half a metre (assumed). A blinded predator still strikes at prey so near, by its lateral line (New, Fewkes and Khan 2001, new2001strike): a lure that is not
    /// seen from farther is not found by sight.
    /// </summary>
    public const double StrikeLength = 0.17;

    /// <summary>Two colours seen from within this share of each other are tied even where nothing is uncertain, 0.1 (assumed).</summary>
    public const double Lead = 0.1;

    /// <summary>
    /// A colour is behind the farthest only if it is so in this share of the draws of water, threshold and eye, 0.9, and is seen from nearer than the farthest is in one draw of ten;
    /// otherwise the two are tied.
    /// </summary>
    public const double Sure = 0.9;

    /// <summary>Index of the colour that is seen from farthest.</summary>
    public int Farthest { get; } = FarthestOf(Colours);

    /// <summary>Index of the colour nearest to the forage.</summary>
    public int Nearest { get; } = Enumerable.Range(0, Colours.Count).MinBy(i => Colours[i].DifferenceToForage);

    /// <summary>The colours tied for being seen from farthest, by index; the farthest is one of them.</summary>
    public IReadOnlyList<int> Tied => [.. Enumerable.Range(0, Colours.Count).Where(i => Colours[i].Tied)];

    /// <summary>The choice.</summary>
    public ColourWorth Choice => Colours[Chosen];

    /// <summary>True where the best is seen as far as a fish comes for a lure.</summary>
    public bool AtReach => Colours[Farthest].SeenFrom >= 0.95 * Reach;

    /// <summary>The same findings with the angler's own choice.</summary>
    /// <param name="colour">Index of the colour.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such colour.</exception>
    public ColourAdvice Given(int colour)
    {
        _ = Guard.InRange(colour, 0, Colours.Count - 1);
        return this with { Chosen = colour, Reason = ColourReason.Given, Practice = Practice with { Outcome = OutcomeOf(Practice.Colours, colour, ColourReason.Given) } };
    }

    // Depths that stand for the run: middles of thirds of the time.
    private const int DepthBins = 3;

    // Steps of the strike zone over which fish are spread evenly.
    private const int ZoneSteps = 16;

    // Fish farther off than they can see do not count, but closer than this none looks (m).
    private const double LeastLook = 0.3;

    // Secchi depth from which practice calls inshore water clear (m); practice has no figure, this one is assumed.
    private const double PracticeClear = 1.5;

    // Dissolved matter at 440 nm (1/m) from which water is tea to the eye (assumed), where it is given by what was measured.
    private const double TeaDissolved = 1.0;

    private static readonly string[] NaturalColours = ["natural silver side", "natural green back", "tan", "shrimp brown", "smoke grey", "clear", "dark green-brown", "natural bait fish", "shrimp", "white"];
    private static readonly string[] MetalColours = ["gold", "copper", "dark green-brown"];
    private static readonly string[] BrightColours = ["white", "chartreuse", "fluorescent pink", "fluorescent orange", "yellow"];
    private static readonly string[] DarkColours = ["black", "dark purple", "dark green-brown"];

    /// <summary>Works the advice out for a lure that was run.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="body">The body, whose size is seen and whose kind of forage is matched where none was seen.</param>
    /// <param name="track">The track of the rig.</param>
    /// <param name="field">Light in the water.</param>
    /// <param name="eye">Eye of the fish.</param>
    /// <param name="lures">Colours and lures of several colours of the box; at least one.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no colour.</exception>
    public static ColourAdvice Of(Scenario scenario, LureBody body, Track track, LightField field, FishEye eye, IReadOnlyList<LurePattern> lures)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(track);
        return Of(scenario, body, Running(track, scenario.Spot), field, eye, lures, SightSpread.DefaultSamples);
    }

    /// <summary>Works the advice out for a lure at given depths.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="body">The body, whose size is seen and whose kind of forage is matched where none was seen.</param>
    /// <param name="depths">Where it runs; at least one depth.</param>
    /// <param name="field">Light in the water.</param>
    /// <param name="eye">Eye of the fish.</param>
    /// <param name="lures">Colours and lures of several colours of the box; at least one.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no colour or no depth.</exception>
    public static ColourAdvice Of(Scenario scenario, LureBody body, IReadOnlyList<RunningDepth> depths, LightField field, FishEye eye, IReadOnlyList<LurePattern> lures) =>
        Of(scenario, body, depths, field, eye, lures, SightSpread.DefaultSamples);

    /// <summary>The same from a number of draws of water, threshold and eye.</summary>
    internal static ColourAdvice Of(
        Scenario scenario, LureBody body, IReadOnlyList<RunningDepth> depths, LightField field, FishEye eye, IReadOnlyList<LurePattern> lures, int samples, ParallelOptions? parallel = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(depths);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(eye);
        ArgumentNullException.ThrowIfNull(lures);
        Guard.That(depths.Count > 0, "At least one depth.", nameof(depths));
        Guard.That(lures.Count > 0, "At least one colour.", nameof(lures));
        IReadOnlyList<SightLook> looks = LooksAt(scenario.Spot.StrikeZone, depths, field, eye, body, lures);
        var measure = new SightMeasure(field, eye, body, looks);
        SeenLure[] seen = [.. lures.Select(measure.Of)];
        (string forage, IReadOnlyList<LurePattern> faces, bool named) = ForageOf(scenario, body);
        SightMeasure[] ends = [.. eye.Ends.Select(measure.Through)];
        double[] difference = new double[lures.Count];
        Parallel.For(0, lures.Count, parallel ?? new ParallelOptions(), i => difference[i] = ends.Append(measure).Max(m => faces.Min(face => m.Difference(lures[i], face, StrikeLength))));
        bool tells = measure.TellsColours;
        var spread = SightSpread.Of(scenario, eye, lures, body.ApparentSize, body.Length, looks, samples, field, parallel);
        int farthest = Enumerable.Range(0, lures.Count).MaxBy(i => (seen[i].SeenFrom, seen[i].MadeOut));
        ColourWorth[] worth = [.. lures.Select((lure, i) => new ColourWorth(lure, seen[i], difference[i], tells && difference[i] <= LureSights.LikenessSteps, IsTied(i), spread.Swath[i]))];
        (ColourPractice practice, string[] names) = PracticeOf(scenario.Spot, field, lures);
        int[] usual = [.. Enumerable.Range(0, lures.Count).Where(i => names.Contains(lures[i].Name))];
        double[] brightness = [.. lures.Select(lure => looks.Sum(look => look.Weight * lure.Inherent(field, look.Direction, look.Depth).Dot(Colorimetry.YBar)))];
        (int chosen, ColourReason reason) = Choose(worth, named, farthest, practice, usual, brightness);
        return new ColourAdvice(
            body,
            depths,
            [.. looks.GroupBy(look => look.Direction).Select(group => new LookShare(group.Key, group.Sum(look => look.Weight))).OrderByDescending(share => share.Weight)],
            measure.Reach,
            forage,
            named,
            worth,
            chosen,
            reason,
            [
                new(ColourStrategy.Bright, Best(i => worth[i].Seen.Mode == SightMode.Reflects)),
                new(ColourStrategy.DarkSilhouette, Best(i => worth[i].Seen.Mode is SightMode.Silhouettes or SightMode.GoneDark)),
                new(ColourStrategy.Natural, Enumerable.Range(0, lures.Count).MinBy(i => difference[i])),
            ],
            new PracticeFinding(practice, usual, usual.Length > 0 ? usual.MaxBy(i => worth[i].SeenFrom) : null, OutcomeOf(usual, chosen, reason)));

        // Within the 8-in-10 range of the best, or not behind it in nine draws of ten.
        bool IsTied(int i) => i == farthest
            || (1 + Lead) * seen[i].SeenFrom >= seen[farthest].SeenFrom
            || spread.Swath[i].Median >= spread.Swath[farthest].Low
            || Enumerable.Range(0, spread.Samples).Count(draw => spread.SwathsIn(draw)[farthest] > spread.SwathsIn(draw)[i]) < Sure * spread.Samples;

        int? Best(Func<int, bool> allowed) => Enumerable.Range(0, lures.Count).Where(allowed).Select(i => (int?)i).MaxBy(i => worth[i!.Value].SeenFrom);
    }

    // The order of the reasons is the rule: sight where it decides, likeness, practice.
    private static (int Chosen, ColourReason Reason) Choose(ColourWorth[] worth, bool named, int farthest, ColourPractice practice, int[] usual, double[] brightness)
    {
        if (worth[farthest].SeenFrom < StrikeLength)
        {
            int[] dark = [.. Enumerable.Range(0, worth.Length).Where(i => DarkColours.Contains(worth[i].Name))];
            return ((dark.Length > 0 ? dark : [.. Enumerable.Range(0, worth.Length)]).MinBy(i => brightness[i]), ColourReason.SightDecidesNothing);
        }

        if (worth.Length == 1)
            return (0, ColourReason.OnlyColour);
        int[] tied = [.. Enumerable.Range(0, worth.Length).Where(i => worth[i].Tied)];
        if (tied.Length == 1)
            return (farthest, ColourReason.SeenFarthest);
        int[] like = named ? [.. tied.Where(i => worth[i].IsLikeness)] : [];
        if (like.Length > 0)
            return (like.MinBy(i => worth[i].DifferenceToForage), ColourReason.Likeness);
        int[] practised = [.. tied.Intersect(usual)];
        return practised.Length > 0
            ? (practice == ColourPractice.NaturalInClear ? practised.MinBy(i => worth[i].DifferenceToForage) : practised.MaxBy(i => worth[i].SeenFrom), ColourReason.CommonPractice)
            : (farthest, ColourReason.NoRealDifference);
    }

    private static int FarthestOf(IReadOnlyList<ColourWorth> colours) => Enumerable.Range(0, colours.Count).MaxBy(i => (colours[i].SeenFrom, colours[i].Seen.MadeOut));

    private static PracticeOutcome OutcomeOf(IReadOnlyList<int> usual, int chosen, ColourReason reason) => usual.Count == 0 ? PracticeOutcome.NotInBox
        : reason is ColourReason.CommonPractice ? PracticeOutcome.Decides
        : usual.Contains(chosen) ? PracticeOutcome.Agrees
        : PracticeOutcome.Parts;

    // Depth by depth, since fish that see a shallow lure from below see a deep one level.
    internal static IReadOnlyList<SightLook> LooksAt(StrikeZone zone, IReadOnlyList<RunningDepth> depths, LightField field, FishEye eye, LureBody body, IReadOnlyList<LurePattern> lures)
    {
        double middle = depths[depths.Count / 2].Depth;
        var level = new SightScene(field, eye, ViewDirection.Level, middle, body.ApparentSize);
        double sight = lures.Max(lure => level.Sight(lure).Distance);
        return
        [
            .. depths.SelectMany(at => Look(zone, [at with { Weight = 1 }], Math.Min(sight, ReactionDistance.In(field, at.Depth, body.Length)))
                .Select(look => new SightLook(look.Direction, at.Depth, at.Weight * look.Weight))),
        ];
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
        double[] inZone = spot.Profile is { IsEven: false }
            ? [.. Enumerable.Range(0, track.Count).Where(i => (track.State[i] & (TrackState.Falling | TrackState.InZone)) == TrackState.InZone).Select(i => Math.Clamp(track.Depth(i), 0, spot.Depth)).Order()]
            : [.. all.Where(spot.StrikeZone.Contains)];
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

    // What the forage looks like: its one colour, or part by part where its kind is known.
    private static (string Name, IReadOnlyList<LurePattern> Faces, bool Named) ForageOf(Scenario scenario, LureBody body)
    {
        ForageSighting? seen = scenario.Forage.OrderByDescending(item => item.Seen).FirstOrDefault();
        if (seen?.Colour is { } own)
            return (own, [LurePattern.Plain(SpotColours.Colour(own))], true);
        (LureColour usual, LurePattern[] faces) = (seen?.Kind ?? body.Kind.Imitates) switch
        {
            ForageKind.Shrimp => (LureColours.ShrimpBrown, new[] { LurePatterns.Shrimp }),
            ForageKind.Crab => (LureColours.DarkGreenBrown, []),
            ForageKind.SmallBaitFish or ForageKind.LargeBaitFish => (LureColours.NaturalSilverSide, [LurePatterns.NaturalBaitFish]),
            _ => throw new ArgumentOutOfRangeException(nameof(scenario), seen?.Kind, "Unknown kind of forage."),
        };
        return (usual.Name, [LurePattern.Plain(usual), .. faces], seen is not null);
    }

    // Stained water is dirty water to those whose box has no metal.
    private static (ColourPractice Practice, string[] Names) PracticeOf(Spot spot, LightField field, IReadOnlyList<LurePattern> lures) =>
        field.Surface.Regime is LightRegime.Twilight or LightRegime.Night ? (ColourPractice.DarkInDim, DarkColours)
        : field.Water.SecchiDepth >= PracticeClear ? (ColourPractice.NaturalInClear, NaturalColours)
        : IsTea(spot.Clarity) && lures.Any(lure => MetalColours.Contains(lure.Name)) ? (ColourPractice.MetalInStained, MetalColours)
        : (ColourPractice.BrightOrDarkInDirty, [.. BrightColours, .. DarkColours]);

    private static bool IsTea(WaterClarity clarity) => clarity switch
    {
        SecchiClarity secchi => secchi.Kind == WaterKind.TanninStained,
        ConstituentClarity found => found.Dissolved440 >= TeaDissolved,
        JerlovClarity => false,
        _ => throw new ArgumentOutOfRangeException(nameof(clarity), clarity, "Unknown form of clarity."),
    };
}
