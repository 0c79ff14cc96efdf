using LureSim.Hydrodynamics;

namespace LureSim.Validation.Hydrodynamics;

/// <summary>The parts of a body's drag against measured bodies, and their sum against bodies of revolution, cylinders and fish.</summary>
public class BodyDragComponentTests
{
    private const string Area = "Drag of bodies: parts";
    private const double Viscosity = 1e-6;

    [Theory]
    [InlineData("cylinder_finite_length_wieselsberger1922", "Wieselsberger 1922, seven cylinders at Re 8.8e4", 0.063)]
    [InlineData("cylinder_finite_length_hopkins1951", "Hopkins 1951, NACA RM A51C14, curve", 0.021)]
    public void A_short_cylinder_has_its_share(string table, string source, double tolerance) =>
        ValidationLog.WorstRelative(
            CheckClass.Measured, Area, $"Cylinder of finite length across the flow over an endless one ({source[..source.IndexOf(' ', StringComparison.Ordinal)]})", source,
            HydroTable.Read(table).Pairs("length_over_diameter", "ratio_to_infinite").Select(p => (p.Y, CylinderDrag.FiniteLengthShare(p.X))), tolerance);

    [Fact]
    public void Short_cylinders_of_the_data_book()
    {
        (double Slenderness, double Cd)[] published = [(1, 0.63), (2, 0.68), (5, 0.74), (10, 0.82), (40, 0.98)];
        foreach ((double slenderness, double cd) in published)
        {
            const double Diameter = 0.1, Speed = 0.88;
            ValidationLog.Relative(
                CheckClass.Measured, Area, FormattableString.Invariant($"Cylinder across the flow, length {slenderness} diameters, Re 8.8e4"), "Aeronautical engineer's data book, fig. 5.13",
                cd, Coefficient(new CylinderAcross("rod", slenderness * Diameter, Diameter), Speed, slenderness * Diameter * Diameter), 0.04);
        }
    }

    [Fact]
    public void Plates_across_the_flow()
    {
        HydroTable table = HydroTable.Read("plates_and_bluff_shapes");
        for (int i = 0; i < table.Count; i++)
        {
            double aspect = table.Value(i, "aspect_ratio");
            bool read = table.Text(i, "how") == "read";
            string source = table.Text(i, "source");
            ValidationLog.Relative(
                read ? CheckClass.Measured : CheckClass.FromMemory, Area, FormattableString.Invariant($"{table.Text(i, "shape")}, aspect ratio {aspect} ({source[..source.IndexOf(' ', StringComparison.Ordinal)]})"), source,
                table.Value(i, "cd"), PlateDrag.Across(aspect), 0.03);
        }
    }

    [Fact]
    public void A_disc_has_the_drag_of_a_square_plate()
    {
        HydroTable table = HydroTable.Read("sphere_disc_drag_measured");
        double[] measured = [.. Enumerable.Range(0, table.Count).Where(i => table.Text(i, "body") == "disc" && table.Value(i, "Re") > 3000).Select(i => table.Value(i, "Cd"))];
        Assert.NotEmpty(measured);
        ValidationLog.Relative(CheckClass.Measured, Area, $"Disc across the flow, Re above 3000, mean of {measured.Length} measured points", "Roos & Willmarth 1971", measured.Average(), PlateDrag.Across(1), 0.05);
    }

    [Fact]
    public void Friction_of_a_plate_follows_its_laws()
    {
        double[] re = [10, 30, 100, 300, 1000];
        ValidationLog.WorstRelative(
            CheckClass.FromMemory, Area, "Plate along the flow, Re 10 to 1000", "Janour 1951, 2.90 Re^-0.60, from memory", re.Select(r => (2.90 * Math.Pow(r, -0.60), SkinFriction.Coefficient(r))), 0.07);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Plate along the flow, Re 1e7", "Schlichting's table of the transition formula, worked by hand", (0.455 / Math.Pow(7, 2.58)) - 1.7e-4, SkinFriction.Coefficient(1e7), 0.001);
    }

