namespace LureSim.Model;

/// <summary>
/// A validated question: one spot, the tackle at hand and the presentations to compare. All values SI.
/// Instances that come from <c>ScenarioReader</c> are inside the documented ranges; code that builds one
/// by hand is responsible for the same.
/// </summary>
public sealed record Scenario
{
    /// <summary>A short name for people, shown as the heading of the sheet.</summary>
    public required string Title { get; init; }

    /// <summary>Free remarks, shown on the sheet; may be empty.</summary>
    public string Notes { get; init; } = "";

    /// <summary>The water, the bottom, the light and the fish.</summary>
    public required Spot Spot { get; init; }

    /// <summary>What the angler owns.</summary>
    public required TackleBox Tackle { get; init; }

    /// <summary>The retrieves to compare; at least one.</summary>
    public required IReadOnlyList<Presentation> Presentations { get; init; }

    /// <summary>Forage that was seen; empty where none was.</summary>
    public IReadOnlyList<ForageSighting> Forage { get; init; } = [];

    /// <summary>The season where the scenario names one; <see cref="Seasons.Of(Scenario)"/> falls back on its date.</summary>
    public Season? Season { get; init; }

    /// <summary>Two rigs to compare, or none.</summary>
    public IReadOnlyList<ComparedRig> Compare { get; init; } = [];

    /// <summary>How well the inputs are known.</summary>
    public ScenarioUncertainty Uncertainty { get; init; } = ScenarioUncertainty.Assumed;

    /// <summary>The tide, in order of time; empty when none was given.</summary>
    public IReadOnlyList<TidePoint> Tide { get; init; } = [];
}

/// <summary>What the bottom is made of: sets contact stiffness, friction and the roughness length of the current profile.</summary>
public enum BottomKind
{
    /// <summary>Rock, concrete, packed gravel.</summary>
    Hard,

    /// <summary>Sand, the default.</summary>
    Sand,

    /// <summary>Soft mud.</summary>
    Mud,

    /// <summary>Oyster or broken shell.</summary>
    Shell,
}

/// <summary>How the current changes between surface and bottom.</summary>
public enum CurrentProfileKind
{
    /// <summary>The same speed at every depth.</summary>
    Uniform,

    /// <summary>One-seventh power law of the height above bottom.</summary>
    Power,

    /// <summary>Logarithmic law of the wall with the bottom's roughness length.</summary>
    Logarithmic,
}

/// <summary>The spot. Axes: x along the cast, y to the caster's left, z up, still-water surface z = 0.</summary>
public sealed record Spot
{
    /// <summary>Water depth (m), 0.2 to 60.</summary>
    public required double Depth { get; init; }

    /// <summary>Bottom material.</summary>
    public BottomKind Bottom { get; init; } = BottomKind.Sand;

    /// <summary>Height of the grass canopy above the bottom (m), 0 to the depth; 0 is bare bottom.</summary>
    public double GrassHeight { get; init; }

    /// <summary>Current at the surface (m/s), 0 to 3.</summary>
    public double CurrentSpeed { get; init; }

    /// <summary>
    /// Where the current flows to, radians from the reference direction (that of a cast with an aim of 0), anticlockwise seen from above:
    /// 0 away from the angler, pi/2 to the left, pi towards the angler.
    /// </summary>
    public double CurrentDirection { get; init; }

    /// <summary>Shape of the current profile.</summary>
    public CurrentProfileKind CurrentProfile { get; init; } = CurrentProfileKind.Power;

    /// <summary>Wind speed (m/s), 0 to 25.</summary>
    public double WindSpeed { get; init; }

    /// <summary>Where the wind blows to, radians, same convention as <see cref="CurrentDirection"/>.</summary>
    public double WindDirection { get; init; }

    /// <summary>The same spot with directions counted from a cast that is aimed to the left of the reference direction by an angle (radians).</summary>
    /// <param name="aim">Angle of the cast from the reference direction, anticlockwise (radians).</param>
    public Spot SeenAlong(double aim) =>
        aim == 0 ? this : this with { CurrentDirection = Turned(CurrentDirection - aim), WindDirection = Turned(WindDirection - aim) };

    /// <summary>Practical salinity, 0 to 42.</summary>
    public required double Salinity { get; init; }

