using System.Collections.Concurrent;
using System.Text;
using LureSim.Decision.Colours;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Bench;
using LureSim.Workbench.Pictures;
using YamlDotNet.Core;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace LureSim.Workbench.Classroom;

/// <summary>The lessons of a class, each checked against the engine before it is shown. Thread-safe.</summary>
internal sealed class LessonBook
{
    /// <summary>Name of a file of lessons beside the scenario.</summary>
    public const string FileName = "lessons.yaml";

    private const int LargestFile = 100_000;
    private const int MostLessons = 9;
    private const string Yours = "yours";

    private static readonly Lazy<IReadOnlyList<Lesson>> BuiltIn = new(() => [.. typeof(LessonBook).Assembly.GetManifestResourceNames()
        .Where(name => name.StartsWith("lessons/", StringComparison.Ordinal)).Order(StringComparer.Ordinal).SelectMany(name => Read(Text(name)))]);

    private readonly ConcurrentDictionary<string, LessonCheck> kept = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, WorkBench> waters = new(StringComparer.Ordinal);
    private readonly UnitSystem units;

    /// <summary>Opens the lessons: those beside the scenario, or the program's own.</summary>
    /// <param name="folder">Folder of the scenario; null for the program's own lessons alone.</param>
    /// <param name="units">Units of the words.</param>
    public LessonBook(string? folder, UnitSystem units)
    {
        this.units = units;
        (Lessons, Problem) = Beside(folder);
    }

    /// <summary>The lessons.</summary>
    public IReadOnlyList<Lesson> Lessons { get; }

    /// <summary>What is wrong with a file of lessons; empty where nothing is.</summary>
    public string Problem { get; }

    /// <summary>The water of a lesson.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="yours">The scenario that is open.</param>
    public WorkBench Water(Lesson lesson, WorkBench yours) => lesson.Water == Yours ? yours : waters.GetOrAdd(lesson.Water, name =>
    {
        string text = Text($"examples/{name}.yaml");
        ScenarioReading reading = ScenarioReader.ReadText(text, name + ".yaml");
        return new WorkBench(text, Path.Combine(Path.GetTempPath(), name + ".yaml"), reading.Scenario ?? throw new InvalidOperationException($"The example {name} is not valid."), units);
    });

    /// <summary>Checks a lesson: the engine's figure, and the answer that it makes right.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="yours">The scenario that is open.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public LessonCheck Check(Lesson lesson, WorkBench yours, CancellationToken cancellation)
    {
        string key = lesson.Id + (lesson.Water == Yours ? yours.Path : "");
        if (kept.TryGetValue(key, out LessonCheck? known)) return known;
        WorkBench water = Water(lesson, yours);
        double before = Measure(lesson, water, lesson.Before, cancellation);
        double figure = before;
        if (lesson.After.Count > 0)
        {
            double after = Measure(lesson, water, lesson.After, cancellation);
            figure = lesson.Compare switch
            {
                LessonComparison.Ratio => after / Math.Max(1e-9, before),
                LessonComparison.Difference => after - before,
                _ => throw new ArgumentOutOfRangeException(nameof(lesson), lesson.Compare, "Not a comparison."),
            };
        }

        int given = lesson.Answers.FindIndex(answer => figure >= (answer.From ?? double.NegativeInfinity) && figure <= (answer.To ?? double.PositiveInfinity)) + 1;
        return kept[key] = new LessonCheck(lesson, figure, given);
    }

