using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Validation.Swimming;

/// <summary>Masses of bodies against the parallel axes and against a turned tensor, by hand.</summary>
public class BentBodyTests
{
    private const string Area = "Action: masses";

    // Bent at its nose by an angle, all of the ellipsoid is turned by it: k1 cos^2 + k2 sin^2 along, k1 sin^2 + k2 cos^2 across, (k2 - k1) sin cos between (a turned tensor).
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.7)]
    public void A_body_bent_at_its_nose_carries_the_water_of_its_ellipsoid_turned(double angle)
    {
        const double Rho = 1020;
        ActionBody straight = ActionBodies.Spheroid(0.04, 0.01, 1100);
        Vector3d a = straight.SemiAxes;
        var bend = new BodyBend(angle, 0, a.X);
        double[] with = [.. new RigidBody(straight with { Bend = bend }, new BentAxis(bend), Rho, true).MassMatrix];
        double[] without = [.. new RigidBody(straight with { Bend = bend }, new BentAxis(bend), Rho, false).MassMatrix];
        Span<double> k = stackalloc double[6];
        EllipsoidAddedMass.Coefficients(a.X, a.Y, a.Z, k);
        double displaced = Rho * 4 / 3 * Math.PI * a.X * a.Y * a.Z, s = Math.Sin(angle), c = Math.Cos(angle);
        double along = displaced * ((k[0] * c * c) + (k[1] * s * s)), across = displaced * ((k[0] * s * s) + (k[1] * c * c)), between = displaced * Math.Abs(k[0] - k[1]) * s * c;
        ValidationLog.WorstRelative(
            CheckClass.SameEquations, Area, FormattableString.Invariant($"body bent at its nose by {angle} radians: added mass along, across and between"), "tensor of the ellipsoid, turned by hand",
            [(along, with[0] - without[0]), (across, with[8] - without[8]), (between, Math.Abs(with[1] - without[1]))], 1e-9, "kg");
    }

    // 1 kg one metre ahead and 3 kg one metre behind, of equal volume: centre of mass at -0.5 m, of buoyancy at 0, 1 x 1.5^2 + 3 x 0.5^2 = 3 kg m2 about it.
    [Fact]
    public void Two_points_on_a_rod()
    {
        var both = MassProperties.Of([new MassElement(1, 0.001, new(1, 0, 0), default), new MassElement(3, 0.001, new(-1, 0, 0), default)]);
        Assert.Equal((4, 0.002), (both.Mass, both.Volume));
        Assert.Equal(new Vector3d(-0.5, 0, 0), both.CentreOfMass);
        Assert.Equal(0, both.CentreOfBuoyancy.Length, 1e-15);
        Assert.Equal((0.0, 3.0, 3.0), (both.Inertia.Xx, both.Inertia.Yy, both.Inertia.Zz));

        // A cube's worth of ellipsoid turns about its middle with m (b^2 + c^2)/5.
        var one = MassProperties.Of([new MassElement(2, 0.001, new(0.3, -0.2, 0.1), new(0.2, 0.4, 0.6))]);
        Assert.Equal(new Vector3d(0.3, -0.2, 0.1), one.CentreOfBuoyancy);
        Assert.Equal(2 * ((0.2 * 0.2) + (0.3 * 0.3)) / 5, one.Inertia.Xx, 1e-12);
    }
}