    /// <summary>Water temperature (degrees Celsius), -2 to 40.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>How clear the water is, in the form in which it was given.</summary>
    public required WaterClarity Clarity { get; init; }

    /// <summary>Where the light comes from, in the form in which it was given.</summary>
    public required SkySetting Sky { get; init; }

    /// <summary>Share of the sky covered by cloud, 0 to 1.</summary>
    public double CloudCover { get; init; }

    /// <summary>Where the fish are expected to strike.</summary>
    public required StrikeZone StrikeZone { get; init; }

    /// <summary>The target fish, a key of the table of fish eyes (for example "red drum").</summary>
    public required string TargetFish { get; init; }

    /// <summary>Usual length of the target fish here (m), 0.1 to 2.5; null where it is not known.</summary>
    public double? TargetLength { get; init; }

    private static double Turned(double angle) => angle - (2 * Math.PI * Math.Floor(angle / (2 * Math.PI)));
}

/// <summary>The strike zone as a band of depth below the surface (m), resolved at reading from either form of input.</summary>
/// <param name="Top">Depth of the upper edge (m), 0 or more.</param>
/// <param name="Bottom">Depth of the lower edge (m), more than <paramref name="Top"/>, at most the water depth.</param>
public sealed record StrikeZone(double Top, double Bottom)
{
    /// <summary>True if it was given by heights above the bottom: it then moves with the bottom where the depth changes.</summary>
    public bool MovesWithBottom { get; init; }

    /// <summary>True if the depth (m) is inside the band, edges included.</summary>
    public bool Contains(double depth) => depth >= Top && depth <= Bottom;
}

/// <summary>What the angler owns.</summary>
public sealed record TackleBox
{
    /// <summary>Height of the rod tip above the water (m), 0.1 to 6.</summary>
    public required double RodTipHeight { get; init; }

    /// <summary>The reel.</summary>
    public required Reel Reel { get; init; }

    /// <summary>The main line.</summary>
    public required LineSpecification Line { get; init; }

    /// <summary>The leader, or null for none.</summary>
    public LeaderSpecification? Leader { get; init; }

    /// <summary>Jig heads to choose from; a head of mass 0 is an unweighted hook rig. Empty only if there is no soft body.</summary>
    public required IReadOnlyList<JigHead> JigHeads { get; init; }

    /// <summary>Bodies to choose from; at least one. The rules of <c>BodyChoice</c> choose the soft one that goes on the heads; where none speaks the first is taken. Others need no head and are fished as they are.</summary>
    public required IReadOnlyList<LureBody> Bodies { get; init; }

    /// <summary>How the lure is tied on and put on its hook.</summary>
    public Rigging Rigging { get; init; } = new();

    /// <summary>What the plan compares: the first soft body on every jig head, then every body that needs none.</summary>
    public IReadOnlyList<(JigHead Head, LureBody Body)> Lures => LuresWith(Bodies.FirstOrDefault(body => body.NeedsHead));

    /// <summary>A soft body on every jig head, then every body that needs no head.</summary>
    /// <param name="soft">The soft body; null for none.</param>
    public IReadOnlyList<(JigHead Head, LureBody Body)> LuresWith(LureBody? soft) =>
    [
        .. soft is null ? [] : JigHeads.Select(head => (head, soft)),
        .. Bodies.Where(body => !body.NeedsHead).Select(body => (JigHead.None(body), body)),
    ];

    /// <summary>Colours to choose from: preset names or hex colours, at least one.</summary>
    public required IReadOnlyList<string> Colours { get; init; }

    /// <summary>Colours whose reflectance was measured; they stand after <see cref="Colours"/> wherever a colour is chosen.</summary>
    public IReadOnlyList<MeasuredColour> MeasuredColours { get; init; } = [];

    /// <summary>Lures of several colours.</summary>
    public IReadOnlyList<PatternSpecification> Patterns { get; init; } = [];
}

