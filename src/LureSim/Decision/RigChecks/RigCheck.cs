using LureSim.Coupling;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Swimming;

namespace LureSim.Decision.RigChecks;

/// <summary>What a rig does on its retrieve.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Speed">Speed through the water (m/s), median of the retrieve.</param>
/// <param name="LineElevation">Angle of the line above the level at the lure (radians), median of the retrieve.</param>
/// <param name="Retrieve">While the reel turns, over a dozen tries.</param>
/// <param name="Twitch">Under the twitches of the presentation; null where it has none.</param>
/// <param name="ExtraDrag">Drag while the reel turns over that of the same lure put on cleanly with its tail at rest, at the same angle of the line; 1 where it could not be computed.</param>
public sealed record RigAction(Rig Rig, double Speed, double LineElevation, EnsembleAssessment Retrieve, EnsembleAssessment? Twitch, double ExtraDrag);

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

    /// <summary>More than one of these at once.</summary>
    Several,

    /// <summary>The hook's gape is too wide for the bait.</summary>
    HookGape,

    /// <summary>The metal of a weighted hook sits too far forward or back on the shank.</summary>
    WeightStation,

    /// <summary>The tail is torn or short.</summary>
    TailLost,
}

/// <summary>One thing to fix that changes what the lure does.</summary>
/// <param name="Fault">What is wrong.</param>
/// <param name="Amount">By how much: metres, radians, or a share: of the body for a shank, of the shank for its metal, of the tail for what is lost; signed as in <see cref="Rigging"/>; 0 for several faults.</param>
/// <param name="Common">What is common instead of a shank, a gape (m) or the place of the metal on the shank, otherwise 0.</param>
/// <param name="Before">What the rig does as it is.</param>
/// <param name="After">What it does once this is fixed: a better verdict.</param>
/// <param name="Fixed">The rigging once this is fixed.</param>
public sealed record RigFix(RigFault Fault, double Amount, double Common, EnsembleAssessment Before, EnsembleAssessment After, Rigging Fixed);

/// <summary>A crooked rig put right: by the first of its fixes or, where none changes what it does, by all of them.</summary>
/// <param name="Rigging">The rigging.</param>
/// <param name="Parts">The lure by its parts.</param>
/// <param name="Retrieve">What it does while the reel turns.</param>
/// <param name="Twitch">Under the twitches of the presentation; null where it has none.</param>
public sealed record FixedRig(Rigging Rigging, LureAssembly Parts, EnsembleAssessment Retrieve, EnsembleAssessment? Twitch);

/// <summary>What the comparison of knots advises.</summary>
public enum KnotAdvice
{
    /// <summary>It hardly matters.</summary>
    Either,

    /// <summary>A loop gives more action.</summary>
    Loop,

    /// <summary>A snug knot gives more action.</summary>
    Snug,
}

/// <summary>A lure, put on cleanly, on a loop and on a snug knot of light and of heavy leader.</summary>
/// <param name="Retrieve">The retrieve.</param>
/// <param name="Loop">How far it swings on a loop (radians): the tail on a steady pull of a bait that has one, under twitches the nose off the pull, else the nose from its mean direction.</param>
/// <param name="SnugLight">On a snug knot of light leader.</param>
/// <param name="SnugHeavy">On a snug knot of heavy leader.</param>
/// <param name="MoreOnLoop">Tries of a dozen that swing farther on the loop than on the snug knot of heavy leader.</param>
/// <param name="Advice">What follows.</param>
public sealed record KnotRow(TriedRetrieve Retrieve, TrySpread Loop, TrySpread SnugLight, TrySpread SnugHeavy, int MoreOnLoop, KnotAdvice Advice);

/// <summary>What a lure does by how much of a fault it has and how fast it is pulled.</summary>
/// <param name="Fault">The fault.</param>
/// <param name="Amounts">How much of it: metres, radians or share, increasing.</param>
/// <param name="Speeds">Speeds (m/s), increasing.</param>
/// <param name="Cells">What it does, [amount, speed], each over some tries.</param>
public sealed record FaultMap(RigFault Fault, IReadOnlyList<double> Amounts, IReadOnlyList<double> Speeds, EnsembleAssessment[,] Cells);

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
/// <param name="Fixes">What to fix, by effect; empty where nothing would change the verdict.</param>
/// <param name="Knots">Knots compared, a row a retrieve; empty where not asked for.</param>
/// <param name="Faults">What each fault does by amount and speed; empty where not asked for.</param>
public sealed record RigFocus(
    RigAction Action,
    LureAssembly Parts,
    EnsembleAssessment Fall,
    EnsembleAssessment LoopTwitch,
    EnsembleAssessment SnugTwitch,
    ActionSweep? Sweep,
    SpinMap? Spin,
    IReadOnlyList<RigFix> Fixes,
    IReadOnlyList<KnotRow> Knots,
    IReadOnlyList<FaultMap> Faults)
{
    /// <summary>Speeds at which a hard lure swims; null where not asked for or for another lure.</summary>
    public SwimRange? Range { get; init; }

    /// <summary>The rig as it is.</summary>
    public required Rigging Rigging { get; init; }

    /// <summary>The rig put right; null where nothing is wrong with it.</summary>
    public FixedRig? Fixed { get; init; }
}

/// <summary>The answer of a check of rigs.</summary>
/// <param name="Scenario">The question.</param>
/// <param name="Rows">Every lure with every presentation, lure by lure.</param>
/// <param name="Focus">The rig looked at closely.</param>
public sealed record RigSheet(Scenario Scenario, IReadOnlyList<RigAction> Rows, RigFocus Focus);
