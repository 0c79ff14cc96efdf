using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Swimming;

namespace LureSim.Decision.RigChecks;

/// <summary>What a rig does on its retrieve.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Speed">Speed through the water (m/s), median of the retrieve.</param>
/// <param name="LineElevation">Angle of the line above the level at the lure (radians), median of the retrieve.</param>
/// <param name="Retrieve">While the reel turns.</param>
/// <param name="Twitch">Under the twitches of the presentation; null where it has none.</param>
/// <param name="ExtraDrag">Drag while the reel turns over that of the same lure put on cleanly with its tail at rest, at the same angle of the line; 1 where it could not be computed.</param>
public sealed record RigAction(Rig Rig, double Speed, double LineElevation, ActionAssessment Retrieve, ActionAssessment? Twitch, double ExtraDrag);

/// <summary>What can be wrong with the way a lure is put on its hook and tied on.</summary>
public enum RigFault
{
    /// <summary>The hook comes out to one side of the centre line.</summary>
    ExitSideways,

    /// <summary>The hook comes out too high or too low.</summary>
    ExitAbove,

    /// <summary>The body is bent.</summary>
    Bend,

    /// <summary>The hook point leans.</summary>
    PointLean,

    /// <summary>The head is turned on the body.</summary>
    HeadTurn,

    /// <summary>The bait is pulled up too far.</summary>
    PulledUp,

    /// <summary>The shank of the hook is too long.</summary>
    Shank,

    /// <summary>The knot is snug.</summary>
    Knot,
}

/// <summary>One thing to mend, with what it would change.</summary>
/// <param name="Fault">What is wrong.</param>
/// <param name="Amount">By how much: metres, radians or, for a shank, its share of the body; signed as in <see cref="Rigging"/>; 0 for a knot.</param>
/// <param name="Common">What is common instead: for a shank the share of the body that leaves the tail free, otherwise 0.</param>
/// <param name="Before">What the rig does as it is.</param>
/// <param name="After">What it would do.</param>
public sealed record Mending(RigFault Fault, double Amount, double Common, ActionReport Before, ActionReport After);

/// <summary>Action against speed.</summary>
/// <param name="Speeds">Speeds (m/s), increasing.</param>
/// <param name="AsRigged">Reports of the rig as it is, one for each speed.</param>
/// <param name="Clean">Reports of the same lure put on cleanly with the common shank; null where that is what it is.</param>
public sealed record ActionSweep(IReadOnlyList<double> Speeds, IReadOnlyList<ActionReport> AsRigged, IReadOnlyList<ActionReport>? Clean);

/// <summary>Spin rate by bend of the body and speed.</summary>
/// <param name="Bends">Bends in the plane of the rig's own (radians), increasing from 0.</param>
/// <param name="Speeds">Speeds (m/s), increasing.</param>
/// <param name="SpinRate">Turns a second, size, [bend, speed].</param>
/// <param name="TwistsPerMetre">Twists of line per metre, size, [bend, speed].</param>
/// <param name="Verdicts">Verdicts, [bend, speed].</param>
/// <param name="OwnBend">Bend of the rig as it is (radians), size.</param>
/// <param name="OwnSpeed">Its speed (m/s).</param>
public sealed record SpinMap(
    IReadOnlyList<double> Bends,
    IReadOnlyList<double> Speeds,
    double[,] SpinRate,
    double[,] TwistsPerMetre,
    ActionVerdict[,] Verdicts,
    double OwnBend,
    double OwnSpeed);

/// <summary>Everything about one rig.</summary>
/// <param name="Action">On its retrieve.</param>
/// <param name="Parts">The lure by its parts.</param>
/// <param name="Fall">On a slack line.</param>
/// <param name="LoopTwitch">Twitch, twitch, pause on a loop knot.</param>
/// <param name="SnugTwitch">The same on a snug knot.</param>
/// <param name="Sweep">Against speed; null where not asked for.</param>
/// <param name="Spin">Spin by bend and speed; null where not asked for or the lure is not soft.</param>
/// <param name="Mend">What to mend, most worthwhile first; empty where nothing would help.</param>
public sealed record RigFocus(
    RigAction Action,
    LureAssembly Parts,
    ActionAssessment Fall,
    ActionAssessment LoopTwitch,
    ActionAssessment SnugTwitch,
    ActionSweep? Sweep,
    SpinMap? Spin,
    IReadOnlyList<Mending> Mend);

/// <summary>The answer of a check of rigs.</summary>
/// <param name="Scenario">The question.</param>
/// <param name="Rows">Every lure with every presentation, lure by lure.</param>
/// <param name="Focus">The rig looked at closely.</param>
public sealed record RigSheet(Scenario Scenario, IReadOnlyList<RigAction> Rows, RigFocus Focus);