/// <summary>A colour by its measured reflectance.</summary>
public sealed record MeasuredColour
{
    /// <summary>Makes a colour.</summary>
    /// <param name="name">Name.</param>
    /// <param name="wavelengthsNm">Wavelengths (nm), rising, two or more.</param>
    /// <param name="reflectances">Reflectance at each, 0 to 1.</param>
    /// <exception cref="ArgumentException">The name is empty, the lengths differ, wavelengths do not rise or a reflectance is outside 0 to 1.</exception>
    public MeasuredColour(string name, IReadOnlyList<double> wavelengthsNm, IReadOnlyList<double> reflectances)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(wavelengthsNm);
        ArgumentNullException.ThrowIfNull(reflectances);
        if (wavelengthsNm.Count < 2 || reflectances.Count != wavelengthsNm.Count)
            throw new ArgumentException("two or more wavelengths are needed, and a reflectance for each", nameof(wavelengthsNm));
        for (int i = 0; i < wavelengthsNm.Count; i++)
        {
            if (!double.IsFinite(wavelengthsNm[i]) || (i > 0 && wavelengthsNm[i] <= wavelengthsNm[i - 1]))
                throw new ArgumentException("the wavelengths must rise", nameof(wavelengthsNm));
            if (!(reflectances[i] is >= 0.0 and <= 1.0))
                throw new ArgumentException("a reflectance must lie between 0 and 1", nameof(reflectances));
        }

        Name = name;
        WavelengthsNm = wavelengthsNm;
        Reflectances = reflectances;
    }

    /// <summary>Name.</summary>
    public string Name { get; }

    /// <summary>Wavelengths (nm), rising.</summary>
    public IReadOnlyList<double> WavelengthsNm { get; }

    /// <summary>Reflectance at each, 0 to 1.</summary>
    public IReadOnlyList<double> Reflectances { get; }
}

/// <summary>A lure of several colours, each a preset name, a hex colour or the name of a measured one.</summary>
/// <param name="Name">Name.</param>
/// <param name="Back">Colour from above.</param>
/// <param name="Side">Colour of the flank.</param>
/// <param name="Belly">Colour from below.</param>
/// <param name="Eye">Colour of the eye; null for none.</param>
public sealed record PatternSpecification(string Name, string Back, string Side, string Belly, string? Eye);

/// <summary>A reel.</summary>
/// <param name="GearRatio">Spool or rotor turns for one turn of the handle, 2 to 12.</param>
/// <param name="SpoolDiameter">Diameter of the wound line (m), 0.015 to 0.15.</param>
/// <param name="LineCapacity">Line on the spool (m), 20 to 1000: no more can be out.</param>
public sealed record Reel(double GearRatio, double SpoolDiameter, double LineCapacity = Reel.CommonCapacity)
{
    /// <summary>Line on the spool where a scenario does not say (m), common practice.</summary>
    public const double CommonCapacity = 150;

    /// <summary>Line taken in for one turn of the handle (m).</summary>
    public double LinePerTurn => GearRatio * Math.PI * SpoolDiameter;
}

/// <summary>Material of a line.</summary>
public enum LineKind
{
    /// <summary>Braided polyethylene.</summary>
    Braid,

    /// <summary>Nylon monofilament.</summary>
    Monofilament,

    /// <summary>Fluorocarbon (PVDF) monofilament.</summary>
    Fluorocarbon,
}

/// <summary>The main line.</summary>
/// <param name="Kind">Material.</param>
/// <param name="Strength">Nominal breaking force (N).</param>
/// <param name="Diameter">Diameter (m); from the table of nominal strengths when the scenario does not give it.</param>
public sealed record LineSpecification(LineKind Kind, double Strength, double Diameter);

/// <summary>The leader.</summary>
/// <param name="Kind">Material.</param>
/// <param name="Strength">Nominal breaking force (N).</param>
/// <param name="Diameter">Diameter (m).</param>
/// <param name="Length">Length (m), 0.05 to 5.</param>
public sealed record LeaderSpecification(LineKind Kind, double Strength, double Diameter, double Length);

/// <summary>Metal of a jig head.</summary>
public enum HeadMetal
{
    /// <summary>Lead, 11,340 kg/m3.</summary>
    Lead,

    /// <summary>Tungsten composite head, 17,000 kg/m3.</summary>
    Tungsten,

    /// <summary>Tin, 7,290 kg/m3.</summary>
    Tin,

    /// <summary>Zinc, 7,140 kg/m3.</summary>
    Zinc,

    /// <summary>Bismuth, 9,780 kg/m3.</summary>
    Bismuth,

