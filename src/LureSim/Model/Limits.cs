namespace LureSim.Model;

/// <summary>
/// The ranges of the values of a scenario (SI). Scenario files and records built by hand are held to the same ones; where a record takes more than a file may
/// say, because the model itself varies the value, its own documentation says so.
/// </summary>
public static class Limits
{
    private const double Degree = Math.PI / 180.0;

    /// <summary>Water depth (m).</summary>
    public static ValueRange Depth { get; } = new(0.2, 60);

    /// <summary>Places in the water, as depths below the surface or heights above the bottom (m).</summary>
    public static ValueRange WithinWater { get; } = new(0, 60);

    /// <summary>Distances along a bottom profile, from below the rod tip (m).</summary>
    public static ValueRange ProfileDistance { get; } = new(0, 120);

    /// <summary>Places to the left of the line straight out (m), negative to the right.</summary>
    public static ValueRange Aside { get; } = new(-60, 60);

    /// <summary>Width of a structure (m).</summary>
    public static ValueRange StructureWidth { get; } = new(0.02, 60);

    /// <summary>Distance from a structure that counts as within reach (m).</summary>
    public static ValueRange StructureReach { get; } = new(0.05, 10);

    /// <summary>Speed of the current at the surface (m/s).</summary>
    public static ValueRange CurrentSpeed { get; } = new(0, 3);

    /// <summary>Wind speed (m/s).</summary>
    public static ValueRange WindSpeed { get; } = new(0, 25);

    /// <summary>Practical salinity.</summary>
    public static ValueRange Salinity { get; } = new(0, 42);

    /// <summary>Water temperature (degrees Celsius).</summary>
    public static ValueRange Temperature { get; } = new(-2, 40);

    /// <summary>A share of a whole.</summary>
    public static ValueRange Share { get; } = new(0, 1);

    /// <summary>Usual length of the target fish (m).</summary>
    public static ValueRange TargetLength { get; } = new(0.1, 2.5);

    /// <summary>Secchi depth (m).</summary>
    public static ValueRange SecchiDepth { get; } = new(0.05, 45);

    /// <summary>Chlorophyll a (kg/m3).</summary>
    public static ValueRange Chlorophyll { get; } = new(0, 3e-4);

    /// <summary>Absorption of the coloured dissolved matter at 440 nm (1/m).</summary>
    public static ValueRange Dissolved440 { get; } = new(0, 50);

    /// <summary>Suspended mineral (kg/m3).</summary>
    public static ValueRange Mineral { get; } = new(0, 2);

    /// <summary>Elevation of the sun (radians), negative below the horizon.</summary>
    public static ValueRange SunElevation { get; } = new(-Math.PI / 2.0, Math.PI / 2.0);

    /// <summary>Latitude (radians), north positive.</summary>
    public static ValueRange Latitude { get; } = new(-Math.PI / 2.0, Math.PI / 2.0);

    /// <summary>Longitude (radians), east positive.</summary>
    public static ValueRange Longitude { get; } = new(-Math.PI, Math.PI);

    /// <summary>First day for which sun and moon are computed.</summary>
    public static DateOnly FirstDay { get; } = new(1951, 1, 1);

    /// <summary>Last day for which sun and moon are computed.</summary>
    public static DateOnly LastDay { get; } = new(2049, 12, 31);

    /// <summary>Length of a rod (m).</summary>
    public static ValueRange RodLength { get; } = new(1, 5);

    /// <summary>Mass of a lure that a rod is rated for (kg).</summary>
    public static ValueRange RatedLure { get; } = new(0.0003, 0.3);

    /// <summary>Height of the rod tip above the water (m).</summary>
    public static ValueRange RodTipHeight { get; } = new(0.1, 6);

    /// <summary>Turns of the spool or rotor for one turn of the handle.</summary>
    public static ValueRange GearRatio { get; } = new(2, 12);

    /// <summary>Diameter of the wound line on the spool (m).</summary>
    public static ValueRange SpoolDiameter { get; } = new(0.015, 0.15);

    /// <summary>Line on the spool (m).</summary>
    public static ValueRange LineCapacity { get; } = new(20, 1000);

    /// <summary>Nominal breaking force of a line (N): 1 to 100 lb, opened a little for the rounding of units.</summary>
    public static ValueRange LineStrength { get; } = new(4.448, 445);

    /// <summary>Diameter of a line (m).</summary>
    public static ValueRange LineDiameter { get; } = new(0.00003, 0.0015);

    /// <summary>Length of a leader (m).</summary>
    public static ValueRange LeaderLength { get; } = new(0.05, 5);

    /// <summary>Mass of a head's metal (kg), where there is a head.</summary>
    public static ValueRange HeadMass { get; } = new(0.0005, 0.2);

    /// <summary>Mass of a hook (kg), where there is one.</summary>
    public static ValueRange HookMass { get; } = new(0.00005, 0.02);

