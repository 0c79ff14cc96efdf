using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Decision.Colours;
using LureSim.Decision.Comparison;
using LureSim.Decision.Inverse;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Search;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Decision.Trips;
using LureSim.Light;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Sheets;
using LureSim.Report.Trips;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Cli;

/// <summary>The calls into the model and the sheet: the only place of the program that knows them.</summary>
internal sealed class Pipeline : IPipeline
{
    /// <summary>What the figures of sheets, plates and rigs are drawn as, a PDF aside.</summary>
    public SheetOutputs Pictures { get; init; } = SheetOutputs.Png | SheetOutputs.Svg;

    /// <inheritdoc/>
    public ChosenRig Choose(Scenario scenario, ChoiceLimits limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) =>
        Planner.Choose(scenario, new PlanOptions { Scale = new UnitFormat(request.Units).LengthScale, Samples = request.Samples, Limits = limits }, new Share(progress), cancellation);

    /// <inheritdoc/>
    public FallTable Fall(Scenario scenario, Rig rig, UnitSystem units, CancellationToken cancellation) =>
        Planner.FallTable(scenario, rig, new PlanOptions { Scale = new UnitFormat(units).LengthScale }, cancellation);

    /// <inheritdoc/>
    public ColourTable Colours(Scenario scenario, ChosenRig chosen, CancellationToken cancellation) => Table(scenario, chosen.Colours.Chart);

    /// <inheritdoc/>
    public LessonOutcome Teach(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        Lesson lesson = Lesson.Compute(scenario, new UnitFormat(request.Units).LengthScale, progress, cancellation);
        return new LessonOutcome(lesson, Files(LessonWriter.Files(lesson, request.Units, Outputs(request))));
    }

    /// <inheritdoc/>
    public ActionOutcome Action(Scenario scenario, Rig? focus, bool faults, PlanRequest request, bool draw, IProgress<double> progress, CancellationToken cancellation)
    {
        RigSheet sheet = RigChecker.Check(scenario, focus, faults, progress, cancellation);
        return new ActionOutcome(sheet, draw ? Files(RigSheetWriter.Files(sheet, request.Units, Outputs(request))) : []);
    }

    /// <inheritdoc/>
    public PlanOutcome Plan(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        var options = new PlanOptions { Scale = new UnitFormat(request.Units).LengthScale, Samples = request.Samples, Limits = request.Limits, FirstLook = FirstLook.Told(progress, request.Units) };
        Plan plan = Planner.Plan(scenario, options, new Share(progress), cancellation);
        return new PlanOutcome(plan, Table(scenario, plan.Colours.Chart), Sheet(plan, request)) { Units = request.Units };
    }

    /// <inheritdoc/>
    public IReadOnlyList<PlanOutcome> Plans(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        // The pages take about as long as a spot.
        double parts = scenarios.Count + 1;
        var spots = new List<PlanOutcome>();
        foreach (Scenario scenario in scenarios)
        {
            int done = spots.Count;
            var options = new PlanOptions
            {
                Scale = new UnitFormat(request.Units).LengthScale,
                Samples = request.Samples,
                Limits = limits[done],

                // Of several spots nobody could tell whose it is.
                FirstLook = scenarios.Count == 1 ? FirstLook.Told(progress, request.Units) : null,
            };
            Plan plan = Planner.Plan(scenario, options, new Share(new Part(progress, done / parts, 1 / parts)), cancellation);
            spots.Add(new PlanOutcome(plan, Table(scenario, plan.Colours.Chart), []));
        }

        return spots;
    }

    /// <inheritdoc/>
    public TripOutcome Trip(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        double planned = request.Clock is null ? 1 : 0.7;
        IReadOnlyList<PlanOutcome> spots = Plans(scenarios, limits, request, new Part(progress, 0, planned), cancellation);
        TripDay? day = null;
        if (request.Clock is { } clock)
        {
            var parallel = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = cancellation };
            TideTable?[] tides = [.. spots.Select((spot, i) => spot.Plan.Scenario is { Tide.Count: > 0, Tackle.JigHeads.Count: > 0 } scenario && !spot.Plan.Choice.First.Rig.Head.IsNone
                ? TideTable.Compute(scenario, spot.Plan.Choice.First.Rig, new UnitFormat(request.Units).TideScale, Trial.ForSearch(new SimulationOptions()), parallel, new Part(progress, planned + ((1 - planned) * i / spots.Count), (1 - planned) / spots.Count))
                : null)];
            day = TripDay.Of(clock, [.. spots.Select(spot => spot.Plan.Choice.First)], tides, cancellation);
        }

