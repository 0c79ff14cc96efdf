using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>"What if I'm off?": the lure that is looked at and its rival over the same tries of current, cast, speed and depth.</summary>
internal static class TryPicture
{
    private const int Tries = 24;
    private const int Dots = 20;

    // After so many tries the page is told how it stands.
    private const int Batch = 8;

    // Scores that differ by less are a tie (assumed, as for the choice).
    private const double Alike = 0.005;

    // Rank correlation from which an input is named.
    private const double Matters = 0.4;

    /// <summary>Runs the tries.</summary>
    /// <param name="pictures">The pictures of the scenario.</param>
    /// <param name="question">The question.</param>
    /// <param name="tell">Told how it stands.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static async Task RunAsync(PicturePart pictures, BenchQuestion question, Func<TriesView, Task> tell, CancellationToken cancellation)
    {
        int rival = Rival(pictures, question, cancellation);
        int[] heads = rival < 0 ? [question.Focus] : [question.Focus, rival];
        IReadOnlyList<UncertainDraw> draws = UncertainDraw.Draw(question.Scenario, question.First.Rig.Presentation, Tries);
        if (draws.Count == 1)
        {
            await tell(new TriesView(1, 1, true, [], [], [], "The scenario says that everything is known exactly: there is nothing to try.", "", "")).ConfigureAwait(false);
            return;
        }

        var runs = new Candidate[heads.Length, draws.Count];
        for (int done = 0; done < draws.Count;)
        {
            int until = Math.Min(draws.Count, done + Batch), from = done;
            Parallel.For(0, (until - from) * heads.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, Environment.ProcessorCount - 1), CancellationToken = cancellation }, i =>
            {
                int h = i % heads.Length, d = from + (i / heads.Length);
                UncertainDraw draw = draws[d];
                Motion.SimulationOptions options = Trial.Coarse(new Motion.SimulationOptions()) with { LineDrag = draw.LineDrag, LureDragFactor = draw.LureDragOf(question.Lures[heads[h]].Rig.Body) };
                runs[h, d] = Trial.Run(draw.Scenario, question.Lures[heads[h]].Rig with { Presentation = draw.Presentation }, options, cancellation);
            });
            done = until;
            await tell(View(pictures, question, heads, draws, runs, done)).ConfigureAwait(false);
        }
    }

    private static TriesView View(PicturePart pictures, BenchQuestion question, int[] heads, IReadOnlyList<UncertainDraw> draws, Candidate[,] runs, int done)
    {
        UnitFormat format = pictures.Format;
        int[] wins = new int[heads.Length];
        List<string> winners = [];
        int even = 0;
        for (int d = 0; d < done; d++)
        {
            double first = runs[0, d].Score, other = heads.Length > 1 ? runs[1, d].Score : -1;
            if (Math.Abs(first - other) < Alike)
            {
                even++;
                winners.Add("");
                continue;
            }

            int best = first > other ? 0 : 1;
            wins[best]++;
            winners.Add(question.Lures[heads[best]].Name);
        }

        List<TryHead> shown = [];
        for (int h = 0; h < heads.Length; h++)
        {
            double[] shares = [.. Enumerable.Range(0, done).Select(d => runs[h, d].Coverage.ZoneShare).Order()];
            double median = Quantile(shares, 0.5);
            (string light, string dark, _) = WaterPicture.Look(question, heads[h]);
            BenchLure lure = question.Lures[heads[h]];
            shown.Add(new TryHead(
                lure.Name,
                lure.Rig.Head.IsNone ? lure.Rig.Body.Label : format.HeadText(lure.Rig.Head),
                wins[h],
                [.. Enumerable.Range(0, Dots).Select(k => (int)Math.Round(100 * Quantile(shares, (k + 0.5) / Dots)))],
                (int)Math.Round(100 * median),
                $"middle {UnitFormat.PercentText(median)}",
                light,
                dark));
        }

        string counts = heads.Length == 1
            ? $"{done} of {draws.Count} tries"
            : $"Better in {wins[0]} of {done}: {shown[0].Name}; in {wins[1]} of {done}: {shown[1].Name}{(even > 0 ? $"; no real difference in {even}" : "")}.";
        double top = heads.Length > 1 ? Math.Max(wins[0], wins[1]) : 0;
        string matter = done < draws.Count ? "" : Decides(draws, runs, heads.Length, done);
        return new TriesView(
            done,
            draws.Count,
            done == draws.Count,
            shown,
            [.. Enumerable.Range(0, done).Select(d => Path(runs[0, d]))],
            winners,
            counts,
            $"Each dot stands for {UnitFormat.Number(100.0 / Dots, 0)} of 100 casts like these: share of the retrieve in the zone. The mark is the middle.",
            heads.Length > 1 && done == draws.Count && top < 0.6 * done ? $"Too close to call. {matter}".TrimEnd() : matter);
    }

    // What moves the result most, if one thing does.
    private static string Decides(IReadOnlyList<UncertainDraw> draws, Candidate[,] runs, int heads, int done)
    {
        SpreadDrivers drivers = SpreadDrivers.Of(draws, [.. Enumerable.Range(0, done).Select(d => heads > 1 ? runs[0, d].Score - runs[1, d].Score : runs[0, d].Coverage.ZoneShare)]);
        if (drivers.Decisive is not { } most || Math.Abs(most.RankCorrelation) < Matters) return "No one of your numbers decides it.";
        return most.Input switch
        {
            UncertainInput.Current => "Check the current first: it decides.",
            UncertainInput.Cast => "Check how far you cast first: it decides.",
            UncertainInput.RetrieveSpeed => "Check how fast you reel first: it decides.",
            UncertainInput.Depth => "Check the depth first: it decides.",
            UncertainInput.RodHeight => "How high you hold the rod decides.",
            UncertainInput.LineDrag or UncertainInput.LureDrag or UncertainInput.LineLaw => $"What decides is the {UncertaintyWords.Name(most.Input)}, which the model does not know better.",
            _ => throw new ArgumentOutOfRangeException(nameof(draws), most.Input, "Not an input."),
        };
    }

    private static int[] Path(Candidate run)
    {
        double[] x = [.. run.Track.X.Select(v => 100 * v)], z = [.. Enumerable.Range(0, run.Track.Count).Select(i => 100 * Math.Max(-0.3, run.Track.Depth(i)))];
        return x.Length < 2 ? [] : [.. PathThinner.Keep(x, z, 0, x.Length - 1, 3).SelectMany(i => (int[])[(int)Math.Round(x[i]), (int)Math.Round(z[i])])];
    }

    private static int Rival(PicturePart pictures, BenchQuestion question, CancellationToken cancellation)
    {
        int best = -1;
        double score = double.NegativeInfinity;
        for (int i = 0; i < question.Lures.Count; i++)
        {
            if (i == question.Focus) continue;
            double here = pictures.FineRun(question, i, cancellation).Score;
            if (here <= score) continue;
            (best, score) = (i, here);
        }

        return best;
    }

    private static double Quantile(double[] sorted, double share)
    {
        if (sorted.Length == 0) return 0;
        double at = share * (sorted.Length - 1);
        int i = Math.Min((int)at, sorted.Length - 2);
        return i < 0 ? sorted[0] : sorted[i] + ((at - i) * (sorted[i + 1] - sorted[i]));
    }
}
