using LureSim.Hydrodynamics;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;

namespace LureSim.Validation.Swimming;

/// <summary>The closed form of a free glide against the swimming model and against falling cylinders with their weight to one side.</summary>
public class FallAttitudeTests
{
    private const string Area = "Action: free fall";
    private const double Density = 1015;
    private const double Viscosity = 1.1e-6;
    private const double Gravity = 9.80665;
    private const double Degree = 180 / Math.PI;

    [Theory]
    [InlineData(3.5)]
    [InlineData(7)]
    [InlineData(14)]
    public void A_straight_bait_on_a_head_glides_as_the_swimming_model_does(double grams)
    {
        // Free of any line; the closed form has the same body, centres and edges and no unsteady part.
        ActionBody body = ActionBodies.Soft(length: 0.127, height: 0.0137, width: 0.0137, headMass: 1e-3 * grams, density: 1100, hookMass: 1.2e-3, tailFin: 0.004, ballastDrop: 0, hookDrag: 0);
        ActionReport swimming = LureActionModel.Assess(
            body, Knot.Loop(), new TowInput { Mode = TowMode.Free, WaterDensity = Density, KinematicViscosity = Viscosity }, new() { Duration = 8, SettlingTime = 5, InitialPitch = -0.8 }).Report;
        FreeGlide closed = Glide(body);
        string name = FormattableString.Invariant($"free fall of a 12.7 cm bait on {grams} g: ");
        const string Source = "swimming model of this project, equations of motion in full";
        ValidationLog.Relative(CheckClass.SameEquations, Area, name + "sink rate by the closed form", Source, swimming.SinkRate, closed.SinkRate, 0.1, "m/s");
        ValidationLog.Absolute(CheckClass.SameEquations, Area, name + "nose below the level by the closed form", Source, -swimming.MeanPitch * Degree, 90 - (closed.FromPlumb * Degree), 3, "deg");
    }

    [Theory]
    [InlineData(3.5)]
    [InlineData(7)]
    public void A_line_that_pulls_at_the_eye_lifts_the_nose_as_the_swimming_model_has_it(double grams)
    {
        // Twenty metres of line all but upright are drawn down through the water: their friction holds the eye back.
        ActionBody body = ActionBodies.Soft(length: 0.127, height: 0.0137, width: 0.0137, headMass: 1e-3 * grams, density: 1100, hookMass: 1.2e-3, tailFin: 0.004, ballastDrop: 0, hookDrag: 0);
        ActionReport swimming = LureActionModel.Assess(
            body, Knot.Loop(), TowInput.SlackFall(20) with { LineElevation = 1.5, WaterDensity = Density, KinematicViscosity = Viscosity }, new() { Duration = 8, SettlingTime = 5, InitialPitch = -0.8 }).Report;
        FreeGlide free = Glide(body), held = Glide(body, swimming.MeanTension);
        string name = FormattableString.Invariant($"fall of a 12.7 cm bait on {grams} g with {1000 * swimming.MeanTension:F0} mN of line: ");
        const string Source = "swimming model of this project, equations of motion in full";
        ValidationLog.Relative(CheckClass.SameEquations, Area, name + "sink rate by the closed form (stated discrepancy)", Source, swimming.SinkRate, held.SinkRate, 0.12, "m/s");
        ValidationLog.Absolute(CheckClass.SameEquations, Area, name + "nose below the level by the closed form (stated discrepancy)", Source, -swimming.MeanPitch * Degree, 90 - (held.FromPlumb * Degree), 5.2, "deg");
        Assert.True(held.SinkRate < 0.93 * free.SinkRate * Math.Sqrt(1 - (swimming.MeanTension / WetWeight(body))), "The attitude must cost more than the weight that the line carries.");
    }

    [Fact]
    public void Cylinders_with_their_weight_to_one_side_fall_at_a_slant()
    {
        // Length four diameters, even or one half heavier: densities 1.25 throughout, or 1.1 and 1.4 (the abstract gives none). Bodies of Re 100 to 1000.
        const string Source = "Angle, Rau & Byron 2019, ASME Fluids Engineering Division, abstract: cylinders of aspect ratio 4 at Re of order 100";
        FreeGlide even = Cylinder(1250, 1250), compound = Cylinder(1400, 1100);
        ValidationLog.Says(CheckClass.Measured, Area, "falling cylinder of four diameters, even density", Source, "falls broadside", FormattableString.Invariant($"axis {even.FromPlumb * Degree:F0} deg from the plumb line"), even.FromPlumb * Degree > 85);
        ValidationLog.Says(
            CheckClass.Measured, Area, "falling cylinder of four diameters, one half heavier", Source, "falls tilted at a steady angle and moves sideways", FormattableString.Invariant($"axis {compound.FromPlumb * Degree:F0} deg from the plumb line, {Math.Tan(compound.FromPlumb - compound.Incidence):F2} m aside a metre"),
            compound.FromPlumb * Degree is > 10 and < 85 && Math.Tan(compound.FromPlumb - compound.Incidence) > 0.05);
    }

    private static FreeGlide Cylinder(double front, double rear)
    {
        const double Diameter = 4e-3, Length = 4 * Diameter;
        double volume = Math.PI / 4 * Diameter * Diameter * Length;
        double mass = volume * 0.5 * (front + rear), centre = 0.25 * Length * (front - rear) / (front + rear);
        SpheroidAddedMass.Coefficients(4, out double axial, out double transverse);
        var along = new ConstantArea("flat-ended cylinder", 0.87 * Math.PI / 4 * Diameter * Diameter);
        return FreeGlide.Of(
            new GlideBalance((mass - (1000 * volume)) * Gravity, 1000 * volume * Gravity, centre, 0, (transverse - axial) * volume, Math.PI / 4 * Diameter * Diameter, -Length / 2, 0, -Length / 2, 0, -Length / 2, along, new CylinderAcross("side", Length, Diameter)),
            1000, 1e-6);
    }

    private static double WetWeight(ActionBody body) => (body.Mass - (Density * body.Volume)) * Gravity;

    private static FreeGlide Glide(ActionBody body, double linePull = 0)
    {
        Vector3d a = body.SemiAxes;
        SpheroidAddedMass.Coefficients(a.X / a.Y, out double axial, out double transverse);
        double ellipsoid = 4.0 / 3 * Math.PI * a.X * a.Y * a.Z;
        TrailingEdge rear = body.TrailingEdges[0], fin = body.TrailingEdges[1];
        double Span(TrailingEdge e) => Math.PI / 4 * Math.Min(e.Height, e.Width) * Math.Min(e.Height, e.Width);
        return FreeGlide.Of(
            new GlideBalance(
                WetWeight(body), Density * body.Volume * Gravity, body.CentreOfMass.X, body.CentreOfBuoyancy.X, (transverse - axial) * ellipsoid,
                Span(rear), rear.Position.X, Span(fin), fin.Position.X, 0, -a.X, RoundedBody.NoseFirst(2 * a.X, 2 * a.Z, 2 * a.Y), RoundedBody.Broadside(2 * a.X, 2 * a.Y))
            {
                EyePlace = body.TowPoint.X,
                EyeAbove = body.TowPoint.Z,
            },
            Density, Viscosity, linePull);
    }
}
