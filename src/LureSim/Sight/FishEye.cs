using LureSim.Data;
using LureSim.Light;

namespace LureSim.Sight;

/// <summary>How well founded a figure about a fish's eye is.</summary>
public enum EyeBasis
{
    /// <summary>A published measurement of this species.</summary>
    Measured,

    /// <summary>No measurement was found: borrowed from fish of like habit. Results must say so.</summary>
    StandIn,
}

/// <summary>One class of photoreceptor.</summary>
/// <param name="Name">Kind of receptor in words.</param>
/// <param name="PeakNm">Wavelength of peak absorbance (nm).</param>
/// <param name="Chromophore">A1 or A2.</param>
/// <param name="Basis">How well founded the peak is.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Abundance">Relative number of such receptors in the retina, above 0.</param>
public sealed record Photoreceptor(string Name, double PeakNm, Chromophore Chromophore, EyeBasis Basis, string Source, double Abundance)
{
    /// <summary>Shortest wavelength (nm) at which the peak may lie; the peak itself where no range is known.</summary>
    public double ShortestPeakNm { get; init; } = PeakNm;

    /// <summary>Longest wavelength (nm) at which the peak may lie; the peak itself where no range is known.</summary>
    public double LongestPeakNm { get; init; } = PeakNm;

    /// <summary>Wavelength at which the lens lets half the light through (nm), 405, falling over some 10 nm (after Utne-Palm and Bowmaker 2006, utnepalm2006spectral, little below 410 nm in a coastal goby; a stand-in for other fish).</summary>
    public const double LensCutoffNm = 405.0;

    /// <summary>Relative quantum sensitivity: pigment (peak about 1) times lens.</summary>
    public Spectrum Sensitivity { get; } = VisualPigment.Template(PeakNm, Chromophore)
        * Spectrum.FromFunction(WavelengthGrid.Visible, nm => 1.0 / (1.0 + Math.Exp(-(nm - LensCutoffNm) / 5.0)));

    /// <summary>Relative quantum catch from a spectrum in energy units: the sum of sensitivity times photons.</summary>
    /// <param name="radiance">Radiance or irradiance in energy units a nm.</param>
    public double Catch(Spectrum radiance)
    {
        ArgumentNullException.ThrowIfNull(radiance);
        double sum = 0.0;
        WavelengthGrid grid = radiance.Grid;
        for (int i = 0; i < grid.Count; i++)
            sum += Sensitivity[i] * radiance[i] * grid.WavelengthsNm[i];
        return sum * grid.StepNm;
    }
}

/// <summary>The receptors of a target fish.</summary>
/// <param name="CommonName">Common name.</param>
/// <param name="Species">Scientific name.</param>
/// <param name="Cones">Cone classes, short to long wave; at least one.</param>
/// <param name="Rod">The rod.</param>
public sealed record FishEye(string CommonName, string Species, IReadOnlyList<Photoreceptor> Cones, Photoreceptor Rod)
{
    /// <summary>Weber fraction of the commonest cone, 0.05: usual in models of fish (assumed; measured in few species).</summary>
    public const double WeberFraction = 0.05;

    /// <summary>Noise of each cone class, from the Weber fraction and the abundances.</summary>
    public IReadOnlyList<double> ConeNoise { get; } = ReceptorNoise.Noise(WeberFraction, [.. Cones.Select(c => c.Abundance)]);

    /// <summary>
    /// The same eye with its borrowed cones at the shortest, then at the longest peaks that they may have; empty where every cone is
    /// measured. What differs between them cannot be told.
    /// </summary>
    public IReadOnlyList<FishEye> Ends => Basis == EyeBasis.Measured ? [] : [At(cone => cone.ShortestPeakNm), At(cone => cone.LongestPeakNm)];

    /// <summary>The same eye with its borrowed cones at a share of the way from the shortest to the longest peaks that they may have; itself where every cone is measured.</summary>
    /// <param name="share">Share of the way, 0 to 1; all borrowed cones go together, as those of a fish shift with its water.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside 0 to 1.</exception>
    public FishEye Between(double share)
    {
        Guard.InRange(share, 0.0, 1.0);
        return Basis == EyeBasis.Measured ? this : At(cone => cone.ShortestPeakNm + (share * (cone.LongestPeakNm - cone.ShortestPeakNm)));
    }

