using LureSim.Hydrodynamics;
using MathNet.Numerics.RootFinding;

namespace LureSim.Validation.Motion;

/// <summary>Measured sinking of things on line: longlines with and without lead, a baited hook with and without a sinker, an expendable probe.</summary>
public class SinkRateTests
{
    private const string Area = "Motion: measured sinking";
    private const double Gravity = 9.80665;
    private const double Density = 1025;

    // Cold sea water (Pa s).
    private const double Viscosity = 1.4e-3;
    private const double Lead = 11340;
    private const double Steel = 7850;

    [Theory]
    [InlineData(25, 0.227, 0.17)]
    [InlineData(50, 0.272, 0.31)]
    [InlineData(75, 0.317, 0.34)]
    [InlineData(100, 0.353, 0.37)]
    public void Longlines_with_lead(double grams, double measured, double tolerance)
    {
        // 9 mm line set from a ship, to 15 m. Its own wet weight is that which the line without lead (0.11 m/s) has by the same law; hooks, snoods and baits drag too,
        // and the ship pays out under way, so that the law for a bare line must come out fast, more so the faster the line sinks.
        const double Diameter = 9e-3, Bare = 0.11;
        double DragOf(double speed)
        {
            LineDragLaw.Default.Evaluate(speed * Diameter * Density / Viscosity, out double g, out _, out _, out _);
            return 0.5 * Viscosity * g * speed;
        }

        double weight = DragOf(Bare) + (grams * 1e-3 * (1 - (Density / Lead)) * Gravity);
        double speed = Brent.FindRoot(v => (DragOf(v) / weight) - 1, 1e-3, 5, 1e-9);
        ValidationLog.Relative(
            CheckClass.Measured, Area, FormattableString.Invariant($"9 mm longline with {grams} g/m of lead, ship under way: stated discrepancy"), "Robertson et al. 2002, CCAMLR WG-FSA-02/22, abstract", measured, speed, tolerance, "m/s");
    }

    [Fact]
    public void A_line_of_polyester_in_still_water()
    {
        // Polyester of 1380 kg/m3; a laid rope is about two thirds fibre (assumed), the rest water: wet weight (1380 - 1025) x 2/3 of its section.
        const double Diameter = 9e-3, Fill = 2.0 / 3;
        double weight = (1380 - Density) * Fill * Math.PI / 4 * Diameter * Diameter * Gravity;
        double DragOf(double speed)
        {
            LineDragLaw.Default.Evaluate(speed * Diameter * Density / Viscosity, out double g, out _, out _, out _);
            return 0.5 * Viscosity * g * speed;
        }

        double speed = Brent.FindRoot(v => (DragOf(v) / weight) - 1, 1e-3, 5, 1e-9);
        ValidationLog.Relative(CheckClass.Measured, Area, "9 mm polyester longline set by hand in still water", "Robertson et al. 2002, CCAMLR WG-FSA-02/25, abstract", 0.23, speed, 0.25, "m/s");
    }

    [Fact]
    public void A_sinker_at_a_baited_hook()
    {
        // A 20 g hook with a thawed bait sinks at 0.25 m/s, with 20 g of lead at 0.5 m/s. The bait taken as of the water's density, its drag found from the first figure.
        double hook = 20e-3 * (1 - (Density / Steel)) * Gravity, lead = 20e-3 * (1 - (Density / Lead)) * Gravity;
        double area = hook / (0.5 * Density * 0.25 * 0.25);
        double speed = Math.Sqrt((hook + lead) / (0.5 * Density * area));
        ValidationLog.Relative(
            CheckClass.Measured, Area, "Baited 20 g hook with 20 g of lead, from its speed without: stated discrepancy (a bait lighter than water)", "Brothers, Foster & Robertson 1995, CCAMLR Sci. 2:123, abstract", 0.5, speed, 0.3, "m/s");
    }

    [Fact]
    public void An_expendable_probe()
    {
        // Streamlined lead-nosed probe, 51 mm thick, 4.2 diameters long, wet weight 5.7 N (size and weight from memory). At Re_L 1.3e6 the layer is turbulent and does
        // not part; the laminar body of the lures is out of its range there, by this much.
        const double Diameter = 0.051, Weight = 5.7;
        DragSum body = RoundedBody.NoseFirst(4.2 * Diameter, Diameter, Diameter);
        double speed = Brent.FindRoot(v => (0.5 * Density * body.AreaTimesSpeed(v, 1.2e-6, out _) * v / Weight) - 1, 0.1, 30, 1e-9);
        ValidationLog.Relative(
            CheckClass.FromMemory, Area, "Expendable temperature probe near the surface, out of the laminar range: stated discrepancy", "Hanawa et al. 1995: 6.691 m/s; size and weight of the probe from memory", 6.691, speed, 0.3, "m/s");
    }
}
