using LureSim.Casting;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;
using LureSim.Water;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace LureSim.Validation.Casting;

/// <summary>Flight of lures against solutions of the thrown body with drag, and against distances that were cast.</summary>
public class FlightTests
{
    private const string Area = "Casting";
    private const double Pound = 0.45359237;
    private const double Ounce = Pound / 16;

    [Fact]
    public void A_throw_with_square_drag_is_the_hodograph_by_quadrature()
    {
        // Euler 1753 and Bernoulli 1719: with drag k v^2 the speed along the slope theta is known in closed form, and the way follows by quadrature (Hayen 2003 among others).
        foreach ((double speed, double degrees, double area) in ((double, double, double)[])[(30, 35, 1.5e-4), (45, 50, 4e-4), (20, 20, 8e-4)])
        {
            const double Mass = 0.012;
            double g = PhysicalConstants.StandardGravity, k = WaterColumn.AirDensity * area / 2 / Mass;
            double start = degrees * Math.PI / 180, horizontal = speed * Math.Cos(start);
            double F(double theta) => (Math.Sin(theta) / Math.Pow(Math.Cos(theta), 2)) + Math.Log(Math.Tan((theta / 2) + (Math.PI / 4)));
            double Speed(double theta) => horizontal / Math.Sqrt(1 + (k * horizontal * horizontal / g * (F(start) - F(theta)))) / Math.Cos(theta);
            double Rise(double theta) => GaussLegendreRule.Integrate(t => Math.Pow(Speed(t), 2) * Math.Tan(t) / g, theta, start, 64);
            double end = FindRoots.OfFunction(Rise, -1.55, -0.01, 1e-10);
            double range = GaussLegendreRule.Integrate(t => Math.Pow(Speed(t), 2) / g, end, start, 64);
            var lure = new ConstantDragLure { Mass = Mass, Volume = 1e-5, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = area };
            ValidationLog.Relative(CheckClass.SameEquations, Area, FormattableString.Invariant($"Range of a throw at {speed} m/s and {degrees} degrees, drag area {1e4 * area} cm2"), "hodograph of a body with square drag (Euler 1753), by quadrature", range, new CastFlight(lure, null).Fly(speed, 0, start).Distance, 1e-5, "m");
        }
    }

    [Fact]
    public void A_throw_straight_up_has_its_closed_form()
    {
        const double Area2 = 3e-4, Mass = 0.02, Speed = 30;
        double terminal2 = 2 * Mass * PhysicalConstants.StandardGravity / (WaterColumn.AirDensity * Area2);
        var lure = new ConstantDragLure { Mass = Mass, Volume = 1e-5, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = Area2 };
        CastLanding landing = new CastFlight(lure, null).Fly(Speed, 0, Math.PI / 2);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Speed at which a body thrown straight up comes down", "v0/sqrt(1 + v0^2/vt^2), closed form", Speed / Math.Sqrt(1 + (Speed * Speed / terminal2)), landing.Speed, 1e-6, "m/s");
    }

    [Fact]
    public void Line_taken_from_rest_is_a_body_that_grows()
    {
        // Without air and weight (m + lambda s) v = m v0: a stone on a heavy thread, thrown so fast that its fall does not count.
        var stone = new ConstantDragLure { Mass = 0.01, Volume = 1e-6, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = 0 };
        var thread = new LineMaterial(1e-6, 2e-4, 1e4, 1e-12);
        CastLanding landing = new CastFlight(stone, thread).Fly(150, 0.4, 0);
        double expected = Math.Log(150.0) + (-CastFlight.GuideFactor * Math.Log(1 + (thread.MassPerLength * landing.LineOut / 0.01)));
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Speed left after pulling a thread off a spool", "momentum of a body of growing mass, v = v0 (1 + lambda s/m)^-1.15", Math.Exp(expected), landing.Speed, 0.02, "m/s");
    }

