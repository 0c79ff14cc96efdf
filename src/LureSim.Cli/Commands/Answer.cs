using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using Spectre.Console;

namespace LureSim.Cli.Commands;

/// <summary>What a command has found.</summary>
/// <param name="Document">The JSON document, printed with --json.</param>
/// <param name="Name">Name of its JSON and CSV files, without ending.</param>
/// <param name="Show">Prints it for people.</param>
/// <param name="Lead">First line for people: the card on one line, or the spot.</param>
/// <param name="WatchOut">Last line for people: what to watch out for.</param>
internal sealed record Answer(JsonOutput Document, string Name, Action<IAnsiConsole> Show, string Lead, string WatchOut)
{
    /// <summary>The choice that it answers for, shown before it; null where it shows the choice itself.</summary>
    public string? Choice { get; init; }

    /// <summary>Why the computation gave up before its end, where what is shown is the part until then; null where it is whole.</summary>
    public string? GaveUp { get; init; }

    /// <summary>The main table, printed with --csv; null for none of that name.</summary>
    public string? Csv { get; init; }

    /// <summary>Pages and figures, written first.</summary>
    public IReadOnlyList<OutputFile> Pages { get; init; } = [];

    /// <summary>Further tables, written last.</summary>
    public IReadOnlyList<OutputFile> Tables { get; init; } = [];

    /// <summary>All files.</summary>
    public IReadOnlyList<OutputFile> Files =>
    [
        .. Pages,
        OutputFile.Text(Name + ".json", Document.Text),
        .. Csv is null ? Array.Empty<OutputFile>() : [OutputFile.Text(Name + ".csv", Csv)],
        .. Tables,
    ];
}
