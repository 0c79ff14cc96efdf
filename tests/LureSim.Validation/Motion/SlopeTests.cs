using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using LureSim.Water;
using MathNet.Numerics.RootFinding;

namespace LureSim.Validation.Motion;

/// <summary>A body on an inclined bottom in still water, by the closed forms of a block on a plane.</summary>
public class SlopeTests
{
    private const string Area = "Motion: bottom that slopes";
    private const double Gravity = 9.80665;
    private const double Slope = 0.75;

    private static readonly double Cosine = 1 / Math.Sqrt(1 + (Slope * Slope)), Sine = Slope * Cosine;

    // Falls away at three to four from 1 m of water.
    private static WaterColumn Water(BottomKind kind) => WaterColumn.Of(new Spot
    {
        Depth = 31,
        Bottom = kind,
        Profile = new BottomProfile { Points = [new(0, 1), new(40, 31)] },
        Salinity = 0,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.5),
        StrikeZone = new StrikeZone(1, 2),
        TargetFish = "red drum",
    });

    // A lead ball let go on the slope, 10 m out, on a line as light as nothing that hangs slack above.
    private static EngineRun OnSlope(SphereLure ball, WaterColumn water)
    {
        const double Out = 10, Line = 12;
        double z = -water.Relief!.At(Out, 0).Depth + (ball.ContactRadius / Cosine);
        LineProperties thread = LineProperties.Uniform(LineMaterial.Round(1e-5, 1e-10, 50));
        var run = new EngineRun(ball, thread, water, LineDragLaw.Constant(1e-6, 1e-6), GivenBoundary.Fixed(Out, z + 3, Line), new EngineSettings { Segments = 4 });
        run.Start(0, f => (Out, 0, z + (3 * f)));
        return run;
    }

    [Fact]
    public void A_ball_slides_off_with_the_acceleration_of_a_block_on_a_plane()
    {
        WaterColumn water = Water(BottomKind.Hard);
        var ball = SphereLure.Of(0.02, 11340);
        double wet = (ball.Mass - (water.Density * ball.Volume)) * Gravity, inertia = ball.Mass + (0.5 * water.Density * ball.Volume);
        double acceleration = wet * (Sine - (water.Bottom.Friction * Cosine)) / inertia;
        EngineRun run = OnSlope(ball, water);

        // Between two moments early on: the first tenth of a second is that of regularised friction and of settling, and drag is not yet felt.
        run.RunTo(0.05);
        double first = Speed(run);
        run.RunTo(0.15);
        ValidationLog.Relative(
            CheckClass.SameEquations, Area, "Lead ball on a 3:4 slope of hard bottom: acceleration", "block on a plane: (m - rho V) g (sin a - mu cos a)/(m + m_a)", acceleration, (Speed(run) - first) / 0.1, 0.05, "m/s2");
    }

    [Fact]
    public void A_ball_slides_at_the_speed_where_drag_and_friction_hold_its_weight()
    {
        WaterColumn water = Water(BottomKind.Hard);
        var ball = SphereLure.Of(0.005, 11340);
        double wet = (ball.Mass - (water.Density * ball.Volume)) * Gravity, pull = wet * (Sine - (water.Bottom.Friction * Cosine));
        double expected = Brent.FindRoot(v => (0.5 * water.Density * ball.DragAreaTimesSpeed(v, water.KinematicViscosity, out _) * v / pull) - 1, 0.01, 10, 1e-9);
        EngineRun run = OnSlope(ball, water);
        run.RunTo(2);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Lead ball sliding down a 3:4 slope: terminal speed", "balance of wet weight, Coulomb friction and drag of a sphere", expected, Speed(run), 0.01, "m/s");
        ValidationLog.Relative(CheckClass.Identity, Area, "It moves along the slope: rise over run", "geometry", -Slope, run.Vz / run.Vx, 0.005);
    }

    [Fact]
    public void A_ball_stays_where_friction_is_steeper_than_the_slope()
    {
        // Mud: friction 0.8 on a slope of 0.75. Regularised friction lets it creep where a block would stand: v = v0 t/sqrt(1 - t^2), t = slope/friction.
        EngineRun run = OnSlope(SphereLure.Of(0.005, 11340), Water(BottomKind.Mud));
        run.RunTo(3);
        double ratio = Slope / 0.8;
        ValidationLog.Relative(
            CheckClass.SameEquations, Area, "Ball on a 3:4 slope of mud: creep of the regularised friction", "mu v/sqrt(v^2 + v0^2) = tan a, v0 = 5 mm/s", 0.005 * ratio / Math.Sqrt(1 - (ratio * ratio)), Speed(run), 0.03, "m/s");
    }

    private static double Speed(EngineRun run) => Math.Sqrt((run.Vx * run.Vx) + (run.Vy * run.Vy) + (run.Vz * run.Vz));
}
