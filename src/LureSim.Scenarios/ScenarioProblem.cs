using System.Globalization;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>One thing that is wrong with a scenario, with its place and a way out.</summary>
/// <param name="File">Name of the file as the caller gave it.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Key">Path of the key, such as "spot.strike_zone.depth[1]"; "(file)" for the file as a whole.</param>
/// <param name="Value">The offending text, shortened and without control characters; empty when there is none.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Allowed">What is allowed there; may be empty.</param>
/// <param name="Fix">What to do about it.</param>
public sealed record ScenarioProblem(
    string File,
    int Line,
    int Column,
    string Key,
    string Value,
    string Message,
    string Allowed,
    string Fix)
{
    /// <summary>The key path used for problems with the file as a whole.</summary>
    public const string WholeFile = "(file)";

    /// <summary>One line for people: place, key, message, what is allowed and the way out.</summary>
    public override string ToString()
    {
        string value = Value.Length == 0 ? "" : $" ({Value})";
        string allowed = Allowed.Length == 0 ? "" : $"; allowed: {Allowed}";
        return string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}: {Key}: {Message}{value}{allowed}; fix: {Fix}");
    }

    // Longer values tell the reader nothing more, and control characters could steer a terminal.
    internal static string Shorten(string text) => VisibleText.Shown(text, 60);
}

/// <summary>An everyday name, and the word as which it was read.</summary>
/// <param name="File">Name of the file as the caller gave it.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Key">Path of the key, as written.</param>
/// <param name="Written">The name, shortened and without control characters.</param>
/// <param name="Meaning">The word that it stands for.</param>
public sealed record ScenarioRemark(string File, int Line, int Column, string Key, string Written, string Meaning)
{
    /// <summary>One line for people, such as "redfish: taken as red drum".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}: {Key}: {Written}: taken as {Meaning}");
}

/// <summary>Outcome of reading a scenario: the scenario, or everything that is wrong with it, sorted by line.</summary>
public sealed record ScenarioReading
{
    /// <summary>Name of the file as the caller gave it.</summary>
    public required string File { get; init; }

    /// <summary>The scenario; null if and only if there are problems.</summary>
    public Scenario? Scenario { get; init; }

    /// <summary>All problems, sorted by line and column; empty when the scenario is valid.</summary>
    public IReadOnlyList<ScenarioProblem> Problems { get; init; } = [];

    /// <summary>Everyday names and the words as which they were read, sorted by line and column.</summary>
    public IReadOnlyList<ScenarioRemark> Remarks { get; init; } = [];

    /// <summary>True if there is a scenario.</summary>
    public bool IsValid => Scenario is not null;
}