        var trip = Report.Trips.Trip.Of([.. spots.Select(spot => spot.Plan)], request.Units, day, request.Title);
        cancellation.ThrowIfCancellationRequested();
        return new TripOutcome(trip, spots, Files(TripWriter.Files(trip, request.Pdf)));
    }

    /// <inheritdoc/>
    public CompareOutcome Compare(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        var comparison = RigComparison.Compare(scenario, null, progress, cancellation);
        return new CompareOutcome(comparison, Files(ComparisonWriter.Files(comparison, request.Units, request.Pdf)));
    }

    /// <inheritdoc/>
    public IReadOnlyList<InverseAnswer> Ask(Scenario scenario, Rig rig, IReadOnlyList<JigHead> heads, double? depth, IProgress<double> progress, CancellationToken cancellation)
    {
        // The same settings as in a plan, whose answers these are.
        SimulationOptions options = Trial.ForSearch(new SimulationOptions());
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = cancellation };
        List<InverseAnswer> answers = [InverseQuestions.HeadForBottom(scenario, rig.Body, rig.Presentation, options, parallel)];
        progress.Report(1.0 / (heads.Count + 1));
        foreach (JigHead head in heads)
        {
            answers.Add(InverseQuestions.SpeedForDepth(scenario, rig with { Head = head }, depth, options, parallel));
            answers.Add(InverseQuestions.CountDownForZone(scenario, rig with { Head = head }, options, cancellation));
            progress.Report((answers.Count + 1) / 2.0 / (heads.Count + 1));
        }

        return answers;
    }

    /// <inheritdoc/>
    public SearchOutcome Search(Scenario scenario, Rig rig, int runs, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        var search = RetrieveSearch.Search(scenario, rig.Head, rig.Body, new RetrieveSearchOptions { RunsPerFamily = runs }, progress, cancellation);
        return new SearchOutcome(search, request.Units, Files(RetrieveWriter.Files(search, request.Units, request.Pdf)));
    }

    /// <inheritdoc/>
    public TideOutcome Tide(Scenario scenario, Rig rig, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = cancellation };
        TideTable table = TideTable.Compute(scenario, rig, new UnitFormat(request.Units).TideScale, Trial.ForSearch(new SimulationOptions()), parallel, progress);
        return new TideOutcome(table, Files(TideWriter.Files(table, request.Units, request.Pdf)));
    }

    private IReadOnlyList<OutputFile> Sheet(Plan plan, PlanRequest request) =>
        Files(SheetWriter.Files(Report.Sheets.Sheet.Of(plan, request.Units), Outputs(request)));

    private SheetOutputs Outputs(PlanRequest request) =>
        Pictures | (request.Pdf ? SheetOutputs.Pdf : SheetOutputs.None);

    private static IReadOnlyList<OutputFile> Files(IReadOnlyList<SheetFile> files) =>
        [.. files.Select(file => new OutputFile(file.Name, file.Bytes))];

    private static ColourTable Table(Scenario scenario, ColourChart chart) => new(
        chart.Depths,
        [.. chart.Colours.Select((colour, column) => new ColourColumn(
            colour.Name,
            Rows(chart, row => chart[row, column].EyeSwatch.Hex.ToLowerInvariant()),
            Rows(chart, row => chart[row, column].RelativeLuminance),
            Rows(chart, row => ColourWords.Text(chart[row, column].Word))))])
    {
        Patterns = SpotColours.Patterns(scenario, chart.Field),
    };

    private static T[] Rows<T>(ColourChart chart, Func<int, T> cell) => [.. Enumerable.Range(0, chart.Depths.Count).Select(cell)];

    // A part of the work as a share of all of it.
    private sealed class Part(IProgress<double> progress, double start, double size) : IProgress<double>
    {
        public void Report(double value) => progress.Report(start + (size * value));
    }

    // What one coarse look at everything says, for the one who waits for the rest.
    private sealed class FirstLook(ITeller teller, UnitFormat format) : IProgress<Candidate>
    {
        public static FirstLook? Told(IProgress<double> progress, UnitSystem units) => progress is ITeller teller ? new FirstLook(teller, new UnitFormat(units)) : null;

        public void Report(Candidate value) => teller.Tell(ChoiceWords.FirstLook(value.Rig, format));
    }

    // What a plan is busy with as a share of the work.
    private sealed class Share(IProgress<double> progress) : IProgress<PlanProgress>
    {
        private readonly ITeller? teller = progress as ITeller;

        public void Report(PlanProgress value)
        {
            teller?.Name(ChoiceWords.Stage(value.Stage));
            progress.Report(value.Share);
        }
    }
}
