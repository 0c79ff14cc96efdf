using CsCheck;
using LureSim.Lures;

namespace LureSim.Tests.Lures;

public class InertiaTests
{
    // A dumbbell by hand: two balls of 2 g and radius 3 mm, 40 mm apart, turn about the middle with 2 (2/5 m r^2 + m 0.02^2) across and 2 x 2/5 m r^2 along.
    [Fact]
    public void Dumbbell_by_parallel_axes()
    {
        Inertia ball = Inertia.Ball(0.002, 0.003);
        Inertia both = ball.Moved(0.002, 0.02, 0, 0) + ball.Moved(0.002, -0.02, 0, 0);
        Assert.Equal(2 * 0.4 * 0.002 * 9e-6, both.Roll, 1e-15);
        Assert.Equal((2 * 0.4 * 0.002 * 9e-6) + (2 * 0.002 * 4e-4), both.Pitch, 1e-15);
        Assert.Equal(both.Pitch, both.Yaw, 1e-15);
        Assert.Equal(0, both.ForwardLeft, 1e-18);
    }

    // A rod about its end: m l^2/3.
    [Fact]
    public void Rod_about_its_end() =>
        Assert.Equal(0.003 * 0.05 * 0.05 / 3, Inertia.Rod(0.003, 0.05).Moved(0.003, 0.025, 0, 0).Yaw, 1e-15);

    // A point mass of 1 kg at forward 1, left 2, up 3: products -2, -3, -6, moments 13, 10, 5.
    [Fact]
    public void Products_of_a_point() =>
        Assert.Equal(new Inertia(13, 10, 5, -2, -3, -6), default(Inertia).Moved(1, 1, 2, 3));

    // A rod turned by 45 degrees to the left: points at (s, s)/sqrt 2, so the moments along and across are equal and the product is -m l^2/24.
    [Fact]
    public void Rod_turned_to_the_left()
    {
        Inertia rod = Inertia.Rod(12, 1).Yawed(Math.PI / 4);
        Assert.Equal(0.5, rod.Roll, 1e-12);
        Assert.Equal(0.5, rod.Pitch, 1e-12);
        Assert.Equal(1.0, rod.Yaw, 1e-12);
        Assert.Equal(-0.5, rod.ForwardLeft, 1e-12);
    }

    // Nose up by 45 degrees: points at (s, 0, s)/sqrt 2.
    [Fact]
    public void Rod_raised_at_the_nose()
    {
        Inertia rod = Inertia.Rod(12, 1).Raised(Math.PI / 4);
        Assert.Equal(0.5, rod.Roll, 1e-12);
        Assert.Equal(0.5, rod.Yaw, 1e-12);
        Assert.Equal(1.0, rod.Pitch, 1e-12);
        Assert.Equal(-0.5, rod.ForwardUp, 1e-12);
    }

    [Fact]
    public void A_turn_keeps_the_trace_and_a_turn_back_undoes_it() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1]).HoldsFor((angle, x, y, z) =>
        {
            Inertia start = Inertia.Diagonal(1, 2, 2.5).Moved(1.5, x, y, z);
            foreach (Inertia turned in (Inertia[])[start.Yawed(angle), start.Raised(angle)])
                Assert.Equal(start.Roll + start.Pitch + start.Yaw, turned.Roll + turned.Pitch + turned.Yaw, 1e-10);
            Inertia back = start.Yawed(angle).Yawed(-angle);
            Assert.Equal(start.Roll, back.Roll, 1e-10);
            Assert.Equal(start.ForwardLeft, back.ForwardLeft, 1e-10);
            Assert.Equal(start.LeftUp, start.Raised(angle).Raised(-angle).LeftUp, 1e-10);
        });
}
