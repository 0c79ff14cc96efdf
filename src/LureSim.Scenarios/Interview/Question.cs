namespace LureSim.Scenarios.Interview;

/// <summary>A question of the interview, which may have several parts.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Text">The question, in plain words.</param>
/// <param name="Why">Why it is asked, in one line.</param>
/// <param name="Parts">What is answered, one after another.</param>
internal sealed record Question(int Number, string Text, string Why, IReadOnlyList<Part> Parts)
{
    /// <summary>True if the short route asks it.</summary>
    public bool IsShort { get; init; }
}

/// <summary>A part of a question: one answer.</summary>
/// <param name="Id">Its name in a file of answers.</param>
/// <param name="Text">What is asked; empty where the question says it.</param>
/// <param name="Form">What may be answered.</param>
/// <param name="Default">The answer that is right for most, as it would be typed.</param>
internal sealed record Part(string Id, string Text, AnswerForm Form, string Default)
{
    /// <summary>A line of help; may be empty.</summary>
    public string Hint { get; init; } = "";

    /// <summary>The default where it hangs on other answers; null for <see cref="Default"/>.</summary>
    public Func<AnswerSheet, string>? DefaultOf { get; init; }

    /// <summary>Parts of other questions that may be answered in the same breath.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>Whether it is asked, by the answers so far; null for always.</summary>
    public Func<AnswerSheet, bool>? Applies { get; init; }

    /// <summary>Writes the answer into the scenario.</summary>
    public required Action<ScenarioDraft, Given> Write { get; init; }

    /// <summary>Writes that it is not known well, where the scenario can say so; null for nothing.</summary>
    public Action<ScenarioDraft>? WhenUnsure { get; init; }

    /// <summary>The default by the answers so far.</summary>
    public string DefaultFor(AnswerSheet sheet) => DefaultOf?.Invoke(sheet) ?? Default;

    /// <summary>True if it is asked.</summary>
    public bool IsAsked(AnswerSheet sheet) => Applies?.Invoke(sheet) ?? true;
}

/// <summary>An answer that was understood.</summary>
/// <param name="Pieces">What was said; at least one piece.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Written">The words as they were typed; empty for an assumption.</param>
internal sealed record Given(IReadOnlyList<Piece> Pieces, GivenSource Source, string Written)
{
    /// <summary>The one piece.</summary>
    public Piece First => Pieces[0];

    /// <summary>In words, which can be read again.</summary>
    public string Shown => string.Join(", ", Pieces.Select(piece => piece.Shown));
}

/// <summary>Where an answer comes from.</summary>
internal enum GivenSource
{
    /// <summary>It was given.</summary>
    Said,

    /// <summary>It was asked and left at the usual value, or not asked.</summary>
    Assumed,

    /// <summary>It was answered with not sure.</summary>
    NotSure,
}
