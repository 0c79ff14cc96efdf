using System.Diagnostics;
using System.Globalization;
using LureSim.Decision;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Scenarios;

namespace LureSim.Fuzz;

/// <summary>
/// Plan after plan in one process, and how the memory in use after a full collection goes with the number of plans. Small drawn scenarios, mostly with lures that are soon
/// computed, each planned a few times and then the next in water of another temperature, so that what is kept for a water must be forgotten; some with their sheet, few with
/// pictures, rarely a demo scenario.
/// </summary>
internal static class Soak
{
    // A leak of this a plan would take a machine of 16 GB eight million plans (bytes).
    private const double MostGrowth = 2048;

    // What the collector leaves more or less by itself (bytes).
    private const double LeastGrowth = 1e6;

    // Standard errors by which the slope must pass what is allowed.
    private const double Errors = 2;

    // Times that the memory is looked at in a run, and lines that say so.
    private const int Looks = 100, Lines = 20;

    // The first plans fill what is kept for all of them: tables, fonts, compiled code.
    private const double WarmShare = 0.25;

    // One plan in so many is of a soft bait on a head, of a demo scenario, has its sheet, has pictures.
    private const int SoftEvery = 50, DemoEvery = 1000, SheetEvery = 5, PicturesEvery = 100;

    private const int Quick = 40, Soft = 10;

    // Of the drawn scenarios those are left out that take seconds each: casts longer than this (m), boats that drift faster than this (m/s).
    private const double LongCast = 10, FastDrift = 0.5;

    // Plans of one scenario in one water, one after the other.
    private const int InOneWater = 5;

    // Two degrees in ten thousand plans.
    private const double Warmer = 1e-3;

    /// <summary>Runs what is asked for; 1 where the memory grows.</summary>
    public static int Run(FuzzOptions options)
    {
        long start = TimeProvider.System.GetTimestamp();
        Draw(options.Seed, out List<Scenario> quick, out List<Scenario> soft);
        Scenario[] demo =
        [
            .. Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "Scenarios"), "*.yaml").Order(StringComparer.Ordinal)
                .Select(file => ScenarioReader.ReadText(File.ReadAllText(file), file).Scenario).OfType<Scenario>(),
        ];
        var points = new List<Look>();
        int done = 0, every = Math.Max(1, options.Count / Looks);
        TimeSpan slowest = TimeSpan.Zero, began = Environment.CpuUsage.TotalTime;
        for (; done < options.Count && TimeProvider.System.GetElapsedTime(start).TotalSeconds < options.Seconds; done++)
        {
            TimeSpan begin = Environment.CpuUsage.TotalTime;
            int water = done / InOneWater;
            Scenario scenario = Small(done % DemoEvery == DemoEvery - 1 ? demo[done / DemoEvery % demo.Length] : done % SoftEvery == SoftEvery - 1 ? soft[done / SoftEvery % soft.Count] : quick[water % quick.Count]);
            scenario = scenario with { Spot = scenario.Spot with { TemperatureCelsius = scenario.Spot.TemperatureCelsius + (Warmer * water * (scenario.Spot.TemperatureCelsius > 20 ? -1 : 1)) } };
            Plan plan = Planner.Plan(scenario, new PlanOptions { Samples = 0, Threads = options.Threads });
            if (done % SheetEvery == 0)
                _ = SheetWriter.Files(Sheet.Of(plan, UnitSystem.Us), done % PicturesEvery == 0 ? SheetOutputs.Png | SheetOutputs.Svg : SheetOutputs.None);
            TimeSpan took = Environment.CpuUsage.TotalTime - begin;
            slowest = took > slowest ? took : slowest;
            if ((done + 1) % every != 0)
                continue;
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true, compacting: true);
            GC.WaitForPendingFinalizers();
            using var self = Process.GetCurrentProcess();
            points.Add(new Look(done + 1, GC.GetTotalMemory(forceFullCollection: true), GC.GetGCMemoryInfo().TotalCommittedBytes, self.WorkingSet64));
            if (points.Count % (Looks / Lines) == 0)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {done + 1:N0} plans: {points[^1].Managed / 1e6:0.00} MB in use, {points[^1].Committed / 1e6:0} MB held by the collector, {points[^1].Resident / 1e6:0} MB of the process"));
        }

        TimeSpan spent = Environment.CpuUsage.TotalTime - began;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"soak: {done:N0} plans in one process in {TimeProvider.System.GetElapsedTime(start).TotalSeconds:0} s, {spent.TotalSeconds / Math.Max(1, done):0.00} s of processor time each, the slowest {slowest.TotalSeconds:0.00} s"));
        List<Look> steady = [.. points.Skip((int)(WarmShare * points.Count))];
        if (steady.Count < 3)
        {
            Console.WriteLine("  too few plans to say how the memory goes");
            return 0;
        }

        (double managed, double error) = Slope(steady, look => look.Managed);
        (double resident, double residentError) = Slope(steady, look => look.Resident);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  from plan {steady[0].Plans:N0} on: memory in use from {steady[0].Managed / 1e6:0.00} to {steady[^1].Managed / 1e6:0.00} MB, {managed:0} bytes a plan, standard error {error:0}; of the process from {steady[0].Resident / 1e6:0} to {steady[^1].Resident / 1e6:0} MB, {resident:0} bytes a plan, standard error {residentError:0}"));
        return managed - (Errors * error) > MostGrowth && steady[^1].Managed - steady[0].Managed > LeastGrowth ? 1 : 0;
    }

    private static void Draw(int seed, out List<Scenario> quick, out List<Scenario> soft)
    {
        quick = [];
        soft = [];
        for (int number = 0; quick.Count < Quick || soft.Count < Soft; number++)
        {
            Scenario scenario = Small(ScenarioReader.ReadText(new GrammarDraw(new Draws(seed, number), DrawSize.Small).Accepted(out _), "soak.yaml").Scenario!);
            (List<Scenario> into, int most) = scenario.Tackle.Bodies[0].NeedsHead ? (soft, Soft) : (quick, Quick);
            if (into.Count < most && scenario.Presentations[0] is { CastLength: <= LongCast, DriftSpeed: <= FastDrift })
                into.Add(scenario);
        }
    }

    // One head, one bait, one presentation that is fished as it is: many plans in the time.
    private static Scenario Small(Scenario scenario) => scenario with
    {
        Tackle = scenario.Tackle with { JigHeads = [.. scenario.Tackle.JigHeads.Take(1)], Bodies = [.. scenario.Tackle.Bodies.Take(1)] },
        Presentations = [.. scenario.Presentations.Take(1)],
        Fixed = [.. Enum.GetValues<Hand>()],
        Compare = [],
    };

    // Least squares, with the standard error of the slope.
    private static (double Slope, double Error) Slope(List<Look> points, Func<Look, double> value)
    {
        double x = points.Average(point => point.Plans), y = points.Average(value);
        double square = points.Sum(point => (point.Plans - x) * (point.Plans - x));
        double slope = points.Sum(point => (point.Plans - x) * (value(point) - y)) / square;
        double left = points.Sum(point => Math.Pow(value(point) - y - (slope * (point.Plans - x)), 2));
        return (slope, Math.Sqrt(left / (points.Count - 2) / square));
    }

    // Memory after a number of plans: in use, held by the collector for what is to come, of the whole process (bytes).
    private readonly record struct Look(int Plans, double Managed, double Committed, double Resident);
}
