using LureSim.Report.Figures;

namespace LureSim.Report.Sheets;

/// <summary>A plate for teaching: a picture with a question, and its answer for the back of the sheet.</summary>
/// <param name="Figure">The picture.</param>
/// <param name="Question">The question.</param>
/// <param name="Answer">The answer, a paragraph each.</param>
public sealed record LessonPlate(Figure Figure, string Question, IReadOnlyList<string> Answer);
