using LureSim.Decision;
using LureSim.Decision.Colours;
using LureSim.Decision.Comparison;
using LureSim.Decision.Inverse;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Search;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Decision.Trips;
using LureSim.Model;
using LureSim.Report.Units;
using Spectre.Console;

namespace LureSim.Cli.Hosting;

/// <summary>The world outside the commands: streams, consoles and the model's entry points. Tests supply their own.</summary>
internal sealed class CliHost
{
    // Wide enough that nothing is wrapped in files and pipes.
    private const int WidthWithoutTerminal = 400;

    private CliHost(TextWriter output, TextWriter error, IAnsiConsole outputConsole, IAnsiConsole errorConsole, bool errorIsTerminal, IPipeline pipeline)
    {
        Output = output;
        Error = error;
        OutputConsole = outputConsole;
        ErrorConsole = errorConsole;
        ErrorIsTerminal = errorIsTerminal;
        Pipeline = pipeline;
    }

    /// <summary>Standard output, for JSON, CSV, schemas and scripts.</summary>
    public TextWriter Output { get; }

    /// <summary>Standard error.</summary>
    public TextWriter Error { get; }

    /// <summary>Standard output as a console, for tables.</summary>
    public IAnsiConsole OutputConsole { get; }

    /// <summary>Standard error as a console, for messages and progress.</summary>
    public IAnsiConsole ErrorConsole { get; }

    /// <summary>True if a person looks at standard error: only then is there a progress bar.</summary>
    public bool ErrorIsTerminal { get; }

    /// <summary>Standard input.</summary>
    public TextReader Input { get; init; } = TextReader.Null;

    /// <summary>True if a person types on standard input and sees standard output.</summary>
    public bool InputIsTerminal { get; init; }

    /// <summary>The time.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>The computations.</summary>
    public IPipeline Pipeline { get; }

    /// <summary>The console for human text: standard error when standard output carries a document.</summary>
    public IAnsiConsole Human(bool outputIsDocument) => outputIsDocument ? ErrorConsole : OutputConsole;

    /// <summary>The host of the real program.</summary>
    /// <param name="pipeline">The computations.</param>
    public static CliHost ForProcess(IPipeline pipeline)
    {
        bool colour = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        return Create(Console.Out, Console.Error, !Console.IsOutputRedirected, !Console.IsErrorRedirected, colour, pipeline, Console.In, !Console.IsInputRedirected && !Console.IsOutputRedirected);
    }

    /// <summary>A host on any streams.</summary>
    /// <param name="output">Standard output.</param>
    /// <param name="error">Standard error.</param>
    /// <param name="outputIsTerminal">True if a terminal shows standard output.</param>
    /// <param name="errorIsTerminal">True if a terminal shows standard error.</param>
    /// <param name="colour">False to print without colour (the NO_COLOR convention).</param>
    /// <param name="pipeline">The computations.</param>
    /// <param name="input">Standard input; null for none.</param>
    /// <param name="inputIsTerminal">True if a person types on it.</param>
    /// <param name="clock">The time; null for the system's.</param>
    public static CliHost Create(TextWriter output, TextWriter error, bool outputIsTerminal, bool errorIsTerminal, bool colour, IPipeline pipeline, TextReader? input = null, bool inputIsTerminal = false, TimeProvider? clock = null) =>
        new(output, error, CreateConsole(output, outputIsTerminal, colour), CreateConsole(error, errorIsTerminal, colour), errorIsTerminal, pipeline)
        {
            Input = input ?? TextReader.Null,
            InputIsTerminal = inputIsTerminal,
            Clock = clock ?? TimeProvider.System,
        };

    private static IAnsiConsole CreateConsole(TextWriter writer, bool isTerminal, bool colour)
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = isTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = isTerminal && colour ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = isTerminal ? InteractionSupport.Detect : InteractionSupport.No,
        });
        console.Pipeline.Attach(new ShownTexts());
        if (!isTerminal)
        {
            console.Profile.Width = WidthWithoutTerminal;
            console.Profile.Capabilities.Unicode = true;
        }

        return console;
    }
}

/// <summary>The computations that the commands show. One interface, so that the commands can be tested on made-up results.</summary>
internal interface IPipeline
{
    /// <summary>Seeks the choice with its numbers and its colour: the same for every command.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="limits">What the choice is held to.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    ChosenRig Choose(Scenario scenario, ChoiceLimits limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes the count-down table of every jig head with the bait of a rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="units">Units in which the depths of the table are round.</param>
    /// <param name="cancellation">Stops the work.</param>
    FallTable Fall(Scenario scenario, Rig rig, UnitSystem units, CancellationToken cancellation);

    /// <summary>Computes the colours shown at depths below the surface.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="chosen">The choice.</param>
    /// <param name="cancellation">Stops the work.</param>
    ColourTable Colours(Scenario scenario, ChosenRig chosen, CancellationToken cancellation);

