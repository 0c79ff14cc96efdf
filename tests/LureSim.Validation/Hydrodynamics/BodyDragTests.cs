using LureSim.Hydrodynamics;

namespace LureSim.Validation.Hydrodynamics;

/// <summary>Drag of spheres and of other compact bodies.</summary>
public class BodyDragTests
{
    private const string Area = "Drag of bodies";

    [Fact]
    public void Brown_and_Lawler_is_the_printed_formula()
    {
        HydroTable table = HydroTable.Read("sphere_drag");
        ValidationLog.WorstRelative(
            CheckClass.SameEquations, Area, "Brown & Lawler formula, Re 0.1 to 2e5", "Brown & Lawler 2003, table computed elsewhere to 6 figures",
            table.Pairs("Re", "brown_lawler").Select(p => (p.Y, Sphere(p.X))), 5e-6);
    }

    [Theory]
    [InlineData(CheckClass.FromMemory, "lapple_shepherd", "Lapple & Shepherd 1940, from memory", 0.1, 6e4, 0.07)]
    [InlineData(CheckClass.Measured, "clift_grace_weber", "Clift, Grace & Weber 1978, table 5.2", 0.1, 6e4, 0.07)]
    [InlineData(CheckClass.Measured, "clift_grace_weber", "Clift, Grace & Weber 1978, table 5.2", 6e4, 1e5, 0.08)]
    [InlineData(CheckClass.Measured, "schiller_naumann", "Schiller & Naumann 1933", 0.1, 1000, 0.06)]
    public void Brown_and_Lawler_follows_the_standard_curve(CheckClass kind, string column, string source, double low, double high, double tolerance)
    {
        HydroTable table = HydroTable.Read("sphere_drag");
        ValidationLog.WorstRelative(
            kind, Area, FormattableString.Invariant($"Sphere, Brown & Lawler against the standard curve ({column.Replace('_', ' ')}), Re {low} to {high}"), source,
            table.Pairs("Re", column).Where(p => p.X >= low && p.X <= high).Select(p => (p.Y, Sphere(p.X))), tolerance);
    }

    [Theory]
    [InlineData(5, 100)]
    [InlineData(100, 1000)]
    [InlineData(1000, 1e4)]
    [InlineData(1e4, 1.2e5)]
    public void Brown_and_Lawler_meets_the_measured_points(double low, double high)
    {
        // 122 points; their own scatter is 5 to 10 %, so the root mean square is judged.
        const double Band = 0.10;
        HydroTable table = HydroTable.Read("sphere_disc_drag_measured");
        double[] errors =
        [
            .. Enumerable.Range(0, table.Count)
                .Where(i => table.Text(i, "body") == "sphere" && table.Value(i, "Re") >= low && table.Value(i, "Re") < high)
                .Select(i => (Sphere(table.Value(i, "Re")) / table.Value(i, "Cd")) - 1),
        ];
        Assert.True(errors.Length >= 15);
        double rms = Math.Sqrt(errors.Average(e => e * e));
        ValidationLog.AtMost(
            CheckClass.Measured, Area, FormattableString.Invariant($"Sphere, rms of Brown & Lawler over {errors.Length} measured points, Re {low} to {high}"), "Roos & Willmarth 1971", Band, rms);
    }

    [Fact]
    public void Brown_and_Lawler_meets_the_table_of_Pruppacher_and_Klett()
    {
        (double, double)[] published = [(10, 4.29), (30, 2.11), (57, 1.51), (100, 1.10), (300, 0.63)];
        ValidationLog.WorstRelative(
            CheckClass.Measured, Area, "Rigid sphere, Re 10 to 300", "Pruppacher & Klett, table 10.1", published.Select(p => (p.Item2, Sphere(p.Item1))), 0.10);
    }

