using LureSim.Cli;
using LureSim.Cli.Hosting;
using LureSim.Coupling;
using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.Colours;
using LureSim.Decision.Comparison;
using LureSim.Decision.Inverse;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Search;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Stepping;
using LureSim.Swimming;

namespace LureSim.Tests.Cli;

/// <summary>Results made by hand, simple enough to check in the head.</summary>
internal static class HandMade
{
    public static Track Track(SimulationStatus status = SimulationStatus.Completed, SimulationEnd? end = null)
    {
        // Sinks at 0.5 m/s for 2 s, then comes in at 1 m/s; sampled every 0.5 s.
        double[] time = [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4];
        int count = time.Length;
        return new Track
        {
            Status = status,
            End = end,
            Statistics = new SimulationStatistics(100, 3, 812, 0.001, 1e-5),
            Time = time,
            X = [.. time.Select(t => t < 2 ? 10.0 : 12.0 - t)],
            Y = new double[count],
            Z = [.. time.Select(t => -0.5 * Math.Min(t, 2))],
            VelocityX = [.. time.Select(t => t < 2 ? 0.0 : -1.0)],
            VelocityY = new double[count],
            VelocityZ = [.. time.Select(t => t < 2 ? -0.5 : 0.0)],
            SpeedThroughWater = [.. time.Select(t => t < 2 ? 0.5 : 1.0)],
            RodTension = [.. time.Select(t => t < 2 ? double.NaN : 0.8)],
            LureTension = [.. time.Select(t => t < 2 ? 0.0 : 0.5)],
            RodAngle = new double[count],
            LureAngle = new double[count],
            LineOut = [.. time.Select(t => t < 2 ? 10.2 : 12.2 - t)],
            State = [.. time.Select(t => t < 2 ? TrackState.Falling : TrackState.Reeling | TrackState.InZone)],
            Events = [new TrackEvent(TrackEventKind.EntersZone, 1.9, 0.95, 10.0), new TrackEvent(TrackEventKind.RetrieveStarts, 2.0, 1.0, 10.0)],
            Shapes = [],
        };
    }

    public static Candidate Candidate(Rig rig, Track? track = null) => new(
        rig,
        track ?? Track(),
        new Coverage(0.75, 0.25, 0, 0.1, 0, 1.9, null, 1.0, 1.0, 2.0, 0.0),
        0.7);

    public static FallTable Fall(Scenario scenario) => new(
        [0.3048, 0.6096],
        [.. scenario.Tackle.JigHeads.Select((head, index) => new FallColumn(head, 0.2 + (0.1 * index), [1.5 / (index + 1), 3.0 / (index + 1)], [2.0 / (index + 1), null]))]);

    public static CoverageGrid Grid(Scenario scenario)
    {
        int heads = scenario.Tackle.JigHeads.Count;
        double[,] zone = new double[heads, 2];
        double[,] bottom = new double[heads, 2];
        double[,] grass = new double[heads, 2];
        double[,] depth = new double[heads, 2];
        for (int head = 0; head < heads; head++)
        {
            zone[head, 0] = 0.1 * head;
            zone[head, 1] = 0.2 * head;
            bottom[head, 0] = head == 1 ? 0.3 : 0.0;
            depth[head, 0] = 0.3048 * head;
            depth[head, 1] = double.NaN;
        }

        return new CoverageGrid(scenario.Presentations[0].Name, scenario.Tackle.JigHeads, [0.3048, 0.6096], zone, bottom, grass, depth);
    }

    public static ColourTable Colours(Scenario scenario) => new(
        [0.0, 0.3048],
        [.. scenario.Tackle.Colours.Select(name => new ColourColumn(name, ["#ffffff", "#80a080"], [1.0, 0.4], ["bright", "muted"]))]);

    public static IReadOnlyList<InverseAnswer> Answers(Rig rig, IReadOnlyList<JigHead> heads, double depth) =>
    [
        new(InverseQuestion.HeadForBottom, InverseStatus.Found, null, rig.Presentation, 0.010, null, null, null, 0.0106, null, InverseReason.None, 0, 20),
        .. heads.Select(head => new InverseAnswer(InverseQuestion.SpeedForDepth, InverseStatus.NotReachable, head, rig.Presentation, null, null, null, null, null, depth, InverseReason.SlowestRunsAbove, 0, 11)),
        .. heads.Select(head => new InverseAnswer(InverseQuestion.CountDownForZone, InverseStatus.Found, head, rig.Presentation, 4, 3, 6, null, null, depth, InverseReason.None, 0, 1)),
    ];

