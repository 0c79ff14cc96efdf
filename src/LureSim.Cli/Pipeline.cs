using LureSim.Cli.Hosting;
using LureSim.Decision;
using LureSim.Decision.Colours;
using LureSim.Decision.Comparison;
using LureSim.Decision.Inverse;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Search;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
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
    // Draws for each head of a trip that does not say otherwise: enough for an order of heads, not for a chance that one quotes.
    private const int TripSamples = 12;

    /// <inheritdoc/>
    public FallTable Fall(Scenario scenario, UnitSystem units, IProgress<double> progress, CancellationToken cancellation) =>
        Planner.FallTable(scenario, new PlanOptions { Scale = new UnitFormat(units).LengthScale }, new Share(progress), cancellation);

    /// <inheritdoc/>
    public Candidate Path(Scenario scenario, Rig rig, CancellationToken cancellation) =>
        Trial.Run(scenario, rig, new SimulationOptions(), cancellation);

    /// <inheritdoc/>
    public ColourTable Colours(Scenario scenario, UnitSystem units, CancellationToken cancellation) =>
        Table(scenario, SpotColours.Chart(scenario, new UnitFormat(units).LengthScale));

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
        Plan plan = Planner.Plan(scenario, new PlanOptions { Scale = new UnitFormat(request.Units).LengthScale, Samples = request.Samples }, new Share(progress), cancellation);
        return new PlanOutcome(plan, Table(scenario, plan.Colours.Chart), Sheet(plan, request)) { Units = request.Units };
    }

    /// <inheritdoc/>
    public TripOutcome Trip(IReadOnlyList<Scenario> scenarios, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
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
                Samples = request.Samples ?? Math.Min(TripSamples, scenario.Uncertainty.Samples),
                Aside = Trial.Coarse(new SimulationOptions()),
            };
            Plan plan = Planner.Plan(scenario, options, new Share(new Part(progress, done / parts, 1 / parts)), cancellation);
            spots.Add(new PlanOutcome(plan, Table(scenario, plan.Colours.Chart), []));
        }

        var trip = Report.Trips.Trip.Of([.. spots.Select(spot => spot.Plan)], request.Units);
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
        var options = new SimulationOptions();
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
    public SearchOutcome Search(Scenario scenario, JigHead? head, LureBody body, int runs, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        var options = new RetrieveSearchOptions { RunsPerFamily = runs };
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Threads, CancellationToken = cancellation };
        head ??= RetrieveSearch.BestHead(scenario, body, options.Simulation, parallel);
        var search = RetrieveSearch.Search(scenario, head, body, options, progress, cancellation);
        return new SearchOutcome(search, request.Units, Files(RetrieveWriter.Files(search, request.Units, request.Pdf)));
    }

    /// <inheritdoc/>
    public TideOutcome Tide(Scenario scenario, Presentation presentation, PlanRequest request, IProgress<double> progress, CancellationToken cancellation)
    {
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = cancellation };
        TideTable table = TideTable.Compute(scenario, presentation, new UnitFormat(request.Units).TideScale, Trial.Coarse(new SimulationOptions()), parallel, progress);
        return new TideOutcome(table, Files(TideWriter.Files(table, request.Units, request.Pdf)));
    }

    private static IReadOnlyList<OutputFile> Sheet(Plan plan, PlanRequest request) =>
        Files(SheetWriter.Files(Report.Sheets.Sheet.Of(plan, request.Units), Outputs(request)));

    private static SheetOutputs Outputs(PlanRequest request) =>
        SheetOutputs.Png | SheetOutputs.Svg | (request.Pdf ? SheetOutputs.Pdf : SheetOutputs.None);

    private static IReadOnlyList<OutputFile> Files(IReadOnlyList<SheetFile> files) =>
        [.. files.Select(file => new OutputFile(file.Name, file.Bytes))];

    private static ColourTable Table(Scenario scenario, ColourChart chart) => new(
        chart.Depths,
        [.. chart.Colours.Select((colour, column) => new ColourColumn(
            colour.Name,
            Rows(chart, row => chart[row, column].AdaptedSwatch.Hex.ToLowerInvariant()),
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

    // Counts of simulations as a share of the work.
    private sealed class Share(IProgress<double> progress) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => progress.Report(value.Total > 0 ? (double)value.Done / value.Total : 0.0);
    }
}