    /// <summary>Overall length of a body (m).</summary>
    public static ValueRange BodyLength { get; } = new(0.02, 0.3);

    /// <summary>Greatest height or width of a body (m).</summary>
    public static ValueRange BodySide { get; } = new(0.002, 0.15);

    /// <summary>Thickness of the metal of a spoon (m).</summary>
    public static ValueRange SpoonThickness { get; } = new(0.0003, 0.01);

    /// <summary>Density of a soft body, or of a hard one all in all (kg/m3).</summary>
    public static ValueRange BodyDensity { get; } = new(800, 1400);

    /// <summary>Length and width of a diving lip (m).</summary>
    public static ValueRange LipSide { get; } = new(0.002, 0.08);

    /// <summary>Angle between a diving lip and the body's axis (radians).</summary>
    public static ValueRange LipAngle { get; } = new(5.0 * Degree, 85.0 * Degree);

    /// <summary>Inner length of a loop, clip or ring (m).</summary>
    public static ValueRange LoopLength { get; } = new(0.002, 0.05);

    /// <summary>Length of a hook's shank as a share of the body's length.</summary>
    public static ValueRange ShankShare { get; } = new(0.05, 0.95);

    /// <summary>How far off its place a hook comes out of the body (m).</summary>
    public static ValueRange HookExit { get; } = new(-0.015, 0.015);

    /// <summary>Bend of a body and lean of a hook's point (radians).</summary>
    public static ValueRange Lean { get; } = new(-45.0 * Degree, 45.0 * Degree);

    /// <summary>Angle between head and body (radians).</summary>
    public static ValueRange HeadTurn { get; } = new(-30.0 * Degree, 30.0 * Degree);

    /// <summary>How much too far a weedless bait is pulled up (m).</summary>
    public static ValueRange PulledUp { get; } = new(0, 0.015);

    /// <summary>Gape of a hook (m).</summary>
    public static ValueRange HookGape { get; } = new(0.002, 0.06);

    /// <summary>Place of the metal of a weighted hook as a share of its shank.</summary>
    public static ValueRange WeightStation { get; } = new(0, 1);

    /// <summary>Lost share of a tail; more than this leaves no stump that could swing.</summary>
    public static ValueRange TailLost { get; } = new(0, 0.75);

    /// <summary>Length of forage (m).</summary>
    public static ValueRange ForageLength { get; } = new(0.005, 0.5);

    /// <summary>Horizontal distance from the rod tip to the splash-down (m).</summary>
    public static ValueRange CastLength { get; } = new(2, 80);

    /// <summary>Time from splash-down to the retrieve (s).</summary>
    public static ValueRange CountDown { get; } = new(0, 120);

    /// <summary>Speed of line coming in or going out (m/s), where it moves.</summary>
    public static ValueRange LineSpeed { get; } = new(0.02, 3);

    /// <summary>Travel of the rod tip in a twitch or a lift (m).</summary>
    public static ValueRange Lift { get; } = new(0.01, 2.5);

    /// <summary>Length of a rest in a retrieve (s).</summary>
    public static ValueRange Rest { get; } = new(0.1, 60);

    /// <summary>Angle by which a cast may be turned from the direction of its presentation (radians).</summary>
    public static ValueRange CastTurn { get; } = new(-90.0 * Degree, 90.0 * Degree);

    /// <summary>Time after which a retrieve ends (s).</summary>
    public static ValueRange TimeLimit { get; } = new(5, 1800);

    /// <summary>Line left at the end of a retrieve (m).</summary>
    public static ValueRange LineLeft { get; } = new(0.3, 60);

    /// <summary>Speed at which boat or angler carry the rod along (m/s).</summary>
    public static ValueRange DriftSpeed { get; } = new(0, 3);

    /// <summary>Current at a point of the tide (m/s), negative against the direction of the spot's current.</summary>
    public static ValueRange TidalCurrent { get; } = new(-3, 3);

    /// <summary>Mean level of a tide above the level to which a depth refers (m).</summary>
    public static ValueRange TideLevel { get; } = new(-10, 10);

    /// <summary>Amplitude of a constituent of the tide (m).</summary>
    public static ValueRange TidalAmplitude { get; } = new(0, 8);

    /// <summary>Change of the depth at a point of the tide (m).</summary>
    public static ValueRange DepthChange { get; } = new(-20, 20);

    /// <summary>Figure of an observation: seconds, turns, radians or metres.</summary>
    public static ValueRange Observed { get; } = new(-4, 3600);

    /// <summary>Standard deviation of an observer's error, in the unit of what was observed.</summary>
    public static ValueRange ObservationError { get; } = new(1e-4, 600);

    /// <summary>Depth of a pool, or distance between two marks (m).</summary>
    public static ValueRange ObservedLength { get; } = new(0.1, 500);

    /// <summary>Factor on a computed drag.</summary>
    public static ValueRange DragFactor { get; } = new(0.1, 10);
}
