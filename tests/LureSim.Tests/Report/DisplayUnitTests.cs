using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Tests.Report;

public class DisplayUnitTests
{
    private static readonly UnitFormat Us = new(UnitSystem.Us);
    private static readonly UnitFormat Metric = new(UnitSystem.Metric);

    [Fact]
    public void Values_are_shown_in_the_chosen_units()
    {
        Assert.Equal("8.0 ft", Us.Length.Text(2.4384));
        Assert.Equal("2.44 m", Metric.Length.Text(2.4384));
        Assert.Equal("3.50 in", Us.SmallLength.Text(0.0889));
        Assert.Equal("88.9 mm", Metric.SmallLength.Text(0.0889));
        Assert.Equal("1.50 ft/s", Us.Speed.Text(0.4572));
        Assert.Equal("0.46 m/s", Metric.Speed.Text(0.4572));
        Assert.Equal("1.0 kn", Us.FlowSpeed.Text(1852.0 / 3600.0));
        Assert.Equal("10.00 lb", Us.Force.Text(44.482216152605));
        Assert.Equal("37%", UnitFormat.Share.Text(0.37));
        Assert.Equal("90°", UnitFormat.Angle.Text(Math.PI / 2.0));
        Assert.Equal("4.0 s", UnitFormat.Seconds.Text(4.0));
    }

    [Fact]
    public void A_missing_value_is_a_dash_and_a_rounded_zero_has_no_sign()
    {
        Assert.Equal("-", Us.Force.Text(double.NaN));
        Assert.Equal("-", Us.Length.Number(double.PositiveInfinity));
        Assert.Equal("0.00", Metric.Length.Number(-0.001));
        Assert.Equal("-0.01", Metric.Length.Number(-0.01));
        Assert.Equal("-", Us.Weight(double.NaN));
    }

    [Theory]
    [InlineData(1.0 / 4.0, "1/4 oz")]
    [InlineData(3.0 / 16.0, "3/16 oz")]
    [InlineData(1.0 / 32.0, "1/32 oz")]
    [InlineData(1.25, "1 1/4 oz")]
    [InlineData(2.0, "2 oz")]
    [InlineData(0.28, "9/32 oz")]
    [InlineData(0.34, "11/32 oz")]
    [InlineData(0.1235, "1/8 oz")]
    public void Weights_are_fractions_where_one_fits(double ounces, string expected) =>
        Assert.Equal(expected, Us.Weight(ounces * 0.028349523125));

    [Theory]
    [InlineData("1/4 oz", UnitSystem.Us, "1/4 oz")]
    [InlineData("1/4 oz", UnitSystem.Metric, "7.1 g")]
    [InlineData("1/4 oz tungsten", UnitSystem.Metric, "7.1 g tungsten")]
    [InlineData("7.0874 g tungsten", UnitSystem.Us, "1/4 oz tungsten")]
    [InlineData("7.0874g", UnitSystem.Us, "1/4 oz")]
    public void Head_labels_follow_the_units(string label, UnitSystem units, string expected) =>
        Assert.Equal(expected, new UnitFormat(units).HeadText(new JigHead(0.0070874, HeadMetal.Lead, 0.001, label)));

    [Fact]
    public void An_unweighted_head_keeps_its_label() =>
        Assert.Equal("unweighted", Metric.HeadText(new JigHead(0.0, HeadMetal.Lead, 0.001, "unweighted")));
}
