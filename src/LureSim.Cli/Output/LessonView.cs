using System.Text.Json.Serialization;
using LureSim.Cli.Hosting;
using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows the key numbers of a lesson: the depth at which red goes dark, by each criterion.</summary>
internal static class LessonView
{
    /// <summary>Prints the lesson.</summary>
    public static void Write(IAnsiConsole console, Lesson lesson, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{lesson.Scenario.Title}[/]");
        Table view = Views.NewTable($"depth at which red goes dark ({units.Length.Symbol})");
        view.AddColumn("water");
        foreach (DarkDepth dark in lesson.Clear.Dark)
            view.AddColumn(new TableColumn(Views.Escape(LessonWords.Criterion(dark.Criterion, lesson.Colours.Eye))).RightAligned());
        Row(LessonWords.Water(lesson.Clear.Water), lesson.Clear.SecchiDepth, lesson.Clear.Dark);
        Row(LessonWords.Water(lesson.Stained.Water), lesson.Stained.SecchiDepth, lesson.Stained.Dark);
        Row(LessonWords.ThisSpot, lesson.Colours.Chart.Field.Water.SecchiDepth, lesson.Colours.RedDarkens);
        console.Write(view);

        void Row(string water, double secchi, IReadOnlyList<DarkDepth> dark) =>
            view.AddRow([Views.Escape($"{water}, Secchi {units.Length.Text(secchi)}"), .. dark.Select(d => d.CannotTell ? "cannot tell" : d.Depth is { } depth ? units.Length.Number(depth) : "never")]);
    }
}

/// <summary>A lesson in JSON: key numbers and files.</summary>
internal sealed record LessonJson(
    string Title,
    string Fish,
    EyeBasis EyeBasis,
    IReadOnlyList<LessonJson.Water> RedGoesDark,
    LessonJson.Sightings SightingDistance,
    IReadOnlyList<LessonJson.Strip> Silhouette,
    IReadOnlyList<string> Files)
{
    public static LessonJson Of(LessonOutcome outcome)
    {
        Lesson lesson = outcome.Lesson;
        SightFinding sight = lesson.Sight;
        return new(
            lesson.Scenario.Title,
            lesson.Colours.Eye.CommonName,
            lesson.Colours.Eye.Basis,
            [
                Of(LessonWords.Water(lesson.Clear.Water), lesson.Clear.SecchiDepth, lesson.Clear.Dark, lesson.Colours.Eye),
                Of(LessonWords.Water(lesson.Stained.Water), lesson.Stained.SecchiDepth, lesson.Stained.Dark, lesson.Colours.Eye),
                Of(LessonWords.ThisSpot, lesson.Colours.Chart.Field.Water.SecchiDepth, lesson.Colours.RedDarkens, lesson.Colours.Eye),
            ],
            new([.. sight.Rows.Select(row => row.Depth)], [.. sight.Lures.Select((lure, i) => new Colour(
                lure.Name,
                [.. sight.Rows.Select(row => row.Seen[i].SeenFrom)],
                [.. sight.Rows.Select(row => row.Seen[i].Mode)]))]),
            [.. lesson.Sight.Strips.Select(strip => new Strip(strip.Name, strip.Direction.ToString().ToLowerInvariant(), strip.Depth, strip.Distances, [.. strip.Swatches.Select(seen => seen.LuminanceContrast)]))],
            [.. outcome.Plates.Select(file => file.Name), "lesson.json"]);
    }

    private static Water Of(string name, double secchi, IReadOnlyList<DarkDepth> dark, FishEye eye) =>
        new(name, secchi, [.. dark.Select(d => new Criterion(d.Criterion, d.Depth, d.DeepestSearched, d.CannotTell, ColourWords.Dark(LureColours.Red.Name, d, eye)))]);

    internal sealed record Water(string Name, [property: JsonPropertyName("secchi_m")] double SecchiDepth, IReadOnlyList<Criterion> Criteria);

    // Null: not dark down to the deepest depth searched.
    internal sealed record Criterion(
        [property: JsonPropertyName("criterion")] DarkCriterion Name,
        [property: JsonPropertyName("depth_m")] double? Depth,
        [property: JsonPropertyName("deepest_searched_m")] double DeepestSearched,
        bool CannotTell,
        string Reading);

    internal sealed record Sightings([property: JsonPropertyName("depths_m")] IReadOnlyList<double> Depths, IReadOnlyList<Colour> Colours);

    internal sealed record Colour(string Name, [property: JsonPropertyName("seen_from_m")] IReadOnlyList<double> SeenFrom, IReadOnlyList<SightMode> Modes);

    internal sealed record Strip(
        string Colour,
        string Direction,
        [property: JsonPropertyName("depth_m")] double Depth,
        [property: JsonPropertyName("distances_m")] IReadOnlyList<double> Distances,
        IReadOnlyList<double> LuminanceContrast);
}
