using LureSim.Data;

namespace LureSim.Light;

/// <summary>Inherent optical properties of a body of water, the same at every depth. All in 1/m.</summary>
/// <param name="Absorption">Total absorption a, water included; above 0.</param>
/// <param name="Scattering">Total scattering b, water included.</param>
/// <param name="Backscattering">Total backscattering b_b, water included.</param>
/// <param name="WaterBackscattering">Backscattering of the water itself, b_bw = b_w/2.</param>
public sealed record InherentOptics(Spectrum Absorption, Spectrum Scattering, Spectrum Backscattering, Spectrum WaterBackscattering)
{
    /// <summary>Beam attenuation c = a + b (1/m): what dims an image along a sight line.</summary>
    public Spectrum BeamAttenuation { get; } = Absorption + Scattering;

    /// <summary>Inherent optics of pure water with given amounts of matter in it.</summary>
    /// <param name="matter">What is in the water.</param>
    /// <param name="temperatureCelsius">Temperature (C), -2 to 40.</param>
    /// <param name="salinity">Practical salinity, 0-42.</param>
    /// <remarks>
    /// Absorption: particles that go with chlorophyll by Bricaud et al. 1998 (bricaud1998variations), a_p = A_p Chl^E_p,
    /// end values held below 400 nm and faded to 0 from 700 to 750 nm; dissolved matter exponential with the slope given (Babin
    /// et al. 2003a, babin2003variations); mineral 0.041 m2/g at 443 nm with slope 0.0123 per nm (same source). Scattering:
    /// chlorophyll by Loisel and Morel 1998 and Morel and Maritorena 2001 (morel2001bio), of which the share
    /// <see cref="WaterConstituents.OrganicBackscatteringShare"/> goes backward at every wavelength; mineral 0.51 m2/g at 555 nm (Babin
    /// et al. 2003b, babin2003light), spectral exponent -0.4 (assumed, within the range reported for coastal particles),
    /// backscattering share 0.0183 (mean of Petzold 1972, petzold1972volume, in Mobley 1994).
    /// </remarks>
    public static InherentOptics Of(WaterConstituents matter, double temperatureCelsius = 20.0, double salinity = 35.0)
    {
        ArgumentNullException.ThrowIfNull(matter);
        Spectrum water = PureWater.Absorption(temperatureCelsius, salinity);
        Spectrum waterScattering = PureWater.Scattering(salinity);
        double[] absorption = water.ToArray(), scattering = waterScattering.ToArray(), backscattering = new double[Grid.Count];
        double chlorophyll = matter.ChlorophyllMilligramPerCubicMetre, mineral = matter.MineralGramPerCubicMetre;
        double logChlorophyll = chlorophyll > 0.0 ? Math.Log10(chlorophyll) : 0.0;
        double scatteringAt550 = 0.416 * Math.Pow(chlorophyll, 0.766);
        double slope = chlorophyll < 2.0 ? 0.5 * (logChlorophyll - 0.3) : 0.0;
        for (int i = 0; i < Grid.Count; i++)
        {
            double nm = Grid.WavelengthsNm[i];
            backscattering[i] = 0.5 * waterScattering[i];
            if (chlorophyll > 0.0)
            {
                double fade = Math.Clamp((750.0 - nm) / 50.0, 0.0, 1.0);
                double tilt = Math.Pow(nm / 550.0, slope);
                absorption[i] += fade * ParticleCoefficient[i] * Math.Pow(chlorophyll, ParticleExponent[i]);
                scattering[i] += scatteringAt550 * tilt;
                backscattering[i] += matter.OrganicBackscatteringShare * scatteringAt550 * tilt;
            }

            absorption[i] += matter.DissolvedAbsorption440PerMetre * Math.Exp(-matter.DissolvedSlopePerNm * (nm - 440.0));
            double mineralScattering = 0.51 * mineral * Math.Pow(nm / 555.0, -0.4);
            absorption[i] += 0.041 * mineral * Math.Exp(-0.0123 * (nm - 443.0));
            scattering[i] += mineralScattering;
            backscattering[i] += ParticleBackscatteringShare * mineralScattering;
        }

        return new InherentOptics(
            new Spectrum(Grid, absorption), new Spectrum(Grid, scattering), new Spectrum(Grid, backscattering), 0.5 * waterScattering);
    }

    /// <summary>Backscattering share of average particles, 0.0183: mean of the phase functions of Petzold 1972 as given in Mobley 1994.</summary>
    internal const double ParticleBackscatteringShare = 0.0183;

    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;
    private static readonly Spectrum ParticleCoefficient = ReferenceTable.Optics("phytoplankton_absorption_bricaud1998").OnGrid(Grid, "Ap");
    private static readonly Spectrum ParticleExponent = ReferenceTable.Optics("phytoplankton_absorption_bricaud1998").OnGrid(Grid, "Ep");
}