    [Fact]
    public void A_spheroid_creeps_as_Oberbeck_says()
    {
        // A sphere of 1 mm: 3 pi mu d U is Cd A U = 6 pi nu d.
        var sphere = new SkinFriction(Math.PI * 1e-6, 1.0001e-3, 1e-3);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "Friction of a sphere near rest", "Stokes", 6 * Math.PI * Viscosity * 1e-3, sphere.AreaTimesSpeed(0, Viscosity, out _), 1e-3, "m3/s");
    }

    [Fact]
    public void A_laminar_layer_leaves_a_sphere_where_it_must() =>
        ValidationLog.Absolute(
            CheckClass.FromMemory, Area, "Separation on a sphere in ideal flow", "White, Viscous Fluid Flow: 103.6 degrees, from memory", 103.6,
            Math.Acos(1 - (2 * LaminarSeparation.OfSpheroid(1).Station)) * 180 / Math.PI, 0.1, "deg");

    [Fact]
    public void Ellipsoids_nose_first()
    {
        HydroTable table = HydroTable.Read("nose_on_drag");
        foreach (int i in Enumerable.Range(0, table.Count).Where(i => table.Text(i, "body") == "prolate ellipsoid"))
        {
            double slenderness = table.Value(i, "slenderness");
            ValidationLog.Relative(
                CheckClass.FromMemory, Area, FormattableString.Invariant($"Prolate ellipsoid, length {slenderness} diameters, laminar, Re_d 1e4"), "White, Fluid Mechanics, table of three-dimensional bodies, from memory",
                table.Value(i, "cd"), NoseFirst(slenderness, 1e4), 0.10);
        }
    }

    [Fact]
    public void A_rounded_body_drags_less_than_a_flat_faced_cylinder()
    {
        HydroTable curve = HydroTable.Read("axial_cylinder_by_length"), book = HydroTable.Read("nose_on_drag");
        double least = curve.Pairs("length_over_diameter", "cd").Min(p => p.Y);
        foreach (double slenderness in new[] { 4, 6.2, 8 })
        {
            ValidationLog.AtMost(
                CheckClass.Measured, Area, FormattableString.Invariant($"Rounded body of {slenderness} diameters at Re_d 5e3, against the least drag of a flat-faced cylinder"), "Hoerner 1965 as digitised: 0.81",
                least, NoseFirst(slenderness, 5e3));
        }

        Assert.All(Enumerable.Range(0, book.Count).Where(i => book.Text(i, "body") == "flat-faced cylinder"), i => Assert.True(NoseFirst(4, 1e4) < book.Value(i, "cd")));
    }

    [Fact]
    public void A_blunt_base_behind_a_round_nose()
    {
        // A cylinder of 4 diameters behind a hemisphere: friction along it, nothing at the nose, suction over the whole base.
        const double Diameter = 0.05, Speed = 2;
        double length = 4 * Diameter, frontal = Math.PI / 4 * Diameter * Diameter;
        var friction = new SkinFriction((Math.PI * Diameter * (length - (Diameter / 2))) + (Math.PI / 2 * Diameter * Diameter), length, Diameter);
        ValidationLog.Relative(
            CheckClass.FromMemory, Area, "Cylinder of 4 diameters with a hemispherical nose, Re_d 1e5", "Hoerner 1965, ch. 3: 0.2, from memory", 0.20,
            Coefficient(new DragSum("body", friction, new BluntBase(friction, frontal)), Speed, frontal), 0.15);
    }

    [Theory]
    [InlineData("bluegill coasting", "Gellman et al. 2013, abstract: 0.015 +- 0.007", 0.4)]
    [InlineData("sailfish mounted skin", "Sagong, Jeon & Choi 2013, PLoS ONE 8:e81323; turbulent, where the layer does not part", 0.55)]
    [InlineData("swordfish mounted skin", "Sagong, Jeon & Choi 2013, PLoS ONE 8:e81323; turbulent, where the layer does not part", 0.28)]
    public void Fish_that_glide(string body, string source, double tolerance)
    {
        HydroTable table = HydroTable.Read("nose_on_drag");
        int row = Enumerable.Range(0, table.Count).Single(i => table.Text(i, "body") == body);
        double slenderness = table.Value(row, "slenderness"), re = table.Value(row, "re");
        double wetted = RoundedBody.WettedArea(slenderness, 1) / (Math.PI / 4);
        ValidationLog.Relative(
            CheckClass.Measured, Area, FormattableString.Invariant($"{body}, Re {re}: drag on the wetted area, the body's spheroid without fins"), source, table.Value(row, "cd"), NoseFirst(slenderness, re / slenderness) / wetted, tolerance);
    }

    // Cd on the largest section of a spheroid of unit diameter at a Reynolds number on the diameter.
    private static double NoseFirst(double slenderness, double reynolds) =>
        Coefficient(RoundedBody.NoseFirst(slenderness, 1, 1), reynolds * Viscosity, Math.PI / 4);

    private static double Coefficient(IDragComponent part, double speed, double area) => part.AreaTimesSpeed(speed, Viscosity, out _) / speed / area;
}
