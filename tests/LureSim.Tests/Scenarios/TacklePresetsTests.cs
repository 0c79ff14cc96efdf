using CsCheck;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Tackle;

namespace LureSim.Tests.Scenarios;

public class TacklePresetsTests
{
    private const double Pound = 4.4482216152605;

    [Theory]
    [InlineData(LineKind.Braid, 10, 0.18)]
    [InlineData(LineKind.Braid, 80, 0.45)]
    [InlineData(LineKind.Monofilament, 2, 0.13)]
    [InlineData(LineKind.Monofilament, 12, 0.32)]
    [InlineData(LineKind.Fluorocarbon, 20, 0.40)]
    public void A_row_of_the_table_comes_back(LineKind kind, double pounds, double millimetres) =>
        Assert.Equal(millimetres / 1000.0, TacklePresets.LineDiameter(kind, pounds * Pound), 1e-12);

    [Fact]
    public void Outside_the_table_the_cross_section_goes_with_the_strength()
    {
        Assert.Equal(0.00013 * Math.Sqrt(4.0 / 6.0), TacklePresets.LineDiameter(LineKind.Braid, 4 * Pound), 1e-12);
        Assert.Equal(0.0009 * Math.Sqrt(100.0 / 80.0), TacklePresets.LineDiameter(LineKind.Monofilament, 100 * Pound), 1e-12);
    }

    [Fact]
    public void A_stronger_line_of_one_kind_is_thicker() =>
        Gen.Select(Gen.Enum<LineKind>(), Gen.Double[4.5, 440.0], Gen.Double[1.01, 2.0]).HoldsFor((kind, strength, factor) =>
            Assert.True(TacklePresets.LineDiameter(kind, strength * factor) > TacklePresets.LineDiameter(kind, strength)));

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Impossible_arguments_are_refused(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => TacklePresets.LineDiameter(LineKind.Braid, value));
        Assert.Throws<ArgumentOutOfRangeException>(() => HookWire.CommonMass(value));
    }

    [Fact]
    public void Hook_masses_follow_their_table_and_stay_at_its_ends()
    {
        Assert.Equal(0.0014, HookWire.CommonMass(0.1), 1e-12);
        Assert.Equal(0.0011, HookWire.CommonMass(0.0875), 1e-12);
        Assert.Equal(0.00015, HookWire.CommonMass(0.001), 1e-12);
        Assert.Equal(0.009, HookWire.CommonMass(1.0), 1e-12);
    }

    // UNESCO technical paper 44 (Fofonoff & Millard 1983) gives -2.588567 degC at S = 40 and 500 dbar; the pressure
    // term there is 7.53e-4 degC/dbar.
    [Fact]
    public void Freezing_point_meets_the_published_check_value() =>
        Assert.Equal(-2.588567, ScenarioBuilder.FreezingPoint(40.0) - (7.53e-4 * 500.0), 1e-6);
}
