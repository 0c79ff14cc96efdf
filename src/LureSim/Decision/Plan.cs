using LureSim.Decision.Inverse;
using LureSim.Decision.Uncertainty;
using LureSim.Light;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Sight;

namespace LureSim.Decision;

/// <summary>One lure on one line, fished one way.</summary>
/// <param name="Head">Jig head.</param>
/// <param name="Body">Soft body.</param>
/// <param name="Presentation">The way it is fished.</param>
public sealed record Rig(JigHead Head, LureBody Body, Presentation Presentation);

/// <summary>Where one track spent its time; shares are of the retrieve (from the first turn of the handle to the end), 0 to 1.</summary>
/// <param name="ZoneShare">Share of the retrieve inside the strike zone.</param>
/// <param name="AboveShare">Share above the zone.</param>
/// <param name="BelowShare">Share below the zone.</param>
/// <param name="BottomShare">Share in contact with the bottom.</param>
/// <param name="GrassShare">Share inside the grass canopy.</param>
/// <param name="TimeToZone">Seconds from splash-down to the first entry into the zone; null if it never gets there.</param>
/// <param name="TimeToBottom">Seconds from splash-down to the first bottom contact; null if it never gets there.</param>
/// <param name="MedianDepth">Median depth during the retrieve (m).</param>
/// <param name="DeepestDepth">Greatest depth (m).</param>
/// <param name="RetrieveTime">Duration of the retrieve (s).</param>
/// <param name="DriftAcross">Greatest sideways displacement by the current (m).</param>
public sealed record Coverage(
    double ZoneShare,
    double AboveShare,
    double BelowShare,
    double BottomShare,
    double GrassShare,
    double? TimeToZone,
    double? TimeToBottom,
    double MedianDepth,
    double DeepestDepth,
    double RetrieveTime,
    double DriftAcross);

/// <summary>A simulated rig with its coverage.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Track">Its computed path.</param>
/// <param name="Coverage">Where it spent its time.</param>
/// <param name="Score">Ranking value, 0 to 1, larger is better; see the user guide for its parts.</param>
/// <param name="Verdict">One plain sentence about what this rig does here.</param>
public sealed record Candidate(Rig Rig, Track Track, Coverage Coverage, double Score, string Verdict);

/// <summary>Fall of one lure: free (on slack line, no line drag) and on the line, straight down in still water and in the spot's current.</summary>
/// <param name="Head">Jig head.</param>
/// <param name="TerminalSpeed">Terminal fall rate of the lure free of the line (m/s).</param>
/// <param name="SlackLineSeconds">Seconds to each depth on slack line with the line pulled through the water; null where not reached.</param>
/// <param name="TightLineSeconds">Seconds to each depth on a closed bail from the end of the cast; null where not reached.</param>
public sealed record FallColumn(JigHead Head, double TerminalSpeed, IReadOnlyList<double?> SlackLineSeconds, IReadOnlyList<double?> TightLineSeconds);

/// <summary>Count-down table: seconds to depth by jig head.</summary>
/// <param name="Depths">Depths (m), increasing.</param>
/// <param name="Columns">One column a jig head, in the order of the tackle box.</param>
public sealed record FallTable(IReadOnlyList<double> Depths, IReadOnlyList<FallColumn> Columns);

/// <summary>Share of the retrieve in the strike zone by jig head and retrieve speed.</summary>
/// <param name="PresentationName">The presentation that was varied.</param>
/// <param name="Heads">Jig heads (rows).</param>
/// <param name="Speeds">Retrieve speeds (m/s) (columns).</param>
/// <param name="ZoneShare">Share, 0 to 1, [head, speed].</param>
/// <param name="BottomShare">Share in contact with the bottom, 0 to 1, [head, speed].</param>
/// <param name="GrassShare">Share in the grass, 0 to 1, [head, speed].</param>
/// <param name="MedianDepth">Median depth (m), [head, speed].</param>
public sealed record CoverageGrid(
    string PresentationName,
    IReadOnlyList<JigHead> Heads,
    IReadOnlyList<double> Speeds,
    double[,] ZoneShare,
    double[,] BottomShare,
    double[,] GrassShare,
    double[,] MedianDepth);

