using LureSim.Data;
using LureSim.Model;
using MathNet.Numerics.RootFinding;

namespace LureSim.Light;

/// <summary>How a water was found from what was given.</summary>
public enum WaterFitStatus
{
    /// <summary>The constituents were given or the Secchi depth is met.</summary>
    Matched,

    /// <summary>The Secchi depth asked for is deeper than this kind of water allows: the clearest water of the kind is used.</summary>
    ClearestOfKind,

    /// <summary>The Secchi depth asked for is shallower than this kind of water allows: the murkiest water of the kind is used.</summary>
    MurkiestOfKind,
}

/// <summary>A body of water with its optics, however it was described. Immutable.</summary>
public sealed record OpticalWater
{
    /// <summary>
    /// Factor, either way, by which the beam attenuation c of a natural water is uncertain where its kind and Secchi depth alone are
    /// known, 1.4: the range of Z (c + Kd) over kinds and depths here (6.2-11.3 for Secchi depths of 0.3-6 m) and of published
    /// Z Kd (1.05-2.76, koenings1991depth). Sighting distances in turbid water go as 1/c. Taken as the range of nine waters in ten.
    /// </summary>
    public const double AttenuationSpread = 1.4;

    /// <summary>
    /// Factor, either way, by which Kd of a natural water is uncertain where its kind and Secchi depth alone are known, 1.3 for nine waters in ten: published
    /// products Z Kd(PAR) of one kind of water differ by as much (clear 1.7 to 2.0, turbid 1.05 to 1.6; poole1929photo, koenings1991depth, zhang2012predicting).
    /// </summary>
    public const double DiffuseAttenuationSpread = 1.3;

    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;

    private OpticalWater(InherentOptics optics, WaterConstituents? constituents, WaterFitStatus status)
    {
        Optics = optics;
        Constituents = constituents;
        Status = status;
        SecchiDepth = Light.SecchiDepth.Of(optics);
    }

    /// <summary>Absorption and scattering spectra.</summary>
    public InherentOptics Optics { get; }

    /// <summary>What is in the water; null when it was given as a Jerlov type.</summary>
    public WaterConstituents? Constituents { get; }

    /// <summary>Whether the water asked for was reached.</summary>
    public WaterFitStatus Status { get; }

    /// <summary>Kind of water and Secchi depth (m) that were asked for; null when it was described otherwise.</summary>
    public (WaterKind Kind, double SecchiDepth)? Asked { get; private init; }

    /// <summary>Secchi depth of this water by Lee et al. 2015 with the sun 30 degrees from the zenith (m).</summary>
    public double SecchiDepth { get; }

    /// <summary>Kd by Lee et al. 2013 (1/m).</summary>
    /// <param name="zenithDegrees">Zenith angle of the sun in air (degrees), 0-90.</param>
    public Spectrum DiffuseAttenuation(double zenithDegrees = Light.SecchiDepth.StandardZenithDegrees) =>
        Light.DiffuseAttenuation.OfSpectrum(Optics, zenithDegrees);

    /// <summary>
    /// The water of a kind whose predicted Secchi depth is the one given. One amount is fitted; the other constituents go
    /// with it in the proportions of <see cref="Mixture"/>.
    /// </summary>
    /// <param name="kind">Kind of water.</param>
    /// <param name="secchiDepth">Secchi depth (m), 0.02-100.</param>
    /// <param name="temperatureCelsius">Temperature (C), -2 to 40.</param>
    /// <param name="salinity">Practical salinity, 0-42.</param>
    /// <returns>The water; when the kind cannot be that clear or murky, the nearest one of the kind with its status.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static OpticalWater FromSecchi(WaterKind kind, double secchiDepth, double temperatureCelsius = 20.0, double salinity = 35.0)
    {
        _ = Guard.InRange(secchiDepth, 0.02, 100.0, nameof(secchiDepth), "m");
        (double low, double high) = AmountRange(kind);
        InherentOptics Optics(double logAmount) => InherentOptics.Of(Mixture(kind, Math.Exp(logAmount)), temperatureCelsius, salinity);

        // The residual is the logarithm of a ratio, of order one, which suits the root finder's single accuracy.
        double Residual(double logAmount) => Math.Log(Light.SecchiDepth.Of(Optics(logAmount)) / secchiDepth);
        double logLow = Math.Log(low), logHigh = Math.Log(high);
        double atLow = Residual(logLow), atHigh = Residual(logHigh);

        double logFit;
        WaterFitStatus status = WaterFitStatus.Matched;
        if (atLow <= 0.0)
        {
            logFit = logLow;
            status = atLow < -1e-9 ? WaterFitStatus.ClearestOfKind : status;
        }
        else if (atHigh >= 0.0)
        {
            logFit = logHigh;
            status = atHigh > 1e-9 ? WaterFitStatus.MurkiestOfKind : status;
        }
        else
        {
            logFit = Brent.FindRoot(Residual, logLow, logHigh, 1e-10, 200);
        }

        InherentOptics optics = Optics(logFit);
        return new OpticalWater(optics, Mixture(kind, Math.Exp(logFit)), status) { Asked = (kind, secchiDepth) };
    }

