using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.Colours;
using LureSim.Decision.Inverse;
using LureSim.Decision.Observations;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;

namespace LureSim.Report.Sheets;

/// <summary>All that goes onto the sheet of one spot. Values SI; texts are plain text and are escaped on writing.</summary>
public sealed record Sheet
{
    /// <summary>The scenario.</summary>
    public required Scenario Scenario { get; init; }

    /// <summary>All candidates: heads, bodies and presentations.</summary>
    public required IReadOnlyList<Candidate> Candidates { get; init; }

    /// <summary>Everything that was compared, by the numbers of the tries, the choice first; by those of single runs where no search weighed them.</summary>
    public IReadOnlyList<TriedRig> Compared { get => field ?? TriedRig.Of(Choice.First, Candidates); init; }

    /// <summary>The choice.</summary>
    public required Choice Choice { get; init; }

    /// <summary>Why it is the choice; three lines at most.</summary>
    public IReadOnlyList<string> Why { get; init; } = [];

    /// <summary>What may go wrong with it; plain sentences.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>The count-down table, or null.</summary>
    public FallTable? Fall { get; init; }

    /// <summary>Coverage by head and speed, or null.</summary>
    public CoverageGrid? Coverage { get; init; }

    /// <summary>Current at depths from the surface down; empty for still water.</summary>
    public IReadOnlyList<CurrentSample> Current { get; init; } = [];

    /// <summary>The colour to use, or null when none was computed.</summary>
    public ColourChoice? Colour { get; init; }

    /// <summary>What the colors look like where the lure runs, and in murkier and clearer water; plain sentences.</summary>
    public IReadOnlyList<string> Seen { get; init; } = [];

    /// <summary>What observations did to the choice, or null.</summary>
    public CalibratedChoice? Observed { get; init; }

    /// <summary>What to look at next, the most telling first.</summary>
    public IReadOnlyList<NextLook> LookNext { get; init; } = [];

    /// <summary>Colours with depth, or null.</summary>
    public ColourPlate? Colours { get; init; }

    /// <summary>Light with depth, or null.</summary>
    public SpectrumPlate? Spectrum { get; init; }

    /// <summary>How far off the fish makes out the colours, or null.</summary>
    public SightFinding? Sight { get; init; }

    /// <summary>How the first choice swims, or null.</summary>
    public RigFocus? RigCheck { get; init; }

    /// <summary>The choice of colour where the lure runs, or null.</summary>
    public ColourAdvice? ColourAdvice { get; init; }

    /// <summary>How deep the parts of lures of several colours can be told apart.</summary>
    public IReadOnlyList<PatternParts> Patterns { get; init; } = [];

    /// <summary>The choice of the body, or null.</summary>
    public BodyChoice? Body { get; init; }

    /// <summary>Ranking of the tackle box, or null.</summary>
    public BoxAdvice? Box { get; init; }

    /// <summary>All heads over draws of what is not known well, or null.</summary>
    public UncertaintyStudy? Uncertainty { get; init; }

    /// <summary>Questions asked backwards; may be empty.</summary>
    public IReadOnlyList<InverseAnswer> Answers { get; init; } = [];

    /// <summary>Units of everything on the sheet.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>Further limits of this run, beside the constant ones; plain sentences.</summary>
    public IReadOnlyList<string> Limits { get; init; } = [];

    /// <summary>The sheet of a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of the sheet.</param>
    /// <returns>The sheet.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static Sheet Of(Plan plan, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new Sheet
        {
            Scenario = plan.Scenario,
            Candidates = plan.Candidates,
            Compared = plan.Compared,
            Choice = plan.Choice,
            Why = ChoiceWords.Why(plan, units),
            Warnings = ChoiceWords.Warnings(plan, units),
            Fall = plan.FallTable,
            Coverage = plan.Grid,
            Current = Plates.Current(plan.Scenario.Spot),
            Colour = new ColourChoice(plan.Colours.Advice.Choice.Name, CardWords.Why(plan.Colours.Advice)),
            Seen = [.. ColourWords.Seen(plan.Colours, units), .. plan.Clarity is { } clarity ? [ColourWords.Clarity(clarity, units)] : Array.Empty<string>()],
            Colours = Plates.Colours(plan.Colours.Chart),
            Spectrum = Plates.Spectrum(plan.Colours.Chart),
            ColourAdvice = plan.Colours.Advice,
            Patterns = SpotColours.Patterns(plan.Scenario, plan.Colours.Chart.Field),
            Body = plan.Body,
            Box = plan.Box,
            Sight = SightFinding.Of(plan.Scenario, plan.Colours, new UnitFormat(units).LengthScale),
            RigCheck = plan.RigCheck,
            Uncertainty = plan.Uncertainty,
            Observed = plan.Seen,
            LookNext = plan.LookNext,
            Answers = plan.Answers,
            Units = units,
            Limits = ChoiceWords.Notes(plan, units),
        };
    }

    /// <summary>The card of the sheet.</summary>
    /// <returns>The card.</returns>
    public Card Card() => Words.Card.Of(
        new CardFacts(Scenario, Choice.First) { Choice = Choice, Colour = Colour, Backup = Choice.Fallback, Uncertainty = Uncertainty, RigCheck = RigCheck, Warnings = Choice.Warnings, Observed = Observed, LookNext = LookNext },
        Units);
}

/// <summary>A file of the sheet.</summary>
/// <param name="Name">Relative name with forward slashes.</param>
/// <param name="Bytes">Content.</param>
public sealed record SheetFile(string Name, ReadOnlyMemory<byte> Bytes);

/// <summary>Which files to make beside the HTML page.</summary>
[Flags]
public enum SheetOutputs
{
    /// <summary>The HTML page alone.</summary>
    None = 0,

    /// <summary>Each figure as PNG.</summary>
    Png = 1,

    /// <summary>Each figure as SVG.</summary>
    Svg = 2,

    /// <summary>PDF to print.</summary>
    Pdf = 4,
}
