using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using LureSim.Cli.Hosting;
using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Stepping;

namespace LureSim.Cli.Output;

/// <summary>The one JSON document that a command prints with --json. Numbers are SI; names carry their unit.</summary>
internal sealed class JsonOutput
{
    /// <summary>Version of the documents' shape; it goes up when a name or a meaning changes.</summary>
    public const int SchemaVersion = 1;

    /// <summary>Status of a document that tells what is wrong with a scenario.</summary>
    public const string InvalidScenario = "invalid_scenario";

    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower), new FiniteConverter() },
    };

    private JsonOutput(string text) => Text = text;

    /// <summary>The document, ended by a line feed.</summary>
    public string Text { get; }

    /// <summary>The document of a command's result.</summary>
    public static JsonOutput Of(string command, object result, ChoiceJson? choice = null, string status = "ok", int exitCode = ExitCode.Ok, string message = "") =>
        new(JsonSerializer.Serialize(new Document(SchemaVersion, ProgramVersion.Text, command, status, exitCode, message, [], choice, result), Options) + "\n");

    /// <summary>Prints the document of a failure.</summary>
    public static void WriteFailure(TextWriter output, string command, int exitCode, string message, IReadOnlyList<ScenarioProblem> problems)
    {
        string status = problems.Count > 0 ? InvalidScenario : ExitCode.Word(exitCode);
        output.Write(JsonSerializer.Serialize(new Document(SchemaVersion, ProgramVersion.Text, command, status, exitCode, message, problems, null, null), Options) + "\n");
    }

    private sealed record Document(int SchemaVersion, string Version, string Command, string Status, int ExitCode, string Message, IReadOnlyList<ScenarioProblem> Problems, ChoiceJson? Choice, object? Result);

    // JSON has no NaN or infinity; a missing number is null.
    private sealed class FiniteConverter : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.Null ? double.NaN : reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value))
                writer.WriteNumberValue(value);
            else
                writer.WriteNullValue();
        }
    }
}

/// <summary>A jig head in JSON.</summary>
internal sealed record HeadJson(string Label, [property: JsonPropertyName("mass_kg")] double Mass, HeadMetal Metal, [property: JsonPropertyName("hook_mass_kg")] double HookMass)
{
    public static HeadJson Of(JigHead head) => new(head.Label, head.Mass, head.Metal, head.HookMass);
}

/// <summary>The count-down table in JSON.</summary>
internal sealed record FallJson(string Title, string Body, [property: JsonPropertyName("depths_m")] IReadOnlyList<double> Depths, IReadOnlyList<FallJson.Column> Columns)
{
    public static FallJson Of(Scenario scenario, LureBody body, FallTable table) => new(
        scenario.Title,
        body.Label,
        table.Depths,
        [.. table.Columns.Select(column => new Column(HeadJson.Of(column.Head), column.TerminalSpeed, table.SinkRate(column), column.SlackLineSeconds, column.TightLineSeconds))]);

    internal sealed record Column(
        HeadJson Head,
        [property: JsonPropertyName("terminal_speed_m_s")] double TerminalSpeed,
        [property: JsonPropertyName("sink_rate_m_s")] double SinkRate,
        [property: JsonPropertyName("slack_line_s")] IReadOnlyList<double?> SlackLine,
        [property: JsonPropertyName("tight_line_s")] IReadOnlyList<double?> TightLine);
}

/// <summary>A simulated rig in JSON.</summary>
internal sealed record CandidateJson(HeadJson Head, string Body, string Presentation, double Score, string Verdict, CoverageJson Coverage, TrackJson? Track)
{
    public static CandidateJson Of(Candidate candidate, bool withTrack) => new(
        HeadJson.Of(candidate.Rig.Head),
        candidate.Rig.Body.Label,
        candidate.Rig.Presentation.Name,
        candidate.Score,
        TrackWords.Verdict(candidate),
        CoverageJson.Of(candidate.Coverage),
        withTrack ? TrackJson.Of(candidate.Track) : null);
}