    public static RetrieveSearch Search(Scenario scenario, Rig rig)
    {
        ActionReport on = new() { Verdict = ActionVerdict.Swims, Findings = [new(ActionFindingKind.TailBeats)] };
        var fall = new FallTime(8, true);
        FamilyResult[] families = [.. RetrieveFamily.All.Select((family, i) =>
        {
            Presentation built = family.Build(scenario.Presentations[0], [.. family.Parameters.Select(p => p.Rounded(p.At(0.2 + (0.2 * i))))], fall);
            Candidate run = Candidate(rig with { Presentation = built });
            RetrieveTrial best = new(family, built, run.Coverage with { ZoneShare = 0.8 - (0.15 * i), BottomShare = 0.1 * i }, 0.5 + (0.1 * i), 0.45 - (0.08 * i), 0.4 - (0.08 * i));
            return new FamilyResult(family, best, run, [.. Enumerable.Range(0, 9).Select(k => best with { ActionShare = 0.05 * (k + i), Coverage = best.Coverage with { ZoneShare = 0.1 * (9 - k) } })]);
        })];
        return new RetrieveSearch(
            scenario,
            rig.Head,
            rig.Body,
            ActionTable.From([.. ActionTable.Speeds.Select(_ => on)], [.. ActionTable.TwitchTravels.Select(_ => on)], on),
            families,
            [.. scenario.Presentations.Select((p, i) => new RetrieveTrial(null, p, Candidate(rig with { Presentation = p }).Coverage, 0.3 + (0.2 * i), 0.2, 0.15))]);
    }

    public static ChosenRig Chosen(Scenario scenario, ChoiceLimits limits)
    {
        LureBody body = limits.Body ?? scenario.Tackle.Bodies[0];
        var rig = new Rig(body.NeedsHead ? limits.Head ?? scenario.Tackle.JigHeads[0] : JigHead.None(body), body, limits.Presentation ?? scenario.Presentations[0]);
        Candidate run = Candidate(rig);
        var found = new SearchedRig(rig, rig.Presentation, [run.Coverage], [run.Score], 1);
        var search = new ChoiceSearch(scenario, BodyChoice.Of(scenario), found, [found], [.. scenario.Tackle.JigHeads.Select(head => rig with { Head = head })], [run], [], 1, 1);
        ColourFinding colours = SpotColours.At(scenario, 1.0, LengthScale.Metres);
        if (limits.Colour is { } asked) colours = colours with { Advice = colours.Advice.Given(colours.Advice.Colours.ToList().FindIndex(colour => colour.Name == asked)) };
        return new ChosenRig(search, Choice.Of(search, run, null, [run]), colours);
    }

    public static TideTable Tide(Scenario scenario, Rig rig)
    {
        JigHead[] heads = [.. scenario.Tackle.JigHeads];
        double[] shares = [.. heads.Select((_, i) => 0.2 * (i + 1))];
        return new TideTable(
            scenario,
            rig,
            [new TideRow(6, 0, 3, heads[0], shares, shares, null), new TideRow(25.5, -0.514444, 3.3, heads[1], shares, shares, 0.0070874)],
            new WeightTable([1.524, 3.048], [0, 0.514444], new double?[,] { { 0.0035437, 0.0070874 }, { 0.0070874, null } }));
    }

    public static PlanOutcome Plan(Scenario scenario)
    {
        Candidate[] candidates = [.. scenario.Tackle.JigHeads.Take(2).Select(head => Candidate(new Rig(head, scenario.Tackle.Bodies[0], scenario.Presentations[0])))];
        var plan = new Plan(
            scenario,
            candidates,
            new Choice(candidates[0], candidates[1], null, candidates[1], [], [new ChoiceWarning(ChoiceWarningKind.TouchesShell, 0.1)]),
            Fall(scenario),
            Grid(scenario),
            SpotColours.At(scenario, 1.0, LengthScale.Metres));
        return new PlanOutcome(plan, Colours(scenario), [OutputFile.Text("sheet.html", "<html></html>"), OutputFile.Text("figures/side.svg", "<svg/>")]);
    }
}