    /// <summary>The water with the constituents given.</summary>
    /// <param name="constituents">What is in the water.</param>
    /// <param name="temperatureCelsius">Temperature (C), -2 to 40.</param>
    /// <param name="salinity">Practical salinity, 0-42.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static OpticalWater FromConstituents(WaterConstituents constituents, double temperatureCelsius = 20.0, double salinity = 35.0)
    {
        ArgumentNullException.ThrowIfNull(constituents);
        return new OpticalWater(InherentOptics.Of(constituents, temperatureCelsius, salinity), constituents, WaterFitStatus.Matched);
    }

    /// <summary>
    /// A Jerlov type: scattering by Solonenko and Mobley 2015 (solonenko2015inherent), absorption such that Kd with the sun 30 degrees from
    /// the zenith is the one that defines the type, nowhere below that of the water itself. Kd of types I to III by Austin and Petzold 1986
    /// (austin1986spectral), of the coastal types by the second edition of Jerlov's tables (1976, jerlov1976marine), up to 700 nm.
    /// </summary>
    /// <param name="type">The type.</param>
    public static OpticalWater FromJerlov(JerlovType type)
    {
        InherentOptics published = PublishedOptics(type);
        Spectrum pure = PureWater.Absorption();
        ReferenceTable table = ReferenceTable.Optics(type <= JerlovType.III ? "jerlov_kd_austin_petzold1986" : "jerlov_kd");
        double[] nm = table.Numbers("wavelength_nm"), defining = table.Numbers(Label(type));
        double[] absorption = published.Absorption.ToArray();
        for (int i = 0; i < Grid.Count && Grid.WavelengthsNm[i] <= nm[^1]; i++)
        {
            if (Grid.WavelengthsNm[i] < nm[0])
                continue;
            double wanted = Spectrum.InterpolateTable(nm, defining, Grid.WavelengthsNm[i]);
            double Excess(double a) => Light.DiffuseAttenuation.Lee2013(
                a, published.Backscattering[i], published.WaterBackscattering[i], Light.SecchiDepth.StandardZenithDegrees) - wanted;
            absorption[i] = Excess(pure[i]) >= 0.0 ? pure[i] : Bisection.FindRoot(Excess, pure[i], wanted, 1e-9, 200);
        }

        // Beyond the table the matter at its end is kept, and the water follows its own spectrum.
        int last = Grid.NearestIndex(nm[^1]);
        for (int i = last + 1; i < Grid.Count; i++)
            absorption[i] = absorption[last] + (pure[i] - pure[last]);
        var optics = new InherentOptics(new Spectrum(Grid, absorption), published.Scattering, published.Backscattering, published.WaterBackscattering);
        return new OpticalWater(optics, null, WaterFitStatus.Matched);
    }