/// <summary>Where a rig spent its time, in JSON.</summary>
internal sealed record CoverageJson(
    double ZoneShare,
    double AboveShare,
    double BelowShare,
    double BottomShare,
    double GrassShare,
    [property: JsonPropertyName("time_to_zone_s")] double? TimeToZone,
    [property: JsonPropertyName("time_to_bottom_s")] double? TimeToBottom,
    [property: JsonPropertyName("median_depth_m")] double MedianDepth,
    [property: JsonPropertyName("deepest_depth_m")] double DeepestDepth,
    [property: JsonPropertyName("retrieve_time_s")] double RetrieveTime,
    [property: JsonPropertyName("drift_across_m")] double DriftAcross)
{
    public static CoverageJson Of(Coverage coverage) => new(
        coverage.ZoneShare, coverage.AboveShare, coverage.BelowShare, coverage.BottomShare, coverage.GrassShare,
        coverage.TimeToZone, coverage.TimeToBottom, coverage.MedianDepth, coverage.DeepestDepth, coverage.RetrieveTime, coverage.DriftAcross);
}

/// <summary>A track in JSON: equally long arrays, as in the model.</summary>
internal sealed record TrackJson(
    SimulationStatus Status,
    string Message,
    SimulationStatistics Statistics,
    [property: JsonPropertyName("time_s")] double[] Time,
    [property: JsonPropertyName("x_m")] double[] X,
    [property: JsonPropertyName("y_m")] double[] Y,
    [property: JsonPropertyName("depth_m")] double[] Depth,
    [property: JsonPropertyName("velocity_x_m_s")] double[] VelocityX,
    [property: JsonPropertyName("velocity_y_m_s")] double[] VelocityY,
    [property: JsonPropertyName("velocity_z_m_s")] double[] VelocityZ,
    [property: JsonPropertyName("speed_through_water_m_s")] double[] SpeedThroughWater,
    [property: JsonPropertyName("rod_tension_n")] double[] RodTension,
    [property: JsonPropertyName("lure_tension_n")] double[] LureTension,
    [property: JsonPropertyName("rod_angle_rad")] double[] RodAngle,
    [property: JsonPropertyName("lure_angle_rad")] double[] LureAngle,
    [property: JsonPropertyName("line_out_m")] double[] LineOut,
    IReadOnlyList<string[]> State,
    IReadOnlyList<TrackJson.Event> Events)
{
    public static TrackJson Of(Track track) => new(
        track.Status, TrackWords.End(track.End), track.Statistics, track.Time, track.X, track.Y, [.. Enumerable.Range(0, track.Count).Select(track.Depth)],
        track.VelocityX, track.VelocityY, track.VelocityZ, track.SpeedThroughWater, track.RodTension, track.LureTension, track.RodAngle, track.LureAngle, track.LineOut,
        [.. track.State.Select(state => TrackWords.State(state, "|").Replace(' ', '_').Split('|', StringSplitOptions.RemoveEmptyEntries))],
        [.. track.Events.Select(happened => new Event(happened.Kind, happened.Time, happened.Depth, happened.Distance))]);

    internal sealed record Event(TrackEventKind Kind, [property: JsonPropertyName("time_s")] double Time, [property: JsonPropertyName("depth_m")] double Depth, [property: JsonPropertyName("distance_m")] double Distance);
}

/// <summary>A grid of coverage in JSON; rows are heads, columns speeds.</summary>
internal sealed record GridJson(
    string Presentation,
    IReadOnlyList<HeadJson> Heads,
    [property: JsonPropertyName("speeds_m_s")] IReadOnlyList<double> Speeds,
    double[][] ZoneShare,
    double[][] BottomShare,
    double[][] GrassShare,
    [property: JsonPropertyName("median_depth_m")] double[][] MedianDepth)
{
    public static GridJson Of(CoverageGrid grid) => new(
        grid.PresentationName, [.. grid.Heads.Select(HeadJson.Of)], grid.Speeds,
        Rows(grid.ZoneShare), Rows(grid.BottomShare), Rows(grid.GrassShare), Rows(grid.MedianDepth));

    private static double[][] Rows(double[,] values) =>
        [.. Enumerable.Range(0, values.GetLength(0)).Select(row => Enumerable.Range(0, values.GetLength(1)).Select(column => values[row, column]).ToArray())];
}

