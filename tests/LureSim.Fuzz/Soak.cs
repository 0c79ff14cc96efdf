using System.Diagnostics;
using System.Globalization;
using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Scenarios;

namespace LureSim.Fuzz;

/// <summary>Plan after plan in one process, with its sheet, and how the memory in use after a full collection goes with the number of plans.</summary>
internal static class Soak
{
    // A leak of a tenth of this a plan would take a machine of 16 GB three million plans; noise of the collector is far less after some hundreds.
    private const double MostGrowth = 2048;

    // What the collector leaves more or less by itself (bytes).
    private const double LeastGrowth = 1e6;

    // Times that the memory is looked at in a run.
    private const double Looks = 60;

    // The first plans fill what is kept for all of them: tables, fonts, compiled code.
    private const double WarmShare = 0.25;

    /// <summary>Runs what is asked for; 1 where the memory grows.</summary>
    public static int Run(FuzzOptions options)
    {
        long start = TimeProvider.System.GetTimestamp();
        string[] texts = [.. Enumerable.Range(0, 12).Select(number => new GrammarDraw(new Draws(options.Seed, number), DrawSize.Small).Accepted(out _))];
        var points = new List<(int Plans, double Managed, double Resident)>();
        int done = 0;
        double looked = double.NegativeInfinity;
        var slowest = TimeSpan.Zero;
        for (; done < options.Count && TimeProvider.System.GetElapsedTime(start).TotalSeconds < options.Seconds; done++)
        {
            long begin = TimeProvider.System.GetTimestamp();
            Scenario scenario = Small(ScenarioReader.ReadText(texts[done % texts.Length], "soak.yaml").Scenario!);
            Plan plan = Planner.Plan(scenario, new PlanOptions { Samples = 0, Threads = options.Threads });
            _ = SheetWriter.Files(Sheet.Of(plan, UnitSystem.Us), done % 50 == 0 ? SheetOutputs.Png | SheetOutputs.Svg : SheetOutputs.None);
            TimeSpan took = TimeProvider.System.GetElapsedTime(begin);
            slowest = took > slowest ? took : slowest;
            if (TimeProvider.System.GetElapsedTime(start).TotalSeconds - looked < options.Seconds / Looks)
                continue;
            looked = TimeProvider.System.GetElapsedTime(start).TotalSeconds;
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true, compacting: true);
            GC.WaitForPendingFinalizers();
            points.Add((done, GC.GetTotalMemory(forceFullCollection: true), Process.GetCurrentProcess().WorkingSet64));
        }

        var steady = points.Skip((int)(WarmShare * points.Count)).ToList();
        double managed = Slope(steady, point => point.Managed), resident = Slope(steady, point => point.Resident);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"soak: {done:N0} plans in one process in {TimeProvider.System.GetElapsedTime(start).TotalSeconds:0} s, the slowest {slowest.TotalSeconds:0.00} s; memory in use from {steady[0].Managed / 1e6:0.0} to {steady[^1].Managed / 1e6:0.0} MB, {managed:0} bytes a plan; of the process {steady[0].Resident / 1e6:0} to {steady[^1].Resident / 1e6:0} MB, {resident:0} bytes a plan"));
        return managed > MostGrowth && steady[^1].Managed - steady[0].Managed > LeastGrowth ? 1 : 0;
    }

    // One head, one bait, one presentation: many plans in the time.
    private static Scenario Small(Scenario scenario) => scenario with
    {
        Tackle = scenario.Tackle with { JigHeads = [.. scenario.Tackle.JigHeads.Take(1)], Bodies = [.. scenario.Tackle.Bodies.Take(1)] },
        Presentations = [.. scenario.Presentations.Take(1)],
        Compare = [],
    };

    // Least squares.
    private static double Slope(List<(int Plans, double Managed, double Resident)> points, Func<(int Plans, double Managed, double Resident), double> value)
    {
        double x = points.Average(point => point.Plans), y = points.Average(value);
        double square = points.Sum(point => (point.Plans - x) * (point.Plans - x));
        return square > 0 ? points.Sum(point => (point.Plans - x) * (value(point) - y)) / square : 0;
    }
}
