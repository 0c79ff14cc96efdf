namespace LureSim.Fuzz;

/// <summary>How a command ended.</summary>
/// <param name="Code">Its exit code; -1 where it threw.</param>
/// <param name="Time">Time that it took.</param>
/// <param name="Complaints">What is wrong with it; nothing where all is well.</param>
/// <param name="Told">What it said on standard error.</param>
internal sealed record CommandOutcome(int Code, TimeSpan Time, IReadOnlyList<string> Complaints, string Told);
