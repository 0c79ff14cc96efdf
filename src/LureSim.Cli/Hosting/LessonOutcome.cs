using LureSim.Decision.Colours;

namespace LureSim.Cli.Hosting;

/// <summary>A lesson with its plates, not yet written.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Plates">Files of the plates.</param>
internal sealed record LessonOutcome(Lesson Lesson, IReadOnlyList<OutputFile> Plates);
