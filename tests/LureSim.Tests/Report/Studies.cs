using LureSim.Decision.Inverse;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Report.Figures;

namespace LureSim.Tests.Report;

/// <summary>Studies, answers and tides put together from the hand-made tracks of <see cref="Samples"/>.</summary>
internal static class Studies
{
    public static UncertaintyStudy Of(Scenario scenario, int samples = 12)
    {
        Presentation presentation = scenario.Presentations[^1];
        IReadOnlyList<UncertainDraw> draws = UncertainDraw.Draw(scenario, presentation, samples);
        IReadOnlyList<JigHead> heads = scenario.Tackle.JigHeads;
        double reach = 1.15 * draws.Max(d => d.Presentation.CastLength);
        var runs = heads.SelectMany(head => draws.Select(draw =>
        {
            LureSim.Motion.Track track = Samples.Track(draw.Scenario, head, draw.Presentation);
            Coverage coverage = Samples.Cover(draw.Scenario, track);
            return new UncertaintyStudy.DrawRun(coverage, Ranking.Score(coverage, draw.Scenario.Spot, new Rig(head, scenario.Tackle.Bodies[0], draw.Presentation)), false, WaterMap.Of(track, draw.Scenario.Spot, scenario.Spot, draw.Presentation, reach));
        })).ToArray();
        return UncertaintyStudy.From(presentation, scenario.Tackle.Bodies[0], heads, draws, runs);
    }

    public static IReadOnlyList<InverseAnswer> Answers(Scenario scenario)
    {
        Presentation p = scenario.Presentations[0];
        JigHead head = scenario.Tackle.JigHeads[0];
        return
        [
            new(InverseQuestion.HeadForBottom, InverseStatus.Found, null, p, 0.0101, null, null, head, 0.0106, null, InverseReason.None, 0, 20),
            new(InverseQuestion.SpeedForDepth, InverseStatus.NotReachable, head, p, null, null, null, null, null, scenario.Spot.StrikeZone.Top, InverseReason.SlowestRunsAbove, 0, 11),
            new(InverseQuestion.CountDownForZone, InverseStatus.Found, head, p, 8, 6.5, null, null, null, scenario.Spot.StrikeZone.Top, InverseReason.ZoneReachesBottom, 0, 1),
        ];
    }

    public static TideTable Tide(Scenario scenario)
    {
        IReadOnlyList<JigHead> heads = scenario.Tackle.JigHeads;
        TideRow[] rows = [.. Enumerable.Range(0, 14).Select(i =>
        {
            double[] shares = [.. heads.Select((_, h) => Math.Abs(Math.Sin((0.3 * i) + h)))];
            return new TideRow(18 + (0.5 * i), 0.8 * Math.Cos(0.4 * i), scenario.Spot.Depth, i == 3 ? null : heads[Array.IndexOf(shares, shares.Max())], shares, shares, i == 4 ? null : CommonWeights.All[i]);
        })];
        double?[,] weights = new double?[6, 7];
        for (int r = 0; r < 6; r++)
        {
            for (int c = 0; c < 7; c++) weights[r, c] = r + (2 * c) < CommonWeights.All.Count ? CommonWeights.All[r + (2 * c)] : null;
        }

        return new TideTable(scenario, new Rig(heads[0], scenario.Tackle.Bodies[0], scenario.Presentations[^1]), rows, new WeightTable([1.524, 3.048, 4.572, 6.096, 7.62, 9.144], [0, 0.129, 0.257, 0.386, 0.514, 0.643, 0.772], weights));
    }

    public static IEnumerable<Figure> Figures(Scenario scenario, FigureOptions options)
    {
        UncertaintyStudy study = Of(scenario);
        TideTable tide = Tide(scenario);
        Candidate first = Samples.Best(Samples.Candidates(scenario, scenario.Presentations[^1]));
        return
        [
            ChanceBars.Create(study, options),
            SpreadBars.Create(study, options),
            WaterMapFigure.Create(scenario.Spot, study.Best.Map, study.Best.Head, study.Presentation.Name, options),
            WaterMapFigure.Create(scenario.Spot, WaterMap.Of(first.Track, scenario.Spot, scenario.Spot, first.Rig.Presentation, 25), first.Rig.Head, study.Presentation.Name, options),
            TideByHour.Create(tide, options),
            WeightByCurrent.Create(tide, options),
            RetrieveTrade.Create(Cli.HandMade.Search(scenario, first.Rig), options),
        ];
    }
}
