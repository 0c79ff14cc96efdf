using LureSim.Data;
using LureSim.Light;
using LureSim.Model;

namespace LureSim.Validation.Light;

/// <summary>Water, surface, diffuse attenuation and Secchi depth against published figures.</summary>
public class WaterOpticsTests
{
    [Theory]
    [InlineData(440.0, 0.00635)]
    [InlineData(550.0, 0.0565)]
    [InlineData(600.0, 0.2224)]
    [InlineData(650.0, 0.340)]
    [InlineData(700.0, 0.624)]
    public void Pure_water_absorbs_as_Pope_and_Fry_1997_measured(double nm, double expected) =>
        ValidationLog.Absolute(CheckClass.Identity, "Light: water", $"absorption of pure water at {nm} nm (the table in use)", "Pope & Fry 1997", expected, PureWater.Absorption(20.0, 0.0).At(nm), 5e-6, "1/m");

    [Theory]
    [InlineData(0.0, 0.02111)]
    [InlineData(30.0, 0.0222)]
    [InlineData(45.0, 0.0288)]
    [InlineData(60.0, 0.0610)]
    [InlineData(75.0, 0.2146)]
    public void Fresnel_reflectance_of_the_surface(double degrees, double expected) =>
        // Fresnel's equations for n = 1.34, evaluated independently; the normal value is ((n - 1)/(n + 1))^2.
        ValidationLog.Absolute(CheckClass.SameEquations, "Light: water", $"reflectance of the surface at {degrees} deg", "Fresnel's equations worked apart", expected, WaterSurface.FresnelReflectance(degrees * Math.PI / 180.0), 0.00005);

    [Fact]
    public void A_uniform_sky_is_reflected_by_6_6_percent_and_enters_with_the_known_mean_cosine()
    {
        // Preisendorfer and Mobley 1986: 0.066 for a uniform sky on flat water of index 1.34 (from memory).
        ValidationLog.Absolute(CheckClass.FromMemory, "Light: water", "reflectance for a uniform sky", "Preisendorfer & Mobley 1986", 0.066, 1.0 - WaterSurface.DiffuseTransmittance, 0.002);
        Assert.Equal(48.27, WaterSurface.SnellWindowHalfAngle * 180.0 / Math.PI, 0.01);
    }

    [Fact]
    public void Formulae_of_diffuse_attenuation_give_the_worked_values()
    {
        ValidationLog.Absolute(CheckClass.SameEquations, "Light: water", "Kd, formula of 2005", "Lee et al. 2005 worked apart", 0.14942, DiffuseAttenuation.Lee2005(0.1, 0.01, 30.0), 5e-6, "1/m");
        ValidationLog.Absolute(CheckClass.SameEquations, "Light: water", "Kd, formula of 2013", "Lee et al. 2013 worked apart", 0.14914, DiffuseAttenuation.Lee2013(0.1, 0.01, 0.001, 30.0), 5e-6, "1/m");
        ValidationLog.Absolute(CheckClass.SameEquations, "Light: water", "Secchi depth, formula", "Lee et al. 2015 worked apart", 9.39, SecchiDepth.Lee2015(0.1, 0.004), 0.005, "m");
    }

    [Theory]
    [InlineData(450.0, 0.0176)]
    [InlineData(490.0, 0.0224)]
    [InlineData(550.0, 0.0640)]
    [InlineData(650.0, 0.3559)]
    public void Clearest_water_is_near_the_pure_seawater_of_Austin_and_Petzold_1986(double nm, double published)
    {
        // Lee 2005 on Pope and Fry's water lies up to 15 % off their Kw, which rests on older water absorption.
        var water = PureWater.Absorption(20.0, 35.0);
        var scattering = 0.5 * PureWater.Scattering();
        double kd = DiffuseAttenuation.Lee2005(water.At(nm), scattering.At(nm), 30.0);
        ValidationLog.Relative(CheckClass.Measured, "Light: water", $"Kd of the clearest water at {nm} nm: the older absorption of water is in the table", "Austin & Petzold 1986", published, kd, 0.16, "1/m");
    }

