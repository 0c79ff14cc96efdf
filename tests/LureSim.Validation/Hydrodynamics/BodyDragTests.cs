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

    // The slope against central differences, from creeping to turbulent.
    [Theory]
    [InlineData(0.05)]
    [InlineData(3)]
    [InlineData(400)]
    [InlineData(3e4)]
    public void The_slope_is_the_derivative(double speed)
    {
        double step = 1e-5 * speed;
        SphereDrag.CoefficientTimesSpeed(speed, 1.3, 0.7, out double slope);
        Assert.Equal(
            (SphereDrag.CoefficientTimesSpeed(speed + step, 1.3, 0.7, out _) - SphereDrag.CoefficientTimesSpeed(speed - step, 1.3, 0.7, out _)) / (2 * step), slope, 1e-7 * slope);
    }

    // At rest Stokes drag is left, and it is finite.
    [Fact]
    public void At_rest_the_form_is_regular()
    {
        Assert.Equal(24 * 2.0 / 3, SphereDrag.CoefficientTimesSpeed(0, 3, 2, out double slope), 1e-12);
        Assert.Equal(0, slope);
    }

    // The plateau that stands for a ball beside a body lies on the law, within its wave from Re 4e3 to 2e4, where ball heads live.
    [Fact]
    public void The_plateau_lies_on_the_law() =>
        ValidationLog.WorstRelative(
            CheckClass.Identity, Area, "Ball in the side of a body, level coefficient against the law, Re 4e3 to 2e4", "Brown & Lawler 2003",
            new[] { 4e3, 1e4, 2e4 }.Select(re => (Sphere(re), SphereDrag.Plateau)), 0.08);

    // The engine's form of a sphere of diameter 1 in a fluid of viscosity 1: U is Re.
    private static double Sphere(double reynolds) => SphereDrag.CoefficientTimesSpeed(reynolds, 1, 1, out _) / reynolds;
}
