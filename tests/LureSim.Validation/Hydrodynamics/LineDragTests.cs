using LureSim.Hydrodynamics;

namespace LureSim.Validation.Hydrodynamics;

/// <summary>Drag of a line across and along the flow.</summary>
public class LineDragTests
{
    private const string Area = "Drag of lines";

    [Fact]
    public void Choo_and_Casarella_normal_gives_the_worked_figures()
    {
        (double, double)[] worked = [(0.1, 55.642), (1, 9.8283), (5, 3.4586), (10, 2.5264), (30 + 1e-9, 1.8303), (100, 1.5), (400, 1.3), (1e4, 1.14)];
        ValidationLog.WorstRelative(
            CheckClass.SameEquations, Area, "Normal coefficient, Re 0.1 to 1e4", "Choo & Casarella 1971, worked elsewhere", worked.Select(w => (w.Item2, CylinderDrag.NormalChooCasarella1971(w.Item1))), 2e-5);
        HydroTable table = HydroTable.Read("cylinder_drag");
        ValidationLog.WorstRelative(
            CheckClass.SameEquations, Area, "Normal coefficient, table from Re 0.1 to 1e5", "Choo & Casarella 1971, table computed elsewhere",
            table.Pairs("Re", "choo_casarella").Select(p => (p.Y, CylinderDrag.NormalChooCasarella1971(p.X))), 5e-5);
    }

    [Theory]
    [InlineData(CheckClass.Measured, "measured_digitised", "figure in Panton, Incompressible Flow, digitised", 20, 500, 0.15)]
    [InlineData(CheckClass.Measured, "tether_table", "table of a public tether-drag routine, near Wieselsberger 1921", 20, 500, 0.15)]
    [InlineData(CheckClass.FromMemory, "sucker_brauer", "Sucker & Brauer 1975, from memory", 20, 500, 0.15)]
    [InlineData(CheckClass.FromMemory, "white", "White, Viscous Fluid Flow, from memory", 20, 500, 0.15)]
    [InlineData(CheckClass.Measured, "measured_digitised", "figure in Panton, Incompressible Flow, digitised", 1, 10, 0.25)]
    public void Choo_and_Casarella_normal_follows_other_curves_in_the_range_of_a_line(CheckClass kind, string column, string source, double low, double high, double tolerance)
    {
        HydroTable table = HydroTable.Read("cylinder_drag");
        ValidationLog.WorstRelative(
            kind, Area, FormattableString.Invariant($"Cylinder across the flow against {column.Replace('_', ' ')}, Re {low} to {high}"), source,
            table.Pairs("Re", column).Where(p => p.X >= low && p.X <= high).Select(p => (p.Y, CylinderDrag.NormalChooCasarella1971(p.X))), tolerance);
    }

    [Theory]
    [InlineData(0.2, 10, 0.005)]
    [InlineData(10, 100, 0.015)]
    [InlineData(100, 1000, 0.012)]
    [InlineData(1000, 1e4, 0.031)]
    [InlineData(1e4, 1.65e5, 0.03)]
    public void The_default_law_follows_the_measured_cylinder(double low, double high, double tolerance) =>
        ValidationLog.WorstRelative(
            CheckClass.Measured, Area, FormattableString.Invariant($"Cylinder across the flow, default law as the engine takes it, Re {low} to {high}"), "Wieselsberger 1922, NACA TN 84 (the fit's own data; reading error 3 %)",
            HydroTable.Read("cylinder_normal_wieselsberger1922").Pairs("Re", "cd").Where(p => p.X > low && p.X <= high).Select(p => (p.Y, Normal(LineDragLaw.Default, p.X) / p.X)), tolerance);