    private FishEye At(Func<Photoreceptor, double> peak) => new(
        CommonName, Species, [.. Cones.Select(c => c.Basis == EyeBasis.StandIn ? new Photoreceptor(c.Name, peak(c), c.Chromophore, c.Basis, c.Source, c.Abundance) : c)], Rod);

    /// <summary>Measured when every cone is; a stand-in as soon as one is borrowed.</summary>
    public EyeBasis Basis => Cones.All(c => c.Basis == EyeBasis.Measured) ? EyeBasis.Measured : EyeBasis.StandIn;
}

/// <summary>Eyes of the target fish in the table of visual pigments.</summary>
public static class FishEyes
{
    /// <summary>All fish of the table with at least one cone and a rod.</summary>
    public static IReadOnlyList<FishEye> All { get; } = Load();

    /// <summary>Finds a fish by its common or scientific name, whatever the case.</summary>
    /// <param name="name">Name such as "red drum".</param>
    /// <param name="eye">The eye.</param>
    /// <returns>False when the table has no cones for a fish of that name.</returns>
    public static bool TryFind(string name, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out FishEye? eye)
    {
        eye = All.FirstOrDefault(e => string.Equals(e.CommonName, name?.Trim(), StringComparison.OrdinalIgnoreCase)
            || string.Equals(e.Species, name?.Trim(), StringComparison.OrdinalIgnoreCase));
        return eye is not null;
    }

    /// <summary>The eye of a fish, or, when the table has none, that of a shallow temperate coastal fish (winter flounder's pigments) under the name asked for, marked as a stand-in.</summary>
    /// <param name="name">Name of the target fish.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public static FishEye FindOrStandIn(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        if (TryFind(name, out FishEye? eye))
            return eye;
        FishEye model = All.Single(e => e.CommonName == "winter flounder adult");
        Photoreceptor Borrow(Photoreceptor r) => r with { Basis = EyeBasis.StandIn, Source = "borrowed from winter flounder" };
        return new FishEye(name.Trim(), "", [.. model.Cones.Select(Borrow)], Borrow(model.Rod));
    }

    private static List<FishEye> Load()
    {
        ReferenceTable table = ReferenceTable.Optics("fish_visual_pigments");
        string[] species = table.Text("species"), common = table.Text("common_name"), receptor = table.Text("receptor");
        string[] chromophore = table.Text("chromophore"), basis = table.Text("basis"), source = table.Text("source");
        double[] peak = table.Numbers("lambda_max_nm"), low = table.Numbers("low_nm"), high = table.Numbers("high_nm");
        var eyes = new List<FishEye>();
        foreach (IGrouping<(string, string), int> rows in Enumerable.Range(0, table.RowCount).GroupBy(i => (species[i], common[i])))
        {
            Photoreceptor Make(int i) => new(
                receptor[i],
                peak[i],
                chromophore[i] == "A2" ? Chromophore.A2 : Chromophore.A1,
                basis[i] == "measured" ? EyeBasis.Measured : EyeBasis.StandIn,
                source[i],

                // One single cone to two double cones: the square mosaic common in shore fish (assumed where not stated).
                receptor[i].Contains("single", StringComparison.Ordinal) || receptor[i].Contains("short", StringComparison.Ordinal) ? 1.0 : 2.0)
            {
                ShortestPeakNm = double.IsNaN(low[i]) ? peak[i] : low[i],
                LongestPeakNm = double.IsNaN(high[i]) ? peak[i] : high[i],
            };
            Photoreceptor[] cones = rows.Where(i => receptor[i].Contains("cone", StringComparison.Ordinal) && receptor[i] != "ultraviolet cone")
                .Select(Make).OrderBy(r => r.PeakNm).ToArray();
            Photoreceptor[] rods = rows.Where(i => receptor[i] == "rod").Select(Make).ToArray();
            if (cones.Length > 0 && rods.Length > 0)
                eyes.Add(new FishEye(rows.Key.Item2, rows.Key.Item1, cones, rods[0]));
        }

        return eyes;
    }
}