/// <summary>A pipeline that answers with results made by hand, or does what a test asks.</summary>
internal sealed class FakePipeline : IPipeline
{
    public Func<Candidate, Candidate> OnPath { get; init; } = candidate => candidate;

    public Func<CancellationToken, PlanOutcome, PlanOutcome> OnPlan { get; init; } = (_, outcome) => outcome;

    public Rig? LastRig { get; private set; }

    public PlanRequest? LastRequest { get; private set; }

    public UnitSystem? LastUnits { get; private set; }

    public ChosenRig Choose(Scenario scenario, ChoiceLimits limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        progress.Report(0.5);
        ChosenRig chosen = HandMade.Chosen(scenario, limits);
        LastRig = chosen.Rig;
        return chosen with { Choice = chosen.Choice with { First = OnPath(chosen.Choice.First) } };
    }

    public FallTable Fall(Scenario scenario, Rig rig, UnitSystem units, CancellationToken cancellation)
    {
        LastUnits = units;
        return HandMade.Fall(scenario);
    }

    public ColourTable Colours(Scenario scenario, ChosenRig chosen, CancellationToken cancellation) => HandMade.Colours(scenario);

    public LessonOutcome Teach(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRequest = request;
        return new LessonOutcome(Lesson.Compute(scenario, LengthScale.Metres, progress, cancellation), [OutputFile.Text("red-turns-black.svg", "<svg/>")]);
    }

    public IReadOnlyList<PlanOutcome> Plans(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRequest = request;
        return [.. scenarios.Select(scenario => OnPlan(cancellation, HandMade.Plan(scenario)))];
    }

    public TripOutcome Trip(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRequest = request;
        PlanOutcome[] spots = [.. scenarios.Select(scenario => OnPlan(cancellation, HandMade.Plan(scenario)))];
        return new TripOutcome(LureSim.Report.Trips.Trip.Of([.. spots.Select(spot => spot.Plan)], request.Units), spots, [OutputFile.Text("trip.html", "<html></html>")]);
    }

    public CompareOutcome Compare(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRequest = request;
        return new CompareOutcome(RigComparison.Compare(scenario, null, progress, cancellation), [OutputFile.Text("compare.html", "<html></html>")]);
    }

    public ActionOutcome Action(Scenario scenario, Rig? focus, bool faults, PlanRequest request, bool draw, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRig = focus;
        LastRequest = request;
        return new ActionOutcome(RigChecker.Check(scenario, focus, faults, progress, cancellation), draw ? [OutputFile.Text("twitch-path.svg", "<svg/>")] : []);
    }

    public PlanOutcome Plan(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRequest = request;
        progress.Report(double.NaN);
        return OnPlan(cancellation, HandMade.Plan(scenario));
    }

    public IReadOnlyList<InverseAnswer> Ask(Scenario scenario, Rig rig, IReadOnlyList<JigHead> heads, double? depth, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRig = rig;
        return HandMade.Answers(rig, heads, depth ?? 1);
    }

    public SearchOutcome Search(Scenario scenario, Rig rig, int runs, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRig = rig;
        LastRequest = request;
        return new SearchOutcome(HandMade.Search(scenario, rig), request.Units, [OutputFile.Text("retrieve.html", "<html></html>")]);
    }

    public TideOutcome Tide(Scenario scenario, Rig rig, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        LastRequest = request;
        return new TideOutcome(HandMade.Tide(scenario, rig), [OutputFile.Text("tide.html", "<html></html>")]);
    }
}

/// <summary>Runs the program inside the test, with captured streams.</summary>
internal sealed class CliRun
{
    public required int Code { get; init; }

    public required string Output { get; init; }

    public required string Error { get; init; }

    public static async Task<CliRun> Of(IPipeline pipeline, CancellationToken cancellation, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int code = await LureSimApp.RunAsync(arguments, CliHost.Create(output, error, false, false, true, pipeline), cancellation);
        return new CliRun { Code = code, Output = output.ToString(), Error = error.ToString() };
    }

    public static Task<CliRun> Of(params string[] arguments) => Of(new FakePipeline(), CancellationToken.None, arguments);
}