    [Theory]
    [InlineData(60.5, 1.47, 0.03, "Tritton 1959, J. Fluid Mech. 6:547, as quoted in a public comparison")]
    [InlineData(100, 1.29, 0.075, "Tritton 1959: 1.26 to 1.32, as quoted in a public comparison")]
    [InlineData(100.1, 1.32, 0.05, "Wieselsberger 1921: 1.30 to 1.34, as quoted in a public comparison")]
    [InlineData(3e4, 1.2, 0.05, "NACA TR 619 as tabulated in public course notes, Re 1e4 to 5e4")]
    public void The_default_law_meets_single_measurements(double re, double cd, double tolerance, string source) =>
        ValidationLog.Relative(CheckClass.Measured, Area, FormattableString.Invariant($"Cylinder across the flow, default law, Re {re}"), source, cd, Normal(LineDragLaw.Default, re) / re, tolerance);

    [Theory]
    [InlineData(10, 2.846, 0.075, "Dennis & Chang 1970, computed")]
    [InlineData(20, 2.045, 0.02, "Dennis & Chang 1970, computed")]
    [InlineData(40, 1.522, 0.09, "Dennis & Chang 1970, computed")]
    [InlineData(60, 1.416, 0.07, "Henderson 1995, Phys. Fluids 7:2102, computed")]
    [InlineData(99.9, 1.31, 0.06, "Posdziech & Grundmann 2007, computed")]
    public void The_default_law_meets_computed_flows(double re, double cd, double tolerance, string source) =>
        ValidationLog.Relative(CheckClass.OtherProgram, Area, FormattableString.Invariant($"Cylinder across the flow, default law, Re {re}, computed flow"), source, cd, Normal(LineDragLaw.Default, re) / re, tolerance);

    [Theory]
    [InlineData(CheckClass.Measured, "measured_digitised", "figure in Panton, Incompressible Flow, digitised", 20, 500, 0.06)]
    [InlineData(CheckClass.Measured, "measured_digitised", "figure in Panton, Incompressible Flow, digitised (scatter 5 to 10 %)", 1, 10, 0.18)]
    [InlineData(CheckClass.Measured, "tether_table", "table of a public tether-drag routine, near Wieselsberger 1921", 20, 500, 0.085)]
    public void The_default_law_follows_other_curves(CheckClass kind, string column, string source, double low, double high, double tolerance) =>
        ValidationLog.WorstRelative(
            kind, Area, FormattableString.Invariant($"Cylinder across the flow, default law against {column.Replace('_', ' ')}, Re {low} to {high}"), source,
            HydroTable.Read("cylinder_drag").Pairs("Re", column).Where(p => p.X >= low && p.X <= high).Select(p => (p.Y, Normal(LineDragLaw.Default, p.X) / p.X)), tolerance);

    [Theory]
    [InlineData(NormalDragLaw.ChooCasarella, 1.281)]
    [InlineData(NormalDragLaw.SuckerBrauer, 1.061)]
    public void The_other_laws_lie_above_the_measured_cylinder(NormalDragLaw law, double published)
    {
        // How far, where fishing line lives: the largest ratio over the points between Re 30 and 900.
        LineDragLaw line = LineDragLaw.Of(law, TangentialDragLaw.ChooCasarella);
        double largest = HydroTable.Read("cylinder_normal_wieselsberger1922").Pairs("Re", "cd").Where(p => p.X is > 30 and < 900).Max(p => Normal(line, p.X) / p.X / p.Y);
        ValidationLog.Relative(CheckClass.SameEquations, Area, $"{line.Name.Split(" across")[0]} over the measured cylinder, Re 30 to 900: stated discrepancy", "Wieselsberger 1922, ratios worked apart", published, largest, 0.003);
    }

    [Fact]
    public void Tangential_numbers_give_the_worked_figures()
    {
        double[] re = [1, 10, 30, 100, 300, 1000];
        double[] nusselt = [0.8565, 2.0615, 3.3550, 5.8940, 10.0421, 18.3045];
        double[] bracket = [0.6340, 2.1291, 3.8235, 7.3097, 13.2907, 25.7925];
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Nusselt number at Pr 1, Re 1 to 1000", "Churchill & Bernstein 1977, worked elsewhere", re.Select((r, i) => (nusselt[i], CylinderDrag.NusseltChurchillBernstein1977(r))), 6e-5);
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Tangential number, Re 1 to 1000", "Choo & Casarella 1971, worked elsewhere", re.Select((r, i) => (bracket[i], CylinderDrag.TangentialChooCasarella1971(r))), 6e-5);
    }