    [Theory]
    [InlineData(JerlovType.I, "I")]
    [InlineData(JerlovType.IA, "IA")]
    [InlineData(JerlovType.IB, "IB")]
    [InlineData(JerlovType.II, "II")]
    [InlineData(JerlovType.III, "III")]
    [InlineData(JerlovType.Coastal1, "1C")]
    [InlineData(JerlovType.Coastal3, "3C")]
    [InlineData(JerlovType.Coastal5, "5C")]
    [InlineData(JerlovType.Coastal7, "7C")]
    [InlineData(JerlovType.Coastal9, "9C")]
    public void Kd_of_the_Jerlov_types_is_the_one_that_defines_them(JerlovType type, string label)
    {
        // Where the table lies below pure seawater by the absorption in use (types I to III in the yellow and red: by up to 13 %) the water wins.
        bool oceanic = type <= JerlovType.III;
        var table = ReferenceTable.Optics(oceanic ? "jerlov_kd_austin_petzold1986" : "jerlov_kd");
        double[] nm = table.Numbers("wavelength_nm"), published = table.Numbers(label);
        var kd = OpticalWater.FromJerlov(type).DiffuseAttenuation(30.0);
        var rows = Enumerable.Range(0, nm.Length).Where(i => nm[i] is >= 450.0 and <= 650.0).Select(i => (published[i], kd.At(nm[i])));
        ValidationLog.WorstRelative(
            CheckClass.Identity, "Light: Jerlov types", $"{label}: Kd of 450 to 650 nm (absorption is set by it, not below the water's own)",
            oceanic ? "Austin & Petzold 1986" : "Jerlov 1976", rows, oceanic ? 0.135 : 0.03);

        // The optics as published lie off both editions: why they are not used as they are.
        var first = ReferenceTable.Optics("jerlov_iop_solonenko2015").Rows.Single(r => r.Text("type") == label && r.Number("wavelength_nm") == 550.0);
        Assert.InRange(DiffuseAttenuation.OfSpectrum(OpticalWater.PublishedOptics(type), 30.0).At(550.0) / first.Number("Kd_jerlov1968"), 0.67, 1.24);
    }

    [Fact]
    public void Kd_of_the_Jerlov_types_follows_the_radiative_transfer_of_Solonenko_and_Mobley_2015()
    {
        // Kd_numeric is their HydroLight result from the same a and b: a clean test of the Kd law over clear to murky water.
        var table = ReferenceTable.Optics("jerlov_iop_solonenko2015");
        string[] types = table.Text("type");
        double[] nm = table.Numbers("wavelength_nm"), numeric = table.Numbers("Kd_numeric");
        var ratios = new List<double>();
        foreach (var type in Enum.GetValues<JerlovType>())
        {
            var kd = DiffuseAttenuation.OfSpectrum(OpticalWater.PublishedOptics(type), 30.0);
            ratios.AddRange(Enumerable.Range(0, types.Length)
                .Where(i => types[i] == OpticalWater.Label(type) && nm[i] is >= 450.0 and <= 650.0 && !double.IsNaN(numeric[i]))
                .Select(i => kd.At(nm[i]) / numeric[i]));
        }

        Assert.True(ratios.Count > 80);
        ValidationLog.WorstRelative(CheckClass.OtherProgram, "Light: Jerlov types", "Kd from the inherent optics, 450 to 650 nm", "HydroLight of Solonenko & Mobley 2015", ratios.Select(r => (1.0, r)), 0.16);
        ValidationLog.Relative(CheckClass.OtherProgram, "Light: Jerlov types", "the same, mean", "HydroLight of Solonenko & Mobley 2015", 1.0, ratios.Average(), 0.05);
    }

    [Fact]
    public void Two_published_clear_sky_illuminance_formulae_agree()
    {
        // IES clear sky (1984): 127.5 exp(-0.21 m) sin h + 0.8 + 15.5 sqrt(sin h) klx with m = 1/sin h (from memory).
        foreach (double degrees in new[] { 20.0, 30.0, 45.0, 60.0, 90.0 })
        {
            double sine = Math.Sin(degrees * Math.PI / 180.0);
            double ies = 1e3 * ((127.5 * Math.Exp(-0.21 / sine) * sine) + 0.8 + (15.5 * Math.Sqrt(sine)));
            ValidationLog.Relative(CheckClass.FromMemory, "Light: sun and sky", $"illuminance of a clear sky, sun at {degrees} deg", "IES 1984", ies, Atmosphere.Illuminate(degrees).Illuminance, 0.07, "lx");
            // Janiczek and DeYoung 1987, an independent fit of measured levels.
            ValidationLog.Relative(CheckClass.Measured, "Light: sun and sky", $"illuminance of a clear sky, sun at {degrees} deg: the two sources differ by as much", "Janiczek & DeYoung 1987", Atmosphere.SunIlluminance(degrees), Atmosphere.Illuminate(degrees).Illuminance, 0.22, "lx");
        }
    }
}
