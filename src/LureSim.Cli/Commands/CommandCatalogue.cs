using LureSim.Cli.Hosting;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>A command of the program: one list feeds the parser, the help and the shell completions.</summary>
/// <param name="Name">The verb.</param>
/// <param name="Description">What it does, one sentence.</param>
/// <param name="Settings">Type of its settings, whose attributes name the options.</param>
/// <param name="Add">Adds the command to a configuration.</param>
internal sealed record CommandEntry(string Name, string Description, Type Settings, Func<IConfigurator, ICommandConfigurator> Add);

/// <summary>All commands.</summary>
internal static class CommandCatalogue
{
    /// <summary>The commands in the order of the help.</summary>
    public static IReadOnlyList<CommandEntry> All { get; } =
    [
        Entry<NewCommand, NewSettings>("new", "Start here: answer questions in plain words and get a scenario.", [], ["creek.yaml", "--all"], ["--answers", "answers.yaml"]),
        Entry<PlanCommand, PlanSettings>("plan", "Find what to throw at a spot and how: the card and the sheet.", ["scenarios/bridge-channel.yaml"], ["scenarios/grass-flat.yaml", "--out", "out/grass-flat", "--pdf"]),
        Entry<OpenCommand, OpenSettings>("open", "Open the live page: turn a knob and see where each head runs.", ["scenarios/grass-flat.yaml"], ["scenarios/bridge-channel.yaml", "--no-browser"]),
        Entry<PocketCommand, PocketSettings>("pocket", "Write a page for the phone that needs no signal.", ["scenarios/bridge-channel.yaml"], ["scenarios/grass-flat.yaml", "scenarios/dock-dusk.yaml", "--out", "out/saturday", "--minutes", "5"]),
        Entry<TripCommand, TripSettings>("trip", "Plan a day: which spot at which hour of its tide, what to pack, and a page for each.", ["scenarios/grass-flat.yaml", "scenarios/bridge-channel.yaml"], ["scenarios/trips/saturday.yaml", "--out", "out/saturday", "--pdf"]),
        Entry<CardCommand, CardSettings>("card", "Write the cards alone: a page for the phone, a paper with two to cut out, a text.", ["scenarios/bridge-channel.yaml"], ["scenarios/grass-flat.yaml", "scenarios/dock-dusk.yaml", "--out", "out/cards"]),
        Entry<CompareCommand, CompareSettings>("compare", "Compare two rigs, yours and theirs, and say which difference matters.", ["scenarios/two-rigs.yaml"], ["scenarios/two-rigs.yaml", "--units", "metric", "--json"]),
        Entry<FallCommand, FallSettings>("fall", "Show the sink counts: seconds to each depth for every jig head.", ["scenarios/dock-dusk.yaml"], ["scenarios/dock-dusk.yaml", "--units", "metric", "--csv"]),
        Entry<CastCommand, CastSettings>("cast", "Show how far this rod throws each lure of your box.", ["scenarios/inlet-cut.yaml"], ["scenarios/inlet-cut.yaml", "--units", "metric", "--csv"]),
        Entry<PathCommand, PathSettings>("path", "Show the path of one lure, moment by moment.", ["scenarios/bridge-channel.yaml", "--weight", "1/2 oz"], ["scenarios/grass-flat.yaml", "--weight", "3/16 oz", "--presentation", "stop and go", "--csv"]),
        Entry<AskCommand, AskSettings>("ask", "Quick answers: how heavy, how fast, how long a count.", ["scenarios/bridge-channel.yaml"], ["scenarios/grass-flat.yaml", "--weight", "1/8 oz", "--depth", "1.5 ft", "--json"]),
        Entry<RetrieveCommand, RetrieveSettings>("retrieve", "Find the retrieve that keeps the lure working in the strike zone, and what each one costs.", ["scenarios/grass-flat.yaml"], ["scenarios/bridge-channel.yaml", "--weight", "1/2 oz", "--out", "out/retrieve"]),
        Entry<TideCommand, TideSettings>("tide", "Best weight, hour by hour of the tide, and by depth and current.", ["scenarios/bridge-channel.yaml"], ["scenarios/bridge-channel.yaml", "--presentation", "lift and drop", "--units", "metric", "--out", "out/tide"]),
        Entry<ActionCommand, ActionSettings>("action", "Check how each rig swims, darts, sinks or spins, and what to fix.", ["scenarios/rigging-lesson.yaml"], ["scenarios/rigging-lesson.yaml", "--weight", "unweighted", "--out", "out/rigging"]),
        Entry<ColoursCommand, ColoursSettings>("colours", "Show how each color looks with depth in this water.", ["scenarios/creek-mouth.yaml"], ["scenarios/creek-mouth.yaml", "--out", "out/creek-mouth"]),
        Entry<SeenCommand, SeenSettings>("seen", "Note what you saw, felt or timed; the plan learns from it.", ["creek.yaml", "1/4 oz bottom at 9"], ["creek.yaml", "float 30 ft in 18 s"]),
        Entry<CalibrateCommand, CalibrateSettings>("calibrate", "Turn timed falls in a pool into a lure's own drag, kept in a tackle file.", ["scenarios/pass-edge.yaml"], ["scenarios/pass-edge.yaml", "--box", "my-box.yaml"]),
        Entry<TeachCommand, TeachSettings>("teach", "Draw the plates for teaching: why red turns black, how far off colors are seen, silhouettes, swatches.", ["scenarios/creek-mouth.yaml"], ["scenarios/grass-flat.yaml", "--out", "out/lesson", "--units", "metric", "--pdf"]),
        Entry<CheckCommand, CheckSettings>("check", "Check scenarios and report every problem; nothing is run or written.", ["scenarios/grass-flat.yaml"], ["scenarios/grass-flat.yaml", "scenarios/dock-dusk.yaml", "--json"]),
        Entry<SchemaCommand, SchemaSettings>("schema", "Print the JSON Schema of scenarios or trips for editors, or the reference of all keys.", [], ["--out", "docs/schema"], ["--reference"], ["--trip", "--out", "docs/schema"]),
        Entry<CompletionCommand, CompletionSettings>("completion", "Print a completion script for a shell.", ["bash"], ["zsh"], ["fish"]),
    ];

    /// <summary>Adds all commands.</summary>
    public static void AddTo(IConfigurator config, CliHost host)
    {
        foreach (CommandEntry entry in All)
            entry.Add(config).WithData(host);
    }

    private static CommandEntry Entry<TCommand, TSettings>(string name, string description, params string[][] examples)
        where TCommand : class, ICommandLimiter<TSettings>
        where TSettings : CommandSettings =>
        new(name, description, typeof(TSettings), config =>
        {
            ICommandConfigurator command = config.AddCommand<TCommand>(name).WithDescription(description);
            foreach (string[] example in examples)
                command = command.WithExample([name, .. example.Select(Quoted)]);
            return command;
        });

    // As it must be typed in a shell.
    private static string Quoted(string argument) => argument.Contains(' ', StringComparison.Ordinal) ? $"\"{argument}\"" : argument;
}
