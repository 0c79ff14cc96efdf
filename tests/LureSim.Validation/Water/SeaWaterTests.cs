using LureSim.Water;

namespace LureSim.Validation.Water;

/// <summary>Density and viscosity of sea water against published check values.</summary>
public class SeaWaterTests
{
    private const string Area = "Water";

    [Fact]
    public void Density_gives_the_check_values_of_UNESCO_44()
    {
        // Fofonoff & Millard 1983, UNESCO technical papers in marine science 44; temperatures on IPTS-68, pressure zero.
        (double Salinity, double T68, double Density)[] published = [(0, 5, 999.96675), (0, 25, 997.04796), (35, 5, 1027.67547), (35, 25, 1023.34306)];
        ValidationLog.WorstAbsolute(
            CheckClass.Measured, Area, "Density of sea water, EOS-80 at the surface", "Fofonoff & Millard 1983, check values",
            published.Select(p => (p.Density, SeaWater.Density(p.T68 / 1.00024, p.Salinity))), 1.5e-5, "kg/m3");
    }

    [Fact]
    public void Density_and_viscosity_give_the_table()
    {
        HydroTable table = HydroTable.Read("seawater");
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Density of fresh, brackish and sea water, 0 to 30 C", "Millero & Poisson 1981, table computed elsewhere",
            Enumerable.Range(0, table.Count).Select(i => (table.Value(i, "rho_kg_m3"), SeaWater.Density(table.Value(i, "temperature_C"), table.Value(i, "salinity")))), 6e-5, "kg/m3");
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Viscosity of fresh, brackish and sea water, 0 to 30 C", "Sharqawy et al. 2010, table computed elsewhere",
            Enumerable.Range(0, table.Count).Select(i => (table.Value(i, "mu_mPa_s"), 1000 * SeaWater.DynamicViscosity(table.Value(i, "temperature_C"), table.Value(i, "salinity")))), 6e-6, "mPa s");
    }

    [Fact]
    public void Viscosity_agrees_with_other_sources()
    {
        // Sharqawy state 1.5 %.
        ValidationLog.Relative(CheckClass.Measured, Area, "Viscosity at 25 C, salinity 40", "Millero 1974", 9.6541e-4, SeaWater.DynamicViscosity(25, 40), 0.005, "Pa s");

        // ITTC 7.5-02-01-03 (2011), as read in public transcriptions of its tables.
        (string Water, double T, double S, double Nu, double Rho)[] ittc =
        [
            ("fresh water", 15, 0, 1.1386e-6, 999.1026), ("fresh water", 20, 0, 1.0034e-6, 998.2072), ("sea water", 15, 35.0, 1.1892e-6, 1026.0210), ("sea water", 20, 35.0, 1.0508e-6, 1024.8103),
        ];
        foreach ((string water, double t, double s, double nu, double rho) in ittc)
        {
            ValidationLog.Relative(CheckClass.Measured, Area, FormattableString.Invariant($"Kinematic viscosity of {water} at {t} C"), "ITTC 7.5-02-01-03 (2011)", nu, SeaWater.DynamicViscosity(t, s) / SeaWater.Density(t, s), 0.001, "m2/s");
            ValidationLog.Relative(CheckClass.Measured, Area, FormattableString.Invariant($"Density of {water} at {t} C"), "ITTC 7.5-02-01-03 (2011)", rho, SeaWater.Density(t, s), 5e-5, "kg/m3");
        }

        (double T, double Fresh, double Salt)[] naval = [(0, 1.787, 1.828), (10, 1.306, 1.354), (20, 1.004, 1.054), (30, 0.801, 0.849)];
        static double Nu(double t, double s) => 1e6 * SeaWater.DynamicViscosity(t, s) / SeaWater.Density(t, s);
        ValidationLog.WorstRelative(
            CheckClass.Measured, Area, "Kinematic viscosity, fresh water 0 to 30 C", "naval textbook table", naval.Select(n => (n.Fresh, Nu(n.T, 0))), 0.005, "1e-6 m2/s");

        // The table has salt water at 0 C 1.4 % below ITTC and Sharqawy.
        ValidationLog.WorstRelative(
            CheckClass.Measured, Area, "Kinematic viscosity, salt water 0 to 30 C", "naval textbook table", naval.Select(n => (n.Salt, Nu(n.T, 35))), 0.015, "1e-6 m2/s");
    }

    [Fact]
    public void The_column_of_a_spot_takes_its_density_and_viscosity_from_there()
    {
        // A wiring check: no figures of its own.
        var column = WaterColumn.Unbounded(1025, 1.08e-3);
        Assert.Equal(1.08e-3 / 1025, column.KinematicViscosity, 12);
    }
}
