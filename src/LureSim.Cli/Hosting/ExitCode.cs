namespace LureSim.Cli.Hosting;

/// <summary>Exit codes of the program; scripts may rely on them.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Ok = 0;

    /// <summary>The run failed: a file could not be written, or something unexpected.</summary>
    public const int Failed = 1;

    /// <summary>Wrong command line, or an invalid scenario.</summary>
    public const int Usage = 2;

    /// <summary>The computation did not succeed numerically.</summary>
    public const int Numerical = 3;

    /// <summary>Stopped by Ctrl-C, as shells report it.</summary>
    public const int Cancelled = 130;

    /// <summary>The word for a code in JSON documents.</summary>
    public static string Word(int code) => code switch
    {
        Ok => "ok",
        Usage => "usage_error",
        Numerical => "numerical_failure",
        Cancelled => "cancelled",
        Failed => "failed",
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "Not an exit code."),
    };
}

/// <summary>Ends a command with an exit code and a message; caught in one place that decides how to show it.</summary>
internal sealed class CommandFailedException(int exitCode, string message, IReadOnlyList<Scenarios.ScenarioProblem>? problems = null) : Exception(message)
{
    /// <summary>One of <see cref="Hosting.ExitCode"/>.</summary>
    public int ExitCode { get; } = exitCode;

    /// <summary>What is wrong with the scenario, when that is the reason.</summary>
    public IReadOnlyList<Scenarios.ScenarioProblem> Problems { get; } = problems ?? [];
}