    [Fact]
    public void The_analogy_supports_the_tangential_law_in_the_range_of_a_line() =>
        ValidationLog.WorstRelative(
            CheckClass.Measured, Area, "Tangential number of Choo & Casarella against the heat-transfer analogy, Re 3 to 30", "Churchill & Bernstein 1977, Pr = 1",
            new double[] { 3, 5, 10, 20, 30 }.Select(r => (CylinderDrag.NusseltChurchillBernstein1977(r), CylinderDrag.TangentialChooCasarella1971(r))), 0.15);

    [Fact]
    public void The_engine_s_table_reproduces_the_formulas()
    {
        // Away from the joints of the published law at Re 1 and 30, where the table's cubic pieces round a jump of 1 to 2 %.
        // Below Re 1e-8 nothing moves; above 1.6e5 the table ends.
        static IEnumerable<double> Range(double low, double high) => Enumerable.Range(0, 4001).Select(i => low * Math.Pow(high / low, i / 4000.0));
        double[] away = [.. Range(1e-3, 1e5).Where(r => Math.Abs(r - 1) > 0.1 && Math.Abs(r - 30) > 1.5)];
        ValidationLog.WorstRelative(
            CheckClass.Identity, Area, "Interpolated normal law against the formula, Re 1e-3 to 1e5 away from the joints", "Choo & Casarella 1971",
            away.Select(r => (CylinderDrag.NormalChooCasarella1971(r) * r, Normal(LineDragLaw.ChooCasarella, r))), 1e-4);
        ValidationLog.WorstRelative(
            CheckClass.Identity, Area, "Interpolated normal law against the formula, at the joints Re 1 and 30", "Choo & Casarella 1971",
            Range(0.9, 1.1).Concat(Range(28.5, 31.5)).Select(r => (CylinderDrag.NormalChooCasarella1971(r) * r, Normal(LineDragLaw.ChooCasarella, r))), 0.03);
        ValidationLog.WorstRelative(
            CheckClass.Identity, Area, "Interpolated tangential law against the formula, Re 1e-3 to 1e5", "Choo & Casarella 1971",
            Range(1e-3, 1e5).Select(r => (CylinderDrag.TangentialChooCasarella1971(r), Tangential(LineDragLaw.ChooCasarellaAsPrinted, r))), 1e-4);
        ValidationLog.WorstRelative(
            CheckClass.Identity, Area, "Interpolated tangential law against the formula, Re 1e-3 to 1e5 (analogy)", "Churchill & Bernstein 1977",
            Range(1e-3, 1e5).Select(r => (CylinderDrag.NusseltChurchillBernstein1977(r), Tangential(LineDragLaw.ChurchillBernstein, r))), 1e-4);
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.7)]
    [InlineData(3.0)]
    [InlineData(55.0)]
    [InlineData(412.0)]
    [InlineData(9000.0)]
    public void Slopes_of_the_table_are_its_derivatives(double re)
    {
        LineDragLaw law = LineDragLaw.Default;
        double step = 1e-6 * re;
        law.Evaluate(re + step, out double g1, out _, out double h1, out _);
        law.Evaluate(re - step, out double g0, out _, out double h0, out _);
        law.Evaluate(re, out _, out double gSlope, out _, out double hSlope);
        Assert.Equal((g1 - g0) / (2 * step) * re, gSlope, 1e-6 * Math.Abs(gSlope));
        Assert.Equal((h1 - h0) / (2 * step) * re, hSlope, 1e-6 * Math.Abs(hSlope));
    }

    private static double Normal(LineDragLaw law, double re)
    {
        law.Evaluate(re, out double normal, out _, out _, out _);
        return normal;
    }

    private static double Tangential(LineDragLaw law, double re)
    {
        law.Evaluate(re, out _, out _, out double tangential, out _);
        return tangential;
    }
}