    [Fact]
    public void Hoelzer_and_Sommerfeld_gives_the_worked_figures()
    {
        // Re 1, 100, 1000, 10000; f and f_perp of a sphere and of prolate spheroids 2:1 and 4:1, nose on and broadside.
        double[] re = [1, 100, 1000, 10000];
        (string Name, double F, double Perp, double[] Cd)[] worked =
        [
            ("sphere", 1, 1, [27.42, 0.96, 0.538868, 0.4524]),
            ("2:1 nose on", 0.928739, Math.Pow(2, 2.0 / 3), [26.5435, 0.967009, 0.543613, 0.454390]),
            ("2:1 broadside", 0.928739, Math.Pow(2, -1.0 / 3), [29.5940, 1.41369, 0.966628, 0.875037]),
            ("4:1 nose on", 0.781907, Math.Pow(4, 2.0 / 3), [27.0423, 0.892477, 0.437573, 0.338739]),
            ("4:1 broadside", 0.781907, Math.Pow(4, -1.0 / 3), [32.9830, 1.84392, 1.34365, 1.24028]),
        ];
        foreach (var body in worked)
        {
            ValidationLog.WorstRelative(
                CheckClass.SameEquations, Area, $"Non-sphere, {body.Name}, Re 1 to 1e4", "Hoelzer & Sommerfeld 2008, eq. 10, worked elsewhere",
                re.Select((r, i) => (body.Cd[i], Elongated(r, body.F, body.Perp))), 1e-5);
        }
    }

    [Fact]
    public void Hoelzer_and_Sommerfeld_of_a_sphere_is_near_the_standard_curve()
    {
        HydroTable table = HydroTable.Read("sphere_drag");
        ValidationLog.WorstRelative(
            CheckClass.FromMemory, Area, "Hoelzer & Sommerfeld of a sphere against the standard curve, Re 1 to 3e4", "Lapple & Shepherd 1940, from memory",
            table.Pairs("Re", "lapple_shepherd").Where(p => p.X is >= 1 and <= 3e4).Select(p => (p.Y, Elongated(p.X, 1, 1))), 0.25);
    }

    // Slopes of both laws against central differences, from creeping to turbulent.
    [Theory]
    [InlineData(0.05)]
    [InlineData(3)]
    [InlineData(400)]
    [InlineData(3e4)]
    public void Slopes_are_the_derivatives(double speed)
    {
        double step = 1e-5 * speed;
        var body = ElongatedBodyDrag.HoelzerSommerfeld2008(0.8, 0.78, 2.5);
        Assert.Equal(
            (body.DragAreaTimesSpeed(speed + step, 1, out _) - body.DragAreaTimesSpeed(speed - step, 1, out _)) / (2 * step), At(body, speed), 1e-7 * At(body, speed));
        SphereDrag.CoefficientTimesSpeed(speed, 1.3, 0.7, out double slope);
        Assert.Equal(
            (SphereDrag.CoefficientTimesSpeed(speed + step, 1.3, 0.7, out _) - SphereDrag.CoefficientTimesSpeed(speed - step, 1.3, 0.7, out _)) / (2 * step), slope, 1e-7 * slope);

        static double At(ElongatedBodyDrag drag, double speed)
        {
            drag.DragAreaTimesSpeed(speed, 1, out double slope);
            return slope;
        }
    }

    // At rest Stokes drag is left, and it is finite.
    [Fact]
    public void At_rest_the_forms_are_regular()
    {
        Assert.Equal(24 * 2.0 / 3, SphereDrag.CoefficientTimesSpeed(0, 3, 2, out double slope), 1e-12);
        Assert.Equal(0, slope);
        Assert.True(double.IsFinite(ElongatedBodyDrag.HoelzerSommerfeld2008(0.01, 0.8, 1.2).DragAreaTimesSpeed(0, 1e-6, out slope)) && double.IsFinite(slope));
    }

    // The plateau that stands for a ball beside a body lies on the law, where heads of lures move: 10 mm at 0.4 to 2 m/s.
    [Fact]
    public void The_plateau_lies_on_the_law() =>
        ValidationLog.WorstRelative(
            CheckClass.Identity, Area, "Ball in the side of a body, level coefficient against the law, Re 4e3 to 2e4", "Brown & Lawler 2003",
            new[] { 4e3, 7e3, 1e4, 2e4 }.Select(re => (Sphere(re), SphereDrag.Plateau)), 0.08);

    // The engine's form of a sphere of diameter 1 in a fluid of viscosity 1: U is Re.
    private static double Sphere(double reynolds) => SphereDrag.CoefficientTimesSpeed(reynolds, 1, 1, out _) / reynolds;

    private static double Elongated(double reynolds, double sphericity, double crosswise) =>
        ElongatedBodyDrag.HoelzerSommerfeld2008(1, sphericity, crosswise).DragAreaTimesSpeed(reynolds, 1, out _) / (Math.PI / 4 * reynolds);
}
