using System.Globalization;
using LureSim.Scenarios;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows problems of a scenario.</summary>
internal static class ProblemView
{
    /// <summary>The line above the problems of a file.</summary>
    public static string Heading(string file, int count) =>
        string.Create(CultureInfo.InvariantCulture, $"{VisibleText.Shown(file)}: {count} {(count == 1 ? "problem" : "problems")}; nothing was run.");

    /// <summary>Prints what was read as another word, a line each.</summary>
    public static void Write(IAnsiConsole console, IReadOnlyList<ScenarioRemark> remarks)
    {
        foreach (ScenarioRemark remark in remarks)
            console.MarkupLineInterpolated($"    {remark.Line}: {remark.Written}: taken as {remark.Meaning}");
    }

    /// <summary>Prints problems, two lines each: what is wrong, and what to do.</summary>
    public static void Write(IAnsiConsole console, IReadOnlyList<ScenarioProblem> problems)
    {
        foreach (ScenarioProblem problem in problems)
        {
            string place = string.Create(CultureInfo.InvariantCulture, $"{problem.File}:{problem.Line}:{problem.Column}");
            string value = problem.Value.Length == 0 ? "" : $" ({problem.Value})";
            console.MarkupLineInterpolated($"[bold]{place}[/]: [yellow]{problem.Key}[/]: {problem.Message}{value}");
            if (problem.Allowed.Length > 0)
                console.MarkupLineInterpolated($"    allowed: {problem.Allowed}");
            console.MarkupLineInterpolated($"    fix: {problem.Fix}");
        }
    }
}
