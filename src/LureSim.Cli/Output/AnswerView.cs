using System.Diagnostics;
using System.Text.Json.Serialization;
using LureSim.Decision.Inverse;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows answers to questions asked backwards.</summary>
internal static class AnswerView
{
    /// <summary>Prints the answers.</summary>
    public static void Write(IAnsiConsole console, Scenario scenario, IReadOnlyList<InverseAnswer> answers, UnitFormat format)
    {
        console.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
        console.MarkupLineInterpolated($"Retrieve: {answers[0].Presentation.Name}");
        foreach (InverseAnswer answer in answers)
        {
            string remark = InverseWords.Remark(answer, format);
            console.MarkupLineInterpolated($"- {InverseWords.Question(answer, format)}: [green]{InverseWords.Answer(answer, scenario.Tackle.Reel, format)}[/].{(remark.Length > 0 ? " " + remark : "")}");
        }
    }

    /// <summary>The answers as CSV; values in kg, m/s or s by the question.</summary>
    public static string ToCsv(IReadOnlyList<InverseAnswer> answers, UnitFormat format)
    {
        var csv = new Csv("question", "head", "presentation", "status", "value", "from", "to", "common_kg", "owned", "target_depth_m", "because");
        foreach (InverseAnswer a in answers)
            csv.Row(Word(a.Question), a.Head?.Label, a.Presentation.Name, a.Status.ToString(), a.Value, a.From, a.To, a.Common, a.Owned?.Label, a.Target, InverseWords.Because(a, format));
        return csv.ToString();
    }

    private static string Word(InverseQuestion question) => question switch
    {
        InverseQuestion.HeadForBottom => "head_for_bottom_kg",
        InverseQuestion.SpeedForDepth => "speed_for_depth_m_s",
        InverseQuestion.CountDownForZone => "count_down_for_zone_s",
        _ => throw new UnreachableException(),
    };
}

/// <summary>Answers in JSON.</summary>
internal sealed record AnswersJson(string Title, string Presentation, IReadOnlyList<AnswersJson.Answer> Answers)
{
    public static AnswersJson Of(Scenario scenario, IReadOnlyList<InverseAnswer> answers, UnitFormat format) => new(scenario.Title, answers[0].Presentation.Name, Of(answers, format));

    public static IReadOnlyList<Answer> Of(IReadOnlyList<InverseAnswer> answers, UnitFormat format) => [.. answers.Select(a => new Answer(
        a.Question,
        a.Status,
        a.Head is { } head ? HeadJson.Of(head) : null,
        a.Question == InverseQuestion.HeadForBottom ? a.Value : null,
        a.Common,
        a.Owned?.Label,
        a.Question == InverseQuestion.SpeedForDepth ? a.Value : null,
        a.Question == InverseQuestion.SpeedForDepth ? a.From : null,
        a.Question == InverseQuestion.SpeedForDepth ? a.To : null,
        a.Question == InverseQuestion.CountDownForZone ? a.Value : null,
        a.Question == InverseQuestion.CountDownForZone ? a.From : null,
        a.Question == InverseQuestion.CountDownForZone ? a.To : null,
        a.Target,
        InverseWords.Because(a, format)))];

    internal sealed record Answer(
        InverseQuestion Question,
        InverseStatus Status,
        HeadJson? Head,
        [property: JsonPropertyName("mass_kg")] double? Mass,
        [property: JsonPropertyName("common_mass_kg")] double? CommonMass,
        string? Owned,
        [property: JsonPropertyName("speed_m_s")] double? Speed,
        [property: JsonPropertyName("speed_from_m_s")] double? SpeedFrom,
        [property: JsonPropertyName("speed_to_m_s")] double? SpeedTo,
        [property: JsonPropertyName("count_s")] double? Count,
        [property: JsonPropertyName("count_from_s")] double? CountFrom,
        [property: JsonPropertyName("count_to_s")] double? CountTo,
        [property: JsonPropertyName("target_depth_m")] double? TargetDepth,
        string Because);
}
