using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;
using MathNet.Numerics.RootFinding;

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

    private static GlideBalance Jig(double above = 0.005) =>
        new(0.044, 0.096, 0.012, 0.003, 7.8e-6, 5e-5, -0.036, 2e-5, -0.044, 0, -0.044, Bait, RoundedBody.Broadside(0.089, 0.014)) { EyePlace = 0.044, EyeAbove = above };

    [Fact]
    public void A_line_that_carries_more_lifts_the_nose_and_slows_the_fall()
    {
        FreeGlide[] falls = [.. new[] { 0.0, 0.1, 0.3, 0.5, 0.7, 0.9 }.Select(share => FreeGlide.Of(Jig(), 1015, Viscosity, share * 0.044))];
        for (int i = 1; i < falls.Length; i++)
        {
            Assert.True(falls[i].Incidence > falls[i - 1].Incidence && falls[i].FromPlumb >= falls[i - 1].FromPlumb);

            // Slower than by the weight alone: the flatter body drags more.
            Assert.True(falls[i].SinkRate < falls[0].SinkRate * Math.Sqrt(1 - new[] { 0.0, 0.1, 0.3, 0.5, 0.7, 0.9 }[i]));
        }

        Assert.Equal(Math.PI / 2, falls[^1].Incidence, 0.05);

        // An eye that stands higher turns the nose up further.
        Assert.True(FreeGlide.Of(Jig(0.01), 1015, Viscosity, 0.01).Incidence > FreeGlide.Of(Jig(0), 1015, Viscosity, 0.01).Incidence);
    }

    [Fact]
    public void On_a_steady_fall_the_drag_carries_what_the_line_does_not()
    {
        GlideBalance body = Jig();
        FallCurve curve = FallCurve.Of(body, 1015, Viscosity);
        Assert.True(curve.Held.Count > 8);
        foreach ((double pull, FreeGlide fall) in curve.Held)
        {
            double towed = body.Along.AreaTimesSpeed(fall.SinkRate, Viscosity, out _);
            Assert.Equal(body.WetWeight - pull, 0.5 * 1015 * curve.Factor(fall.SinkRate, out _) * towed * fall.SinkRate, 1e-9);
        }

        // Drag rises with the speed throughout, so that every pull has one speed; and the slope is that of the curve.
        double before = 0;
        for (double v = 0.02; v < 3; v += 0.01)
        {
            double factor = curve.Factor(v, out double slope), drag = factor * body.Along.AreaTimesSpeed(v, Viscosity, out _) * v;
            Assert.True(drag > before, $"{v}");
            before = drag;
            double difference = (curve.Factor(v + 1e-6, out _) - curve.Factor(v - 1e-6, out _)) / 2e-6;
            Assert.Equal(difference, slope, 1e-3 * Math.Max(1, Math.Abs(slope)));
        }
    }

    [Fact]
    public void A_lure_of_more_drag_falls_slower_by_the_root_of_it_in_the_same_attitudes()
    {
        PathLure lure = new ShrimpImitation().OnPath(new JigHead(0.00354, HeadMetal.Lead, 1e-3, "1/8 oz"), new ShrimpImitation().Body(0.089, "shrimp"));
        LureProperties draggy = ScaledDragLure.Of(lure, 1.5);
        double own = FreeFall.TerminalSpeed(lure, 1015, Viscosity), slow = FreeFall.TerminalSpeed(draggy, 1015, Viscosity);
        Assert.Equal(own / Math.Sqrt(1.5), slow, 0.02 * own);

        // Where the line carries a half, too.
        double half = 0.5 * (lure.Mass - (1015 * lure.Volume)) * PhysicalConstants.StandardGravity;
        double Speed(LureProperties l) => Brent.FindRoot(v => (0.5 * 1015 * l.FallDragAreaTimesSpeed(v, Viscosity, out _) * v / half) - 1, 0.01, 3, 1e-9, 200);
        Assert.Equal(Speed(lure) / Math.Sqrt(1.5), Speed(draggy), 0.02 * Speed(lure));
        Assert.True(Speed(lure) < 0.62 * own, "A line that carries half of the weight slows a shrimp to less than root one half.");
    }
}
