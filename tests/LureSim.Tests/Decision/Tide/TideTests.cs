using CsCheck;
using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Decision.Tide;

public class TideTests
{
    [Fact]
    public void The_curve_meets_its_points_and_overshoots_none() =>
        Gen.Double[-2, 2].Array[3, 12].HoldsFor(currents =>
        {
            var curve = new TideCurve([.. currents.Select((c, i) => new TidePoint(5 + (1.5 * i), c, 0.1 * c))]);
            for (int i = 0; i < currents.Length; i++)
                Assert.Equal(currents[i], curve.Current(5 + (1.5 * i)), 1e-9);
            for (int i = 0; i + 1 < currents.Length; i++)
            {
                double low = Math.Min(currents[i], currents[i + 1]), high = Math.Max(currents[i], currents[i + 1]);
                for (double t = 0; t < 1.5; t += 0.1)
                {
                    Assert.InRange(curve.Current(5 + (1.5 * i) + t), low - 1e-9, high + 1e-9);
                    Assert.InRange(curve.DepthChange(5 + (1.5 * i) + t), (0.1 * low) - 1e-9, (0.1 * high) + 1e-9);
                }
            }

            Assert.Equal(currents[0], curve.Current(-99), 1e-9);
            Assert.Equal(currents[^1], curve.Current(99), 1e-9);
        });

    [Fact]
    public void Too_few_points_or_points_out_of_order_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new TideCurve([new(1, 0, 0), new(2, 0, 0)]));
        Assert.Throws<ArgumentException>(() => new TideCurve([new(1, 0, 0), new(3, 0, 0), new(2, 0, 0)]));
    }

    [Fact]
    public void The_bridge_wants_weight_with_the_current_and_depth()
    {
        Scenario bridge = ScenarioReader.Read(Repository.File("scenarios", "bridge-channel.yaml")).Scenario!;
        TideTable table = TideTable.Compute(bridge, new Rig(bridge.Tackle.JigHeads[0], bridge.Tackle.Bodies[2], bridge.Presentations[0]), new UnitFormat(UnitSystem.Us).TideScale, Trial.Coarse(new SimulationOptions()), new ParallelOptions());

        // Snapshot, within one of the common sizes; what is on the edge between two may change with the engine.
        string[] holding = ["1/4", "5/16", "1/2", "1/2", "1/2", "1/4", "3/16", "1/4"];
        Assert.Equal(8, table.Rows.Count);
        List<string> off = [];
        for (int i = 0; i < holding.Length; i++) Near(holding[i], table.Rows[i].Holding, $"{table.Rows[i].Hours} h");
        string[,] weights =
        {
            { "1/16", "1/32", "1/32", "1/8", "1/8", "3/16", "3/16" },
            { "1/8", "1/8", "1/8", "3/16", "1/4", "5/16", "3/8" },
            { "3/16", "3/16", "1/4", "3/16", "1/4", "1/2", "5/8" },
            { "1/4", "1/4", "5/16", "3/8", "1/2", "1/2", "1" },
            { "5/16", "5/16", "3/8", "5/8", "3/4", "1", "1 1/2" },
            { "3/8", "5/16", "5/8", "3/4", "1", "1 1/2", "1 1/2" },
        };
        for (int r = 0; r < 6; r++)
        {
            for (int c = 0; c < 7; c++)
            {
                Near(weights[r, c], table.Table.Weight[r, c], $"row {r}, column {c}");
                if (c > 0) Assert.True(Size(table.Table.Weight[r, c]) >= Size(table.Table.Weight[r, c - 1]), $"more current, less weight in row {r}");
                if (r > 0) Assert.True(Size(table.Table.Weight[r, c]) >= Size(table.Table.Weight[r - 1, c]), $"more depth, less weight in column {c}");
            }
        }

        // The score weighs shell and swing as well: the head that holds the bottom grows with the current, that of the best score need not.
        Assert.True(table.Rows.MaxBy(r => Math.Abs(r.Current))!.Holding > table.Rows.MinBy(r => Math.Abs(r.Current))!.Holding);
        Assert.Equal(20 * 0.3048, table.Rows[0].Depth, 1e-6);
        Assert.True(table.Rows[^1].Current < 0);

        Assert.True(off.Count == 0, string.Join("; ", off));

        void Near(string expected, double? found, string where)
        {
            int wanted = Size(Report.Samples.Ounces(expected) * 0.028349523125);
            if (Math.Abs(Size(found) - wanted) > 1) off.Add($"{where}: {expected} oz expected, found {found / 0.028349523125:0.###} oz");
        }
    }

    // Place in the list of common weights; one beyond its end for none.
    private static int Size(double? mass) => mass is { } m ? Enumerable.Range(0, CommonWeights.All.Count).MinBy(i => Math.Abs(CommonWeights.All[i] - m)) : CommonWeights.All.Count;
}