    /// <summary>
    /// The inherent optics of a Jerlov type as published by Solonenko and Mobley 2015, who fitted them to the first edition of Jerlov's tables
    /// (1968), interpolated linearly in wavelength; beyond 700 nm the matter at 700 nm is kept and the water follows its own spectrum. The
    /// particles backscatter 1.83 % (Petzold 1972).
    /// </summary>
    /// <param name="type">The type.</param>
    internal static InherentOptics PublishedOptics(JerlovType type)
    {
        ReferenceTable table = ReferenceTable.Optics("jerlov_iop_solonenko2015");
        string label = Label(type);
        string[] types = table.Text("type");
        int[] rows = Enumerable.Range(0, types.Length).Where(i => types[i] == label).ToArray();
        double[] nm = Pick("wavelength_nm"), a = Pick("a_per_m"), b = Pick("b_per_m");
        double[] Pick(string column)
        {
            double[] all = table.Numbers(column);
            return [.. rows.Select(i => all[i])];
        }

        Spectrum pure = PureWater.Absorption();
        Spectrum pureScattering = PureWater.Scattering();
        Spectrum absorption = Spectrum.FromTable(Grid, nm, a), scattering = Spectrum.FromTable(Grid, nm, b);

        // Beyond the table (700 nm) interpolation holds the last value: add the rise of pure water to it. Nowhere may the
        // rounded figures of the table fall below the water itself.
        int last = Grid.NearestIndex(700.0);
        absorption = new Spectrum(Grid, [.. Enumerable.Range(0, Grid.Count).Select(i =>
            Math.Max(pure[i], absorption[i] + (i > last ? pure[i] - pure[last] : 0.0)))]);
        scattering = scattering.Combine(pureScattering, Math.Max);
        Spectrum backscattering = scattering.Combine(pureScattering, (all, water) =>
            (0.5 * water) + (InherentOptics.ParticleBackscatteringShare * (all - water)));
        return new InherentOptics(absorption, scattering, backscattering, 0.5 * pureScattering);
    }

    /// <summary>The name of a Jerlov type as printed in the literature.</summary>
    /// <param name="type">The type.</param>
    public static string Label(JerlovType type) => type switch
    {
        JerlovType.Coastal1 => "1C",
        JerlovType.Coastal3 => "3C",
        JerlovType.Coastal5 => "5C",
        JerlovType.Coastal7 => "7C",
        JerlovType.Coastal9 => "9C",
        _ => type.ToString(),
    };

    /// <summary>
    /// The constituents of a kind of water by its leading amount: chlorophyll in mg/m3 for clear ocean and coastal green,
    /// CDOM(440) in 1/m for tannin-stained, mineral in g/m3 for silty.
    /// </summary>
    /// <param name="kind">Kind of water.</param>
    /// <param name="amount">The leading amount, above 0.</param>
    /// <remarks>
    /// Clear ocean: CDOM(440) = 0.2 (0.00635 + 0.06 Chl^0.65), Morel and Maritorena 2001 after Prieur and Sathyendranath 1981.
    /// The proportions of the other kinds are set so that beam attenuation and diffuse attenuation at a Secchi depth Z agree with
    /// what is measured together, Z (c + Kd) near 8.7 (tyler1968secchi, holmes1970secchi), with a backscattering share of all
    /// particles of 1.3-1.9 %: coastal green CDOM(440) 0.08 Chl^0.85 and mineral 0.5 Chl^0.55 g/m3; tannin-stained chlorophyll
    /// 4.2 g^0.75 mg/m3 and mineral 1.05 g^0.75 g/m3 at CDOM(440) g; silty chlorophyll 2 and CDOM 0.3 at 10 g/m3 of mineral, both with its
    /// square root. Give the constituents when they are known.
    /// </remarks>
    public static WaterConstituents Mixture(WaterKind kind, double amount) => kind switch
    {
        WaterKind.ClearOcean => new(amount, 0.2 * (0.00635 + (0.06 * Math.Pow(amount, 0.65))), 0.0),
        WaterKind.CoastalGreen => Coastal(amount, 0.08 * Math.Pow(amount, 0.85), 0.5 * Math.Pow(amount, 0.55)),
        WaterKind.TanninStained => Coastal(4.2 * Math.Pow(amount, 0.75), amount, 1.05 * Math.Pow(amount, 0.75)),
        WaterKind.Silty => Coastal(2.0 * Math.Sqrt(amount / 10.0), 0.3 * Math.Sqrt(amount / 10.0), amount),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown water kind."),
    };

    private static WaterConstituents Coastal(double chlorophyll, double dissolved, double mineral) =>
        new(chlorophyll, dissolved, mineral, organicBackscatteringShare: WaterConstituents.CoastalBackscatteringShare);

    private static (double Low, double High) AmountRange(WaterKind kind) => kind switch
    {
        WaterKind.ClearOcean => (0.01, 30.0),
        WaterKind.CoastalGreen => (0.01, 300.0),
        WaterKind.TanninStained => (0.002, 50.0),
        WaterKind.Silty => (0.005, 2000.0),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown water kind."),
    };
}
