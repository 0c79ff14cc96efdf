using LureSim.Hydrodynamics;

namespace LureSim.Tests.Hydrodynamics;

public class BodyDragComponentsTests
{
    private const double Viscosity = 1.1e-6;

    private static readonly DragSum Bait = RoundedBody.NoseFirst(0.1, 0.02, 0.014);

    private static IDragComponent Component(string name) => name switch
    {
        "friction" => new SkinFriction(5e-3, 0.1, 0.016),
        "fast friction" => new SkinFriction(5e-1, 1, 0.16),
        "base" => new BluntBase(new SkinFriction(5e-3, 0.1, 0.016), 1e-4),
        "wire" => new CylinderAcross("wire", 0.02, 1e-3),
        "sum" => Bait,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Not a part of this test."),
    };

    [Theory]
    [InlineData("friction")]
    [InlineData("fast friction")]
    [InlineData("base")]
    [InlineData("wire")]
    [InlineData("sum")]
    public void Slope_is_the_derivative(string name)
    {
        IDragComponent part = Component(name);
        foreach (double speed in new[] { 1e-6, 1e-4, 0.003, 0.05, 0.4, 0.9, 2.5, 8 })
        {
            double step = 1e-5 * speed;
            double difference = (part.AreaTimesSpeed(speed + step, Viscosity, out _) - part.AreaTimesSpeed(speed - step, Viscosity, out _)) / (2 * step);
            part.AreaTimesSpeed(speed, Viscosity, out double slope);
            Assert.Equal(difference, slope, (2e-4 * Math.Abs(slope)) + 1e-12);
        }
    }

    [Theory]
    [InlineData("friction")]
    [InlineData("base")]
    [InlineData("wire")]
    [InlineData("sum")]
    public void Drag_is_regular_at_rest(string name)
    {
        IDragComponent part = Component(name);
        double still = part.AreaTimesSpeed(0, Viscosity, out double slope);
        Assert.True(double.IsFinite(still) && still >= 0);
        Assert.True(double.IsFinite(slope) && slope >= 0);

        // No jump: a cylinder's own drag comes in with a power of 0.2 of the speed.
        Assert.InRange(part.AreaTimesSpeed(1e-9, Viscosity, out double near), 0.5 * still, (1.1 * still) + 2e-8);
        Assert.InRange(1e-9 * near, 0, 1e-8);
    }

    [Fact]
    public void Nose_first_the_parts_add_up()
    {
        double sum = Bait.Parts.Sum(p => p.AreaTimesSpeed(0.5, Viscosity, out _));
        Assert.Equal(sum, Bait.AreaTimesSpeed(0.5, Viscosity, out _), 1e-12);
        Assert.Equal(3, Bait.Parts.Count);
    }

    [Fact]
    public void A_longer_body_parts_later_and_loses_less()
    {
        double[] slenderness = [3, 4, 6, 8, 12];
        LaminarSeparation[] found = [.. slenderness.Select(LaminarSeparation.OfSpheroid)];
        Assert.Equal(found.Select(f => f.Station).Order(), found.Select(f => f.Station));
        Assert.Equal(found.Select(f => f.PressureDrag).OrderDescending(), found.Select(f => f.PressureDrag));
        Assert.All(found, f => Assert.InRange(f.WakePressure, -0.13, 0));
    }

    [Fact]
    public void A_body_of_even_weight_falls_flat_and_a_heavy_nose_falls_first()
    {
        FreeGlide Fall(double forward, double weight) => FreeGlide.Of(
            new GlideBalance(weight, 0.2, forward, forward / 3, 1.2e-5, 5e-5, -0.04, 0, -0.05, 0, -0.05, Bait, RoundedBody.Broadside(0.1, 0.016)), 1015, Viscosity);
        FreeGlide even = Fall(0, 0.02), heavy = Fall(0.02, 0.1), extreme = Fall(0.045, 0.1);
        Assert.Equal(Math.PI / 2, even.Incidence, 0.02);
        Assert.InRange(heavy.Incidence, 0.05, 0.6);
        Assert.True(extreme.FromPlumb < heavy.FromPlumb);
        Assert.True(even.SinkRate < heavy.SinkRate && heavy.SinkRate < extreme.SinkRate);
        Assert.InRange(heavy.SinkRate, 0.3 * heavy.Speed, heavy.Speed);
    }
}