    /// <summary>Steel, 7,850 kg/m3.</summary>
    Steel,

    /// <summary>Brass, 8,500 kg/m3; spoons only.</summary>
    Brass,
}

/// <summary>A jig head.</summary>
/// <param name="Mass">Mass of the head's metal (kg), 0 for an unweighted hook rig, otherwise 0.0005 to 0.2.</param>
/// <param name="Metal">Metal.</param>
/// <param name="HookMass">Mass of the steel hook (kg).</param>
/// <param name="Label">The weight as the user wrote it ("1/4 oz"), or "unweighted".</param>
public sealed record JigHead(double Mass, HeadMetal Metal, double HookMass, string Label)
{
    /// <summary>Where the metal sits.</summary>
    public WeightPlace Place { get; init; }

    /// <summary>True if it stands for no head at all: the body is a lure by itself.</summary>
    public bool IsNone { get; init; }

    /// <summary>Stands for the missing head of a body that needs none; it bears the body's name.</summary>
    /// <param name="body">The body.</param>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public static JigHead None(LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return new JigHead(0.0, HeadMetal.Steel, 0.0, body.Label) { IsNone = true };
    }
}

/// <summary>Profile of a lure body.</summary>
public enum BodyProfile
{
    /// <summary>Soft body with a thick swinging tail.</summary>
    PaddleTail,

    /// <summary>Straight soft bait without a swimming tail.</summary>
    SoftJerkbait,

    /// <summary>Soft shrimp imitation.</summary>
    ShrimpImitation,

    /// <summary>Hard bait fish with its own weight and hooks.</summary>
    HardTwitchbait,

    /// <summary>Bent plate of metal with a hook.</summary>
    Spoon,
}

/// <summary>A body: soft, for a jig head or hook, or a hard lure by itself.</summary>
/// <param name="Profile">Profile.</param>
/// <param name="Length">Overall length (m), 0.02 to 0.3.</param>
/// <param name="Height">Greatest height of the body (m); the thickness of a spoon.</param>
/// <param name="Width">Greatest width of the body (m).</param>
/// <param name="Density">Density of the material (kg/m3), 800 to 1400, of a hard twitchbait all in all; for a spoon the metal counts.</param>
/// <param name="Label">Name for people.</param>
public sealed record LureBody(BodyProfile Profile, double Length, double Height, double Width, double Density, string Label)
{
    /// <summary>Whether a hard twitchbait floats; null for others.</summary>
    public HardFloat? Buoyancy { get; init; }

    /// <summary>The diving lip of a hard twitchbait, or null.</summary>
    public LipShape? Lip { get; init; }

    /// <summary>The metal of a spoon; null for others.</summary>
    public HeadMetal? Metal { get; init; }

    /// <summary>True for a soft body, which goes on a jig head or a hook.</summary>
    public bool NeedsHead => Profile is not (BodyProfile.HardTwitchbait or BodyProfile.Spoon);

    /// <summary>Size at which it is seen from the side (m): the square root of its side area; a spoon is seen by its face.</summary>
    public double ApparentSize => Math.Sqrt(Length * (Profile == BodyProfile.Spoon ? Width : Height));
}

/// <summary>How the lure falls after splash-down.</summary>
public enum FallMode
{
    /// <summary>Open bail: line is paid out almost freely.</summary>
    SlackLine,

    /// <summary>Closed bail: no line is paid out, the lure swings in towards the rod tip.</summary>
    TightLine,
}

/// <summary>A way to fish the lure, as data: a cast, a fall and a repeated cycle of reeling, resting and rod work.</summary>
public sealed record Presentation
{
    // Compared by value: two presentations of the same moves are the same.
    private readonly ValueList<Move> moves = new([]);

    /// <summary>Name for people.</summary>
    public required string Name { get; init; }

    /// <summary>Horizontal distance from rod tip to splash-down (m), 2 to 80.</summary>
    public required double CastLength { get; init; }

    /// <summary>How the lure falls.</summary>
    public FallMode Fall { get; init; } = FallMode.SlackLine;

    /// <summary>Seconds from splash-down until the reel turns, 0 to 120; the fall ends sooner if the lure reaches bottom. Null: let it fall to the bottom.</summary>
    public double? CountDown { get; init; }