    [Fact]
    public void Distances_that_were_cast_ask_for_speeds_that_an_arm_can_give()
    {
        // Shared table of tournament distances, read in results and newspapers; the upper bound is the speed of a rod tip in a power cast, common practice ("over 160 miles an hour").
        (string What, double Grams, double Diameter, double Distance)[] casts =
        [
            ("150 g lead, 0.31 mm nylon, 250 m (national event 2004)", 150, 0.31e-3, 249.6),
            ("18 g plug, 0.25 mm nylon, 120 m (tournament)", 18, 0.25e-3, 120),
            ("1/2 oz, 67.7 m (1914, mean of five; line assumed 0.3 mm)", 14.2, 0.3e-3, 67.7),
            ("1/4 oz, 54.1 m (1914, mean of five; line assumed 0.3 mm)", 7.1, 0.3e-3, 54.1),
        ];
        foreach ((string what, double grams, double diameter, double distance) in casts)
        {
            double need = Needed(grams / 1000, diameter, LineKind.Monofilament, distance);
            double vacuum = Math.Sqrt(PhysicalConstants.StandardGravity * distance);
            ValidationLog.Between(CheckClass.Measured, Area, $"Launch speed that a cast asks for: {what}", "distance read in results; above the speed in vacuum, below that of a power cast", vacuum, 72, need, "m/s");
        }
    }

    [Fact]
    public void A_surf_rod_throws_its_lead_as_far_as_was_seen()
    {
        // Reel forum: rods for 4 to 5 oz in fishing trim, 35 lb braid, 113 to 170 g, 140 to 160 m by style. 12 ft is assumed. The full speed of the model was set by this row.
        var rod = new Rod(12 * 0.3048, 4 * Ounce, 5 * Ounce);
        double speed = CastingHand.Of(rod).LaunchSpeed(0.14, 1);
        LineMaterial line = TackleBuilder.Material(LineKind.Braid, TacklePresets.LineDiameter(LineKind.Braid, 35 * 4.448));
        ValidationLog.Between(CheckClass.Identity, Area, "Cast of 140 g from a 12 ft rod for 4 to 5 oz, 35 lb braid", "surf rod test in fishing trim (the model's full speed was set by it)", 135, 165, new CastFlight(SphereLure.Of(0.14, 11340), line).Fly(speed, 3).Length, "m");
    }

    [Fact]
    public void Half_an_ounce_flies_as_much_farther_than_a_quarter_as_it_did()
    {
        // The same event of 1914, one rod for both taken: 1/4 oz 54.1 m, 1/2 oz 67.7 m. The rods of the two events are not known.
        var rod = new Rod(CastingHand.UsualLength, 0.25 * Ounce, 0.5 * Ounce);
        var hand = CastingHand.Of(rod);
        double quarter = Needed(7.1e-3, 0.3e-3, LineKind.Monofilament, 54.1);
        double effort = quarter * quarter * (7.1e-3 + hand.MovingMass) / (2 * hand.Energy);
        LineMaterial line = TackleBuilder.Material(LineKind.Monofilament, 0.3e-3);
        double half = new CastFlight(Plug(14.2e-3), line).Fly(hand.LaunchSpeed(14.2e-3, effort), 2.5).Length;
        ValidationLog.Relative(CheckClass.Measured, Area, "1/2 oz thrown as hard as 1/4 oz that flies 54.1 m", "bait casting events 1914, means of five", 67.7, half, 0.12, "m");
    }

    // A casting plug of the events is a small weight; density between plastic and lead, assumed.
    private static SphereLure Plug(double mass) => SphereLure.Of(mass, mass > 0.1 ? 11340 : 2500);

    private static double Needed(double mass, double diameter, LineKind kind, double distance)
    {
        var flight = new CastFlight(Plug(mass), TackleBuilder.Material(kind, diameter));
        return FindRoots.OfFunction(speed => flight.Fly(speed, 2.5).Length - distance, 10, 190, 1e-6);
    }
}