/// <summary>Colours with depth in JSON.</summary>
internal sealed record ColourJson(string Title, [property: JsonPropertyName("depths_m")] IReadOnlyList<double> Depths, IReadOnlyList<ColourColumn> Columns)
{
    /// <summary>Lures of several colours.</summary>
    public IReadOnlyList<PatternJson> Patterns { get; init; } = [];

    public static ColourJson Of(Scenario scenario, ColourTable table) => new(scenario.Title, table.Depths, table.Columns)
    {
        Patterns = [.. table.Patterns.Select(parts => new PatternJson(parts.Pattern.Name, parts.ToPerson, parts.Person, parts.ToFish, parts.Fish, parts.DeepestSearched))],
    };
}

/// <summary>How deep the parts of a lure of several colours can be told apart.</summary>
internal sealed record PatternJson(
    string Name,
    Sight.PartsApart ToPerson,
    [property: JsonPropertyName("person_m")] double? Person,
    Sight.PartsApart ToFish,
    [property: JsonPropertyName("fish_m")] double? Fish,
    [property: JsonPropertyName("deepest_searched_m")] double DeepestSearched);

/// <summary>A plan in JSON. Tracks are left out: <c>path --json</c> gives them one at a time.</summary>
internal sealed record PlanJson(
    string Title,
    CandidateJson First,
    CandidateJson? Fallback,
    IReadOnlyList<string> Reasons,
    IReadOnlyList<string> Warnings,
    IReadOnlyList<string> Notes,
    IReadOnlyList<CandidateJson> Candidates,
    FallJson Fall,
    GridJson Coverage,
    ColourJson Colours,
    BodyJson? Body,
    ColourAdviceJson ColourChoice,
    BoxJson? Box,
    IReadOnlyList<string> Sheet,
    UncertaintyJson? Uncertainty,
    IReadOnlyList<AnswersJson.Answer> Answers,
    ActionJson.Close? RigCheck,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] SpotJson? AlongTheCast)
{
    public static PlanJson Of(PlanOutcome outcome)
    {
        Plan plan = outcome.Plan;
        return new(
            plan.Scenario.Title,
            CandidateJson.Of(plan.Choice.First, withTrack: false),
            plan.Choice.Fallback is { } fallback ? CandidateJson.Of(fallback, withTrack: false) : null,
            ChoiceWords.Why(plan, outcome.Units),
            ChoiceWords.Warnings(plan, outcome.Units),
            ChoiceWords.Notes(plan, outcome.Units),
            [.. plan.Candidates.Select(candidate => CandidateJson.Of(candidate, withTrack: false))],
            FallJson.Of(plan.Scenario, plan.Choice.First.Rig.Body, plan.FallTable),
            GridJson.Of(plan.Grid),
            ColourJson.Of(plan.Scenario, outcome.Colours),
            plan.Body is { } body ? BodyJson.Of(body) : null,
            ColourAdviceJson.Of(plan.Colours.Advice),
            plan.Box is { } box ? BoxJson.Of(box) : null,
            [.. outcome.Sheet.Select(file => file.Name)],
            plan.Uncertainty is { } study ? UncertaintyJson.Of(study) : null,
            AnswersJson.Of(plan.Answers, new UnitFormat(outcome.Units)),
            plan.RigCheck is { } check ? ActionJson.CloseOf(check, outcome.Units) : null,
            SpotJson.Of(plan));
    }
}

/// <summary>Checked scenarios in JSON.</summary>
internal sealed record CheckJson(IReadOnlyList<CheckJson.File> Files)
{
    public static CheckJson Of(IEnumerable<ScenarioReading> readings) =>
        new([.. readings.Select(reading => new File(reading.File, reading.IsValid, reading.Scenario?.Title, reading.Problems, reading.Remarks))]);

    internal sealed record File(string Name, bool Valid, string? Title, IReadOnlyList<ScenarioProblem> Problems, IReadOnlyList<ScenarioRemark> Remarks);
}