    /// <summary>Why a lesson is not shown.</summary>
    /// <param name="check">The check.</param>
    public static string Refusal(LessonCheck check) =>
        $"\"{check.Lesson.Title}\" is left out: its marked answer is \"{check.Lesson.Answers[check.Lesson.Right - 1].Says}\", the model gives {(check.Given > 0 ? $"\"{check.Lesson.Answers[check.Given - 1].Says}\"" : "none of them")} (figure {UnitFormat.Number(check.Figure, 2)}).";

    /// <summary>A lesson as the page shows it.</summary>
    /// <param name="check">The check.</param>
    public static LessonView View(LessonCheck check)
    {
        Lesson lesson = check.Lesson;
        return new LessonView(
            lesson.Id, lesson.Title, lesson.Show, lesson.Question, [.. lesson.Answers.Select(answer => answer.Says)], lesson.Right, lesson.Because, lesson.LeavesOut, lesson.Knob, lesson.Before, lesson.After, check.Holds ? null : Refusal(check));
    }

    private static double Measure(Lesson lesson, WorkBench water, Dictionary<string, string> settings, CancellationToken cancellation)
    {
        BenchQuestion question = water.Ask(BenchSettings.Of(settings));
        Scenario scenario = question.Scenario;
        return lesson.Measure switch
        {
            LessonMeasure.BestWeight => question.Lures.Where(lure => !lure.Rig.Head.IsNone).Select(lure => Run(question, lure, cancellation)).MaxBy(run => run.Coverage.ZoneShare)!.Rig.Head.Mass,
            LessonMeasure.Zone => Run(question, question.First, cancellation).Coverage.ZoneShare,
            LessonMeasure.Grass => Run(question, question.First, cancellation).Coverage.GrassShare,
            LessonMeasure.Lightness => Lightness(lesson, scenario),
            LessonMeasure.Spin => Math.Abs(RigChecker.OnRetrieve(scenario, question.First.Rig, null, cancellation).Retrieve.Report.SpinRate),
            LessonMeasure.Dart => Dart(RigChecker.OnRetrieve(scenario, question.First.Rig, null, cancellation)),
            _ => throw new ArgumentOutOfRangeException(nameof(lesson), lesson.Measure, "Not a measure."),
        };
    }

    private static Candidate Run(BenchQuestion question, BenchLure lure, CancellationToken cancellation) => Trial.Run(question.Scenario, lure.Rig, RunCache.Options(Quality.Fine), cancellation);

    private static double Dart(RigAction action) =>
        action.Twitch is { Report.Darts.Count: > 0 } twitch ? twitch.Report.Darts.Average(dart => Math.Abs(dart.Heading)) * 180 / Math.PI : 0;

    private static double Lightness(Lesson lesson, Scenario scenario)
    {
        Scenario two = scenario with { Tackle = scenario.Tackle with { Colours = [lesson.Color ?? "red", "white"], MeasuredColours = [], Patterns = [] } };
        double depth = Math.Min(lesson.Depth ?? scenario.Spot.Depth, scenario.Spot.Depth);
        ColourChart chart = SpotColours.At(two, depth, LengthScale.Metres).AtRunningDepth;
        return chart[0, 0].RelativeLuminance / Math.Max(1e-9, chart[0, 1].RelativeLuminance);
    }

    private static (IReadOnlyList<Lesson> Lessons, string Problem) Beside(string? folder)
    {
        if (folder is null) return (BuiltIn.Value, "");
        var file = new FileInfo(Path.Combine(folder, FileName));
        if (!file.Exists || file.LinkTarget is not null) return (BuiltIn.Value, "");
        if (file.Length > LargestFile) return (BuiltIn.Value, $"{FileName} is larger than {LargestFile / 1000} kB; the program's own lessons are shown.");
        try
        {
            return ([.. Read(File.ReadAllText(file.FullName)).Take(MostLessons)], "");
        }
        catch (Exception exception) when (exception is YamlException or ArgumentException or IOException or UnauthorizedAccessException)
        {
            return (BuiltIn.Value, $"{FileName} cannot be read: {(exception.InnerException ?? exception).Message} The program's own lessons are shown.");
        }
    }

    /// <summary>Reads lessons.</summary>
    /// <param name="text">A YAML list of lessons.</param>
    /// <exception cref="YamlException">The text is no list of lessons.</exception>
    /// <exception cref="ArgumentException">A lesson contradicts itself.</exception>
    internal static List<Lesson> Read(string text)
    {
        IDeserializer reader = new DeserializerBuilder().WithNamingConvention(UnderscoredNamingConvention.Instance).WithEnumNamingConvention(UnderscoredNamingConvention.Instance).WithDuplicateKeyChecking().WithEnforceRequiredMembers().WithEnforceNullability().Build();
        List<Lesson> lessons = reader.Deserialize<List<Lesson>>(text) ?? [];
        foreach (Lesson lesson in lessons)
        {
            if (lesson.Answers.Count is < 2 or > 4) throw new ArgumentException($"{lesson.Id}: a lesson has two to four answers.", nameof(text));
            if (lesson.Right < 1 || lesson.Right > lesson.Answers.Count) throw new ArgumentException($"{lesson.Id}: right names no answer.", nameof(text));
            if (lesson.Water != Yours && !typeof(LessonBook).Assembly.GetManifestResourceNames().Contains($"examples/{lesson.Water}.yaml")) throw new ArgumentException($"{lesson.Id}: there is no water called {lesson.Water}; write {Yours} or the name of an example.", nameof(text));
            if (lesson.Show is not ("water" or "swim" or "colors")) throw new ArgumentException($"{lesson.Id}: show is water, swim or colors.", nameof(text));
        }

        return lessons;
    }

    private static string Text(string name)
    {
        using Stream stream = typeof(LessonBook).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"The program has lost {name}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
