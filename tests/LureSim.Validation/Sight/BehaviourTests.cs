using LureSim.Data;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Validation.Sight;

/// <summary>What fish made out and from where they turned to prey, in tests with fish.</summary>
public class BehaviourTests
{
    private const string Targets = "Sight: small targets";
    private const string Reactions = "Sight: reaction distance";

    private static ReferenceTable Table(string name)
    {
        var assembly = typeof(BehaviourTests).Assembly;
        string resource = assembly.GetManifestResourceNames().Single(r => r.EndsWith($".sight.{name}.csv", StringComparison.Ordinal));
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        return ReferenceTable.Parse(name, reader.ReadToEnd());
    }

    [Fact]
    public void Smallest_target_by_contrast_lies_where_sunfish_made_it_out()
    {
        foreach (var row in Table("contrast_and_size").Rows.Where(r => r.Text("quantity") == "single target"))
        {
            double computed = TargetThreshold.SmallestAngle(row.Number("contrast")) * 180.0 / Math.PI;
            ValidationLog.Relative(
                CheckClass.Measured, Targets, FormattableString.Invariant($"smallest target of Weber contrast {row.Number("contrast"):0.00}"),
                $"{row.Text("source")}: {row.Text("low")} to {row.Text("high")} deg", row.Number("value"), computed, 0.19, "deg");
        }

        var moving = Table("contrast_and_size").Rows.Single(r => r.Text("quantity") == "moving target");
        ValidationLog.Relative(
            CheckClass.Measured, Targets, "the same, moving target of contrast 1: stated discrepancy", moving.Text("source"), moving.Number("value"),
            TargetThreshold.SmallestAngle(1.0) * 180.0 / Math.PI, 0.24, "deg");
    }

    [Fact]
    public void Smallest_target_at_full_contrast_lies_among_seven_kinds_of_fish()
    {
        double[] log = [.. Table("contrast_and_size").Rows.Where(r => r.Number("contrast") == 1.0 && r.Text("quantity") != "moving target").Select(r => Math.Log(r.Number("value")))];
        Assert.Equal(7, log.Length);
        double mean = log.Average();
        double spread = Math.Exp(Math.Sqrt(log.Sum(x => (x - mean) * (x - mean)) / (log.Length - 1)));
        ValidationLog.Between(
            CheckClass.Measured, Targets, "smallest target of full contrast against the geometric mean of seven kinds", "seven behaviour tests, 0.10 to 0.38 deg",
            Math.Exp(mean) / spread, Math.Exp(mean) * spread, TargetThreshold.SmallestAngle(1.0) * 180.0 / Math.PI, "deg");
        ValidationLog.Relative(
            CheckClass.Identity, Targets, "spread of the angle between kinds (set by it)", "the same seven", spread, TargetThreshold.AngleSpread, 0.03);
    }

    [Fact]
    public void A_full_contrast_lure_in_the_clearest_water_is_not_made_out_below_the_smallest_target()
    {
        // The curve as it acts in a scene: black, seen level in the clearest ocean, no farther than its size over the smallest angle.
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.ClearOcean, 40.0), Atmosphere.Illuminate(50.0));
        var sighting = new SightScene(field, FishEyes.All.Single(e => e.CommonName == "striped bass"), ViewDirection.Level, 2.0, 0.02).Sight(LureColours.Black);
        double angle = 0.02 / sighting.Distance * 180.0 / Math.PI;
        Assert.InRange(angle, 0.17, 0.5);
    }

    [Theory]
    [InlineData("Chinook salmon", "Hansen", 1.19)]
    [InlineData("coastal cutthroat trout", "Hansen", 1.87)]
    [InlineData("lake trout", "Vogel", 0.957)]
    [InlineData("lake trout", "Mazur", 0.933)]
    public void Reaction_distance_by_light_and_turbidity_follows_the_plotted_points(string predator, string source, double full)
    {
        double[] logs = [.. Table("reaction_distance").Rows
            .Where(r => r.Text("predator") == predator && r.Text("source").StartsWith(source, StringComparison.Ordinal))
            .Select(r => Math.Log(r.Number("reaction_cm") / 100.0 / (full / ReactionDistance.Full * ReactionDistance.At(r.Number("light_lx"), r.Number("turbidity_ntu"), 0.05))))];
        Assert.True(logs.Length >= 30);
        string name = $"{predator}, {source}, {logs.Length} points";
        ValidationLog.Absolute(
            CheckClass.Measured, Reactions, $"{name}: mean of the logarithm of point over law, law by the predator's own full distance",
            "plotted points, digitised by others", 0.0, logs.Average(), 0.15);
        ValidationLog.AtMost(
            CheckClass.Measured, Reactions, $"{name}: scatter of the logarithm about the law", "the same; the stated scatter is ln 1.23 = 0.21", 0.3,
            Math.Sqrt(logs.Average(x => x * x)));
        ValidationLog.Relative(
            CheckClass.Measured, Reactions, $"{name}: full distance against the mean of three kinds", "the same; the stated spread is a factor of 1.4", full, ReactionDistance.Full, 0.4, "m");
    }

    [Fact]
    public void Reach_of_a_lure_is_never_beyond_where_it_is_made_out_nor_where_fish_react()
    {
        foreach (var kind in Enum.GetValues<WaterKind>())
        {
            var field = new LightField(OpticalWater.FromSecchi(kind, 3.0), Atmosphere.Illuminate(50.0));
            double reaction = ReactionDistance.In(field, 1.0);
            Assert.InRange(reaction, 0.1, ReactionDistance.Full);
            Assert.True(ReactionDistance.In(field, 6.0) <= reaction);
        }
    }
}