    /// <summary>
    /// Speed at which line is taken in while reeling (m/s), 0.02 to 3; in a retrieve of <see cref="Moves"/> the speed that their shares refer to, and 0 where none reels.
    /// </summary>
    public required double RetrieveSpeed { get; init; }

    /// <summary>Length of one stretch of reeling between pauses (s); null for a steady retrieve.</summary>
    public double? ReelFor { get; init; }

    /// <summary>Length of each pause (s); 0 for none.</summary>
    public double PauseFor { get; init; }

    /// <summary>Number of rod twitches at the start of each pause, 0 to 6.</summary>
    public int Twitches { get; init; }

    /// <summary>Upward travel of the rod tip in each twitch or lift (m), 0 to 2.5.</summary>
    public double TwitchHeight { get; init; }

    /// <summary>Time for one twitch, up and down (s), 0.1 to 5.</summary>
    public double TwitchPeriod { get; init; } = 0.5;

    /// <summary>The retrieve ends when this much line is left out (m).</summary>
    public double LineLeftAtEnd { get; init; } = 3.0;

    /// <summary>
    /// The moves of the retrieve, repeated until the line is in; empty for a retrieve by <see cref="ReelFor"/>, <see cref="PauseFor"/> and the twitches. A list with a swing is
    /// not repeated.
    /// </summary>
    public IReadOnlyList<Move> Moves
    {
        get => moves;
        init => moves = new ValueList<Move>([.. value]);
    }

    /// <summary>Name of the ready-made retrieve that the moves come from; null for none.</summary>
    public string? Style { get; init; }

    /// <summary>The retrieve ends this long after it began (s), if it has not ended before; null for no such end.</summary>
    public double? TimeLimit { get; init; }

    /// <summary>Direction of the cast, radians to the left of the spot's reference direction, 0 to 2 pi.</summary>
    public double Aim { get; init; }

    /// <summary>Speed at which boat or angler carry the rod along (m/s), 0 to 3.</summary>
    public double DriftSpeed { get; init; }

    /// <summary>Where they go, radians to the left of the spot's reference direction (not of the cast).</summary>
    public double DriftDirection { get; init; }

    /// <summary>Speed of the drift along the cast (m/s).</summary>
    public double DriftAlong => DriftSpeed * Math.Cos(DriftDirection - Aim);

    /// <summary>Speed of the drift to the left of the cast (m/s).</summary>
    public double DriftLeft => DriftSpeed * Math.Sin(DriftDirection - Aim);

    /// <summary>Greatest <see cref="RetrieveSpeed"/> (m/s) at which no move takes line in faster than 3 m/s.</summary>
    public double FastestSpeed => 3 / Math.Max(1, Moves.Select(move => move.ReelShare).DefaultIfEmpty(1).Max());

    /// <summary>Horizontal distance (m) from the rod tip, which may drift, to a point of a track.</summary>
    /// <param name="time">Time since splash-down (s).</param>
    /// <param name="x">Along the cast (m).</param>
    /// <param name="y">To the left (m).</param>
    public double DistanceFromRod(double time, double x, double y)
    {
        double along = x - (DriftAlong * time), left = y - (DriftLeft * time);
        return Math.Sqrt((along * along) + (left * left));
    }

    /// <summary>The retrieve as moves, whichever way it was given.</summary>
    public IReadOnlyList<Move> Cycle
    {
        get
        {
            if (Moves.Count > 0) return Moves;
            if (ReelFor is not { } reel || PauseFor <= 0) return [Move.ReelIn];
            double twitching = Twitches * TwitchPeriod;
            var moves = new List<Move> { new() { Kind = MoveKind.Reel, Duration = reel, ReelShare = 1 } };
            if (Twitches > 0) moves.Add(new Move { Kind = MoveKind.Twitch, Duration = twitching, Beats = Twitches, Up = TwitchHeight });
            if (PauseFor > twitching) moves.Add(new Move { Kind = MoveKind.Pause, Duration = PauseFor - twitching });
            return moves;
        }
    }

    /// <summary>True if the moves begin again after the last; a swing happens once, and nothing follows reeling until the line is in.</summary>
    public bool Repeats
    {
        get
        {
            foreach (Move move in Moves)
            {
                if (move.Kind == MoveKind.Swing) return false;
            }

            return true;
        }
    }
}
