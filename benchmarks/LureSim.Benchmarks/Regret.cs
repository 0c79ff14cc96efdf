using System.Globalization;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Benchmarks;

/// <summary>What the race loses against running every rig with every count, speed and angle over all tries; writes docs/data/choice-regret.csv.</summary>
internal static class Regret
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    /// <summary>Runs both on the small spots and writes the file under a repository's docs folder.</summary>
    public static void Write(string docs)
    {
        Directory.CreateDirectory(Path.Combine(docs, "data"));
        List<string> rows =
        [
            "# The choice of the race against that of an exhaustive search: mean scores over the same tries. best: the highest mean of any rig with the bait of the exhaustive choice. tie: difference below which scores are no different.",
            "spot,race,race_score,race_casts,race_s,exhaustive,exhaustive_score,exhaustive_casts,exhaustive_s,best,tie",
        ];
        foreach ((string name, Scenario scenario) in ChoiceSpots.Small)
        {
            (ChoiceSearch race, double raceTime) = Timed(() => ChoiceSearch.Find(scenario));
            (ChoiceSearch all, double allTime) = Timed(() => ChoiceSearch.Find(scenario, new ChoiceSearchOptions { Exhaustive = true }));
            double best = all.Finalists.Where(rig => rig.Rig.Body == all.First.Rig.Body).Max(rig => rig.Mean);
            rows.Add(string.Create(
                Plain,
                $"\"{name}\",\"{Named(race)}\",{race.First.Mean:F3},{race.Runs},{raceTime:F1},\"{Named(all)}\",{all.First.Mean:F3},{all.Runs},{allTime:F1},{best:F3},{ScoreWeights.Default.Tie(best):F3}"));
            Console.WriteLine(rows[^1]);
        }

        File.WriteAllLines(Path.Combine(docs, "data", "choice-regret.csv"), rows);
    }

    private static string Named(ChoiceSearch search)
    {
        Presentation way = search.First.Rig.Presentation;
        return string.Create(Plain, $"{search.First.Rig.Head.Label}, {search.First.Rig.Body.Label}, {way.Name}, count {(way.CountDown is { } count ? count.ToString(Plain) : "to the bottom")}, {way.RetrieveSpeed:F2} m/s, {way.Aim * 180 / Math.PI:F0} deg");
    }

    // Processor time: another program on the machine does not count.
    private static (ChoiceSearch Search, double Seconds) Timed(Func<ChoiceSearch> find)
    {
        double from = Environment.CpuUsage.TotalTime.TotalSeconds;
        ChoiceSearch found = find();
        return (found, Environment.CpuUsage.TotalTime.TotalSeconds - from);
    }
}
