using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Tests.Report;

public class UnitFormatTests
{
    private static readonly UnitFormat Us = new(UnitSystem.Us);
    private static readonly UnitFormat Metric = new(UnitSystem.Metric);

    [Theory]
    [InlineData(0.004, "5/32 in", "4 mm")]
    [InlineData(-0.002, "3/32 in", "2 mm")]
    [InlineData(0.0254, "1 in", "25.4 mm")]
    [InlineData(0.0302, "1 3/16 in", "30.2 mm")]
    [InlineData(0.0001, "1/32 in", "0.1 mm")]
    public void Small_lengths_read_as_a_ruler_shows_them(double metres, string us, string metric)
    {
        Assert.Equal(us, Us.RulerText(metres));
        Assert.Equal(metric, Metric.RulerText(metres));
    }

    [Fact]
    public void Values_read_in_the_chosen_units()
    {
        Assert.Equal("18 ft", Us.LengthText(18 * 0.3048));
        Assert.Equal("5.5 m", Metric.LengthText(18 * 0.3048));
        Assert.Equal("72 ft", Us.LengthText(22));
        Assert.Equal("1 to 2 ft", Us.BandText(0.3048, 0.6096));
        Assert.Equal("1.3 ft/s", Us.SpeedText(0.4));
        Assert.Equal("0.4 m/s", Metric.SpeedText(0.4));
        Assert.Equal("1.2 kn (2 ft/s)", Us.CurrentText(1.2 * 1852 / 3600));
        Assert.Equal("68 °F", Us.TemperatureText(20));
        Assert.Equal("20 °C", Metric.TemperatureText(20));
        Assert.Equal("3½ in", Us.SizeText(0.0889));
        Assert.Equal("89 mm", Metric.SizeText(0.0889));
        Assert.Equal("15 lb", Us.StrengthText(66.723));
        Assert.Equal("6.8 kg", Metric.StrengthText(66.723));
        Assert.Equal("0.0091 in", Us.DiameterText(0.00023));
        Assert.Equal("0.23 mm", Metric.DiameterText(0.00023));
        Assert.Equal("9 mph", Us.WindText(4));
    }

    [Fact]
    public void What_a_hand_measures_is_rounded_as_it_can_be_measured()
    {
        const double foot = 0.3048;
        Assert.Equal("17½ ft", Us.HandText(17.6 * foot));
        Assert.Equal("35 ft", Us.HandText(35.4 * foot));
        Assert.Equal("8 in", Us.HandText(0.65 * foot));
        Assert.Equal("5.5 m", Metric.HandText(5.42));
        Assert.Equal("1.3 m", Metric.HandText(1.29));
        Assert.Equal("20 cm", Metric.HandText(0.2));
        Assert.Equal("1.8 ft", Us.SeenText(1.8 * foot));
        Assert.Equal("6½ ft", Us.SeenText(6.6 * foot));
        Assert.Equal("17 to 18 ft", Us.HandBand(17.1 * foot, 18 * foot));
        Assert.Equal("half a second", UnitFormat.HoldText(0.5));
        Assert.Equal("1 second", UnitFormat.HoldText(1.1));
        Assert.Equal("2½ seconds", UnitFormat.HoldText(2.4));
        Assert.Equal("2 minutes", UnitFormat.HoldText(120));
        Assert.Equal("1 twist in every 10 ft of line", Us.TwistText(1 / (10 * foot)));
        Assert.Equal("3½ in shrimp", Us.LureText(new LureBody(BodyProfile.ShrimpImitation, 0.0889, 0.02, 0.015, 1050, "3.5 in shrimp imitation")));
        Assert.Equal("89 mm shrimp", Metric.LureText(new LureBody(BodyProfile.ShrimpImitation, 0.0889, 0.02, 0.015, 1050, "3.5 in shrimp imitation")));
        Assert.Equal("my best one", Metric.LureText(new LureBody(BodyProfile.ShrimpImitation, 0.0889, 0.02, 0.015, 1050, "my best one")));
    }

    [Fact]
    public void Heads_keep_the_words_of_their_owner()
    {
        JigHead quarter = Samples.Head("1/4");
        Assert.Equal("1/4 oz", Us.HeadText(quarter));
        Assert.Equal("7.1 g", Metric.HeadText(quarter));
        Assert.Equal("7 g", Metric.HeadText(quarter with { Label = "7 g" }));
        Assert.Equal("unweighted", Metric.HeadText(quarter with { Mass = 0, Label = "unweighted" }));
    }

    [Fact]
    public void Shares_are_not_rounded_to_none_or_all()
    {
        Assert.Equal("0%", UnitFormat.PercentText(0));
        Assert.Equal("<1%", UnitFormat.PercentText(0.001));
        Assert.Equal(">99%", UnitFormat.PercentText(0.999));
        Assert.Equal("100%", UnitFormat.PercentText(1));
        Assert.Equal("63%", UnitFormat.PercentText(0.625));
    }

    [Fact]
    public void What_is_not_a_number_is_a_dash()
    {
        Assert.Equal(UnitFormat.None, Us.LengthText(double.NaN));
        Assert.Equal(UnitFormat.None, UnitFormat.SecondsText(null));
        Assert.Equal(UnitFormat.None, UnitFormat.PercentText(double.NaN));
        Assert.Equal("0", UnitFormat.Number(-0.0001, 2));
    }

    [Fact]
    public void Seconds_are_halves_below_ten_and_whole_above()
    {
        Assert.Equal("3.5", UnitFormat.SecondsNumber(3.4));
        Assert.Equal("10", UnitFormat.SecondsNumber(9.8));
        Assert.Equal("12", UnitFormat.SecondsNumber(12.4));
    }
}
