using LureSim.Workbench.Pictures;

namespace LureSim.Workbench.Classroom;

/// <summary>What a lesson measures.</summary>
internal enum LessonMeasure
{
    /// <summary>Mass of the head that is in the zone longest (kg).</summary>
    BestWeight,

    /// <summary>Share of the retrieve in the zone of the head that is looked at.</summary>
    Zone,

    /// <summary>Share of the retrieve in the grass of the head that is looked at.</summary>
    Grass,

    /// <summary>Lightness of a color, as an eye used to the light there sees it, over that of white beside it.</summary>
    Lightness,

    /// <summary>Turns a second about the long axis of the lure that is looked at.</summary>
    Spin,

    /// <summary>How far each twitch turns the nose of the lure that is looked at (degrees).</summary>
    Dart,
}

/// <summary>How the two figures of a lesson are compared.</summary>
internal enum LessonComparison
{
    /// <summary>The second over the first.</summary>
    Ratio,

    /// <summary>The second less the first.</summary>
    Difference,
}

/// <summary>An answer to bet on.</summary>
internal sealed record LessonAnswer
{
    /// <summary>Its words.</summary>
    public required string Says { get; init; }

    /// <summary>Least figure for which it is right; null for no limit.</summary>
    public double? From { get; init; }

    /// <summary>Greatest figure for which it is right; null for no limit.</summary>
    public double? To { get; init; }
}

/// <summary>A step of a class: predict, see, explain.</summary>
internal sealed record Lesson
{
    /// <summary>Name in messages, small letters and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>A few words.</summary>
    public required string Title { get; init; }

    /// <summary>Which water: "yours", or an example of the program.</summary>
    public required string Water { get; init; }

    /// <summary>What is looked at: "water", "swim" or "colors".</summary>
    public string Show { get; init; } = "water";

    /// <summary>The question.</summary>
    public required string Question { get; init; }

    /// <summary>Settings before.</summary>
    public Dictionary<string, string> Before { get; init; } = [];

    /// <summary>Settings after: what is uncovered.</summary>
    public Dictionary<string, string> After { get; init; } = [];

    /// <summary>The one knob of the step.</summary>
    public required string Knob { get; init; }

    /// <summary>What is measured.</summary>
    public required LessonMeasure Measure { get; init; }

    /// <summary>How before and after are compared.</summary>
    public LessonComparison Compare { get; init; } = LessonComparison.Ratio;

    /// <summary>The color of a lesson about one.</summary>
    public string? Color { get; init; }

    /// <summary>The depth of a lesson about a color (m), or the bottom where that is less.</summary>
    public double? Depth { get; init; }

    /// <summary>What it asks about a color; null where it asks about none.</summary>
    public AskedColor? AskedColor => Color is null ? null : new AskedColor(Color, Depth);

    /// <summary>Two to four answers.</summary>
    public required List<LessonAnswer> Answers { get; init; }

    /// <summary>Place of the right one, counted from 1.</summary>
    public required int Right { get; init; }

    /// <summary>One sentence of explanation.</summary>
    public required string Because { get; init; }

    /// <summary>What the model leaves out.</summary>
    public required string LeavesOut { get; init; }
}

/// <summary>A lesson that was checked.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Figure">The figure that the engine gives.</param>
/// <param name="Given">Place of the answer that the figure makes right, counted from 1; 0 for none.</param>
internal sealed record LessonCheck(Lesson Lesson, double Figure, int Given)
{
    /// <summary>Whether the engine gives the answer that is marked.</summary>
    public bool Holds => Given == Lesson.Right;
}