    /// <summary>Computes a lesson in light and sight and draws its plates.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    LessonOutcome Teach(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes how the rigs swim and draws the figures of one.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="focus">The rig to look at closely; null for the first.</param>
    /// <param name="faults">True for the maps of faults.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="draw">True to draw the figures.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    ActionOutcome Action(Scenario scenario, Rig? focus, bool faults, PlanRequest request, bool draw, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes the whole plan and draws its sheet.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    PlanOutcome Plan(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Plans every spot, without drawing.</summary>
    /// <param name="scenarios">Validated scenarios; at least one.</param>
    /// <param name="limits">What each choice is held to.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    IReadOnlyList<PlanOutcome> Plans(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Plans every spot of a trip and draws its pages.</summary>
    /// <param name="scenarios">Validated scenarios in the order of the trip; at least one.</param>
    /// <param name="limits">What each choice is held to.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    TripOutcome Trip(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Compares the two rigs of a scenario and draws the page.</summary>
    /// <param name="scenario">A validated scenario with two rigs to compare.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    CompareOutcome Compare(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Answers questions asked backwards: the head that holds the bottom, and speed and count-down for each head.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its head is not used.</param>
    /// <param name="heads">Heads that speed and count-down are asked for.</param>
    /// <param name="depth">Depth that the retrieve should hold (m); null for the middle of the strike zone.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    IReadOnlyList<InverseAnswer> Ask(Scenario scenario, Rig rig, IReadOnlyList<JigHead> heads, double? depth, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Searches the best retrieve of a lure and draws its page.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its retrieve does not matter.</param>
    /// <param name="runs">Simulated casts for each kind of retrieve.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    SearchOutcome Search(Scenario scenario, Rig rig, int runs, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes weights for the tide and draws their page.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its head does not matter.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    TideOutcome Tide(Scenario scenario, Rig rig, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);
}

/// <summary>A search for a retrieve with its page, not yet written.</summary>
/// <param name="Search">The search.</param>
/// <param name="Units">Units of its sentences.</param>
/// <param name="Pages">Files of the page and its figures.</param>
internal sealed record SearchOutcome(RetrieveSearch Search, UnitSystem Units, IReadOnlyList<OutputFile> Pages);

/// <summary>Weights for a tide with the files of their page, not yet written.</summary>
/// <param name="Table">The weights.</param>
/// <param name="Pages">Files of the page and its figures.</param>
internal sealed record TideOutcome(TideTable Table, IReadOnlyList<OutputFile> Pages);

/// <summary>What a plan or a lesson is asked for beside the scenario.</summary>
/// <param name="Units">Units of the drawings.</param>
/// <param name="Pdf">True to draw them as PDF as well.</param>
/// <param name="Samples">Draws of the uncertain inputs for each jig head; null for what the scenario asks for.</param>
internal sealed record PlanRequest(UnitSystem Units, bool Pdf, int? Samples = null)
{
    /// <summary>Hours of a trip; null for none.</summary>
    public TripClock? Clock { get; init; }

    /// <summary>Name of a trip; null for one by its spots.</summary>
    public string? Title { get; init; }

    /// <summary>What the choice is held to.</summary>
    public ChoiceLimits Limits { get; init; } = new();
}

/// <summary>A plan with the files of its sheet, not yet written.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Colours">Its colours as a table.</param>
/// <param name="Sheet">Files of the sheet and its figures.</param>
internal sealed record PlanOutcome(Plan Plan, ColourTable Colours, IReadOnlyList<OutputFile> Sheet)
{
    /// <summary>Units of the sentences in it.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Us;
}

/// <summary>A trip with its pages, not yet written.</summary>
/// <param name="Trip">The trip.</param>
/// <param name="Spots">The plans with their colours; their own sheets are not drawn.</param>
/// <param name="Pages">Files of the trip.</param>
internal sealed record TripOutcome(Report.Trips.Trip Trip, IReadOnlyList<PlanOutcome> Spots, IReadOnlyList<OutputFile> Pages);

/// <summary>A comparison with its page, not yet written.</summary>
/// <param name="Comparison">The comparison.</param>
/// <param name="Pages">Files of the page and its figures.</param>
internal sealed record CompareOutcome(RigComparison Comparison, IReadOnlyList<OutputFile> Pages);

/// <summary>A check of rigs with its figures, not yet written.</summary>
/// <param name="Sheet">The check.</param>
/// <param name="Figures">Files of the figures; empty where none were asked for.</param>
internal sealed record ActionOutcome(RigSheet Sheet, IReadOnlyList<OutputFile> Figures);

/// <summary>A lesson with its plates, not yet written.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Plates">Files of the plates.</param>
internal sealed record LessonOutcome(Lesson Lesson, IReadOnlyList<OutputFile> Plates);

/// <summary>Colours of lures at depths, as an eye used to the light there sees them.</summary>
/// <param name="Depths">Depths (m), increasing.</param>
/// <param name="Columns">One column a colour, in the order of the tackle box.</param>
internal sealed record ColourTable(IReadOnlyList<double> Depths, IReadOnlyList<ColourColumn> Columns)
{
    /// <summary>How deep the parts of lures of several colours can be told apart.</summary>
    public IReadOnlyList<Sight.PatternParts> Patterns { get; init; } = [];
}

/// <summary>One colour at all depths.</summary>
/// <param name="Name">Name as in the scenario.</param>
/// <param name="Srgb">Colours as "#rrggbb", one for each depth.</param>
/// <param name="RelativeLuminance">Luminance over that of a perfect white at the same depth, one for each depth; fluorescent colours can pass 1.</param>
/// <param name="Words">How the colour reads to a person, in a word, one for each depth.</param>
internal sealed record ColourColumn(string Name, IReadOnlyList<string> Srgb, IReadOnlyList<double> RelativeLuminance, IReadOnlyList<string> Words);
