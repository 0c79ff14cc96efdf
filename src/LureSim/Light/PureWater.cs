using LureSim.Data;

namespace LureSim.Light;

/// <summary>Absorption and scattering of pure water and seawater.</summary>
public static class PureWater
{
    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;
    private static readonly Spectrum AbsorptionAt20 = ReferenceTable.Optics("pure_water_absorption").OnGrid(Grid, "a_w_per_m");
    private static readonly Spectrum PerDegree = ReferenceTable.Optics("pure_water_absorption_T_S").OnGrid(Grid, "psi_T_per_m_per_C");
    private static readonly Spectrum PerSalinity = ReferenceTable.Optics("pure_water_absorption_T_S").OnGrid(Grid, "psi_S_per_m_per_psu");
    private static readonly Spectrum ScatteringFresh = ReferenceTable.Optics("pure_seawater_scattering").OnGrid(Grid, "b_zhang2009_S0_T20");
    private static readonly Spectrum ScatteringSea = ReferenceTable.Optics("pure_seawater_scattering").OnGrid(Grid, "b_zhang2009_S35_T20");

    /// <summary>
    /// Absorption (1/m): Pope and Fry 1997 (pope1997absorption) at 420-725 nm within the IOCCG 2018 composite, changed with
    /// temperature and salinity by Roettgers et al. 2014 (rottgers2014temperature): a = a(20, 0) + Psi_T (T - 20) + Psi_S S.
    /// </summary>
    /// <param name="temperatureCelsius">Temperature (C), -2 to 40.</param>
    /// <param name="salinity">Practical salinity, 0-42.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Spectrum Absorption(double temperatureCelsius = 20.0, double salinity = 35.0)
    {
        _ = Guard.InRange(temperatureCelsius, -2.0, 40.0, nameof(temperatureCelsius), "C");
        _ = Guard.InRange(salinity, 0.0, 42.0, nameof(salinity), "(practical salinity)");
        return AbsorptionAt20
            + ((temperatureCelsius - 20.0) * PerDegree)
            + (salinity * PerSalinity);
    }

    /// <summary>Scattering (1/m), Zhang, Hu and He 2009 (zhang2009scattering) at 20 C, linear in salinity between 0 and 35. Half of it goes backward.</summary>
    /// <param name="salinity">Practical salinity, 0-42.</param>
    /// <exception cref="ArgumentOutOfRangeException">The salinity is outside its range.</exception>
    public static Spectrum Scattering(double salinity = 35.0)
    {
        _ = Guard.InRange(salinity, 0.0, 42.0, nameof(salinity), "(practical salinity)");
        return ScatteringFresh.Combine(ScatteringSea, (fresh, sea) => fresh + (salinity / 35.0 * (sea - fresh)));
    }
}