/// <summary>A recommendation with its reasons.</summary>
/// <param name="First">The first choice.</param>
/// <param name="Fallback">The second choice: the best candidate with another jig head, or null when there is only one head.</param>
/// <param name="Reasons">Sentences with numbers that justify the choice.</param>
/// <param name="Warnings">Sentences about what may go wrong with it, or where the model is weak here.</param>
public sealed record Choice(Candidate First, Candidate? Fallback, IReadOnlyList<string> Reasons, IReadOnlyList<string> Warnings);

/// <summary>What the lure's colours look like where it runs.</summary>
/// <param name="Chart">Every colour of the tackle box against depth, from the surface to the bottom.</param>
/// <param name="RunningDepth">Depth at which the first choice runs: its median depth in the retrieve (m).</param>
/// <param name="AtRunningDepth">The same colours at that depth alone.</param>
/// <param name="RedDarkens">Depths at which a red lure goes dark in this water, by each criterion.</param>
/// <param name="Brightest">Index of the colour of greatest luminance at the running depth.</param>
/// <param name="Darkest">Index of the colour of least luminance at the running depth: the strongest silhouette from below.</param>
/// <param name="SeenLevel">How far off the fish makes out each colour at the running depth, looking level; farthest first.</param>
/// <param name="SeenFromBelow">The same looking up.</param>
/// <param name="Chosen">Index of the colour that the fish makes out farthest looking level.</param>
/// <param name="Eye">The eye of the target fish.</param>
public sealed record ColourFinding(
    ColourChart Chart,
    double RunningDepth,
    ColourChart AtRunningDepth,
    IReadOnlyList<DarkDepth> RedDarkens,
    int Brightest,
    int Darkest,
    IReadOnlyList<Sighting> SeenLevel,
    IReadOnlyList<Sighting> SeenFromBelow,
    int Chosen,
    FishEye Eye)
{
    /// <summary>The choice of colour where the first choice really runs; null for colours at a nominal depth, where <see cref="Chosen"/> is the one made out farthest.</summary>
    public ColourAdvice? Advice { get; init; }
}

/// <summary>The answer to a scenario.</summary>
/// <param name="Scenario">The question.</param>
/// <param name="Candidates">Every jig head with every presentation and the body of the rules: head by head in the order of the tackle box, presentations in their order within; then every head with the runner-up body, fished like the best of these.</param>
/// <param name="Choice">The recommendation.</param>
/// <param name="FallTable">Count-down table.</param>
/// <param name="Grid">Share in the zone by head and retrieve speed, for the chosen presentation.</param>
/// <param name="Colours">Colours.</param>
/// <param name="Notes">Sentences on the limits of the inputs (a Secchi depth outside the kind of water, a run that was cut short).</param>
public sealed record Plan(
    Scenario Scenario,
    IReadOnlyList<Candidate> Candidates,
    Choice Choice,
    FallTable FallTable,
    CoverageGrid Grid,
    ColourFinding Colours,
    IReadOnlyList<string> Notes)
{
    /// <summary>How the first choice swims, and what to mend; null where it was not computed.</summary>
    public RigFocus? RigCheck { get; init; }

    /// <summary>All heads of the chosen presentation over draws of what is not known well; null if no draws were asked for.</summary>
    public UncertaintyStudy? Uncertainty { get; init; }

    /// <summary>The colours in murkier and clearer water; null if the clarity is known, or was not given by a Secchi depth.</summary>
    public ClaritySpread? Clarity { get; init; }

    /// <summary>Questions asked backwards: the head that holds the bottom, and speed and count-down for the first choice.</summary>
    public IReadOnlyList<InverseAnswer> Answers { get; init; } = [];

    /// <summary>The choice of the body, or null where it was not asked for.</summary>
    public BodyChoice? Body { get; init; }

    /// <summary>Ranking of the tackle box, or null where it was not asked for.</summary>
    public BoxAdvice? Box { get; init; }

    /// <summary>The candidates of the chosen presentation, one a jig head: what the side view draws.</summary>
    public IReadOnlyList<Candidate> OfChosenPresentation =>
        [.. Candidates.Where(c => c.Rig.Presentation == Choice.First.Rig.Presentation && c.Rig.Body == Choice.First.Rig.Body)];
}
