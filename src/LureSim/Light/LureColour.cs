using LureSim.Data;

namespace LureSim.Light;

/// <summary>Where the spectrum of a colour comes from.</summary>
public enum ColourBasis
{
    /// <summary>Measured reflectance.</summary>
    Measured,

    /// <summary>Composed from measured reflectances or drawn after typical pigments: a stand-in.</summary>
    StandIn,

    /// <summary>Reconstructed from a screen colour: one of many spectra with that colour.</summary>
    Reconstructed,
}

/// <summary>The surface of a lure: diffuse reflectance and fluorescent dyes. Immutable.</summary>
public sealed record LureColour
{
    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;
    private readonly Fluorophore[] dyes;

    /// <summary>Makes a colour.</summary>
    /// <param name="name">Plain words.</param>
    /// <param name="reflectance">Diffuse reflectance, 0-1, on <see cref="WavelengthGrid.Visible"/>.</param>
    /// <param name="basis">Where the spectrum comes from.</param>
    /// <param name="dyes">Fluorescent dyes, if any. Reflectance and the uptake of all dyes may not add to more than 1 anywhere.</param>
    /// <exception cref="ArgumentException">Empty name, reflectance outside 0-1, wrong grid, or more than 1 in all.</exception>
    public LureColour(string name, Spectrum reflectance, ColourBasis basis, params Fluorophore[] dyes)
        : this(name, reflectance, basis, dyes, null, null, null)
    {
    }

    /// <summary>Makes a colour that also mirrors or lets light through.</summary>
    /// <param name="name">Plain words.</param>
    /// <param name="reflectance">Diffuse reflectance, 0-1, on <see cref="WavelengthGrid.Visible"/>.</param>
    /// <param name="basis">Where the spectrum comes from.</param>
    /// <param name="dyes">Fluorescent dyes, if any.</param>
    /// <param name="mirrorReflectance">Mirror-like reflectance of foil or scales, 0-1; null for none.</param>
    /// <param name="diffuseTransmittance">Light let through and spread, 0-1; null for none.</param>
    /// <param name="clearTransmittance">Light let through straight, so that the water behind shows, 0-1; null for none.</param>
    /// <exception cref="ArgumentException">Empty name, a share outside 0-1, wrong grid, or shares that add to more than 1 somewhere.</exception>
    public LureColour(
        string name,
        Spectrum reflectance,
        ColourBasis basis,
        IReadOnlyList<Fluorophore> dyes,
        Spectrum? mirrorReflectance,
        Spectrum? diffuseTransmittance,
        Spectrum? clearTransmittance)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(reflectance);
        ArgumentNullException.ThrowIfNull(dyes);
        Spectrum none = Spectrum.Constant(Grid, 0.0);
        MirrorReflectance = mirrorReflectance ?? none;
        DiffuseTransmittance = diffuseTransmittance ?? none;
        ClearTransmittance = clearTransmittance ?? none;
        foreach (Spectrum share in new[] { reflectance, MirrorReflectance, DiffuseTransmittance, ClearTransmittance })
        {
            if (!share.Grid.Equals(Grid))
                throw new ArgumentException("A lure colour must be on the visible grid of the model.", nameof(reflectance));
            if (share.Minimum() < 0.0 || share.Maximum() > 1.0)
                throw new ArgumentException("A reflectance or transmittance must lie between 0 and 1.", nameof(reflectance));
        }

        for (int i = 0; i < Grid.Count; i++)
        {
            double all = reflectance[i] + MirrorReflectance[i] + DiffuseTransmittance[i] + ClearTransmittance[i] + dyes.Sum(d => d.Excitation[i]);
            if (all > 1.0 + 1e-12)
                throw new ArgumentException($"At {Grid.WavelengthsNm[i]} nm reflected, transmitted and fluorescing shares add to more than 1.", nameof(reflectance));
        }

        Name = name;
        Reflectance = reflectance;
        Basis = basis;
        this.dyes = [.. dyes];
    }

    /// <summary>Mirror-like reflectance, 0-1; 0 for most colours.</summary>
    public Spectrum MirrorReflectance { get; }

    /// <summary>Share of light let through and spread, 0-1; 0 for most colours.</summary>
    public Spectrum DiffuseTransmittance { get; }

    /// <summary>Share of light let through straight, 0-1; 0 for most colours.</summary>
    public Spectrum ClearTransmittance { get; }

    /// <summary>Plain words.</summary>
    public string Name { get; }

    /// <summary>Diffuse reflectance, 0-1.</summary>
    public Spectrum Reflectance { get; }

    /// <summary>Where the spectrum comes from.</summary>
    public ColourBasis Basis { get; }

    /// <summary>Fluorescent dyes; empty for most colours.</summary>
    public ReadOnlySpan<Fluorophore> Dyes => dyes;

    /// <summary>True when the colour fluoresces.</summary>
    public bool IsFluorescent => dyes.Length > 0;

    /// <summary>A colour from "#RRGGBB", with the smoothest reflectance that has it (Burns 2020).</summary>
    /// <param name="name">Plain words.</param>
    /// <param name="hex">"#RRGGBB".</param>
    /// <exception cref="FormatException">The text is not of that form.</exception>
    public static LureColour FromHex(string name, string hex) => Srgb.TryParse(hex, out Srgb colour)
        ? new LureColour(name, ReflectanceReconstruction.FromSrgb(colour), ColourBasis.Reconstructed)
        : throw new FormatException($"'{hex}' is not a colour of the form #RRGGBB.");

    /// <summary>A colour from a measured table with the columns wavelength_nm and reflectance (0-1), interpolated, end values held.</summary>
    /// <param name="name">Plain words.</param>
    /// <param name="csv">The table; '#' lines are comments.</param>
    /// <exception cref="FormatException">The table cannot be read, or a value lies outside 0-1.</exception>
    public static LureColour FromCsv(string name, string csv)
    {
        ReferenceTable table = ReferenceTable.Parse(name, csv);
        try
        {
            return FromTable(name, table.Numbers("wavelength_nm"), table.Numbers("reflectance"));
        }
        catch (ArgumentException e)
        {
            throw new FormatException($"{name}: {e.Message}", e);
        }
    }

    /// <summary>A colour from a measured reflectance, interpolated, end values held.</summary>
    /// <param name="name">Plain words.</param>
    /// <param name="wavelengthsNm">Two or more wavelengths (nm), rising.</param>
    /// <param name="reflectances">Reflectance at each, 0-1.</param>
    /// <exception cref="ArgumentException">Lengths differ, wavelengths do not rise, or a value lies outside 0-1.</exception>
    public static LureColour FromTable(string name, IReadOnlyList<double> wavelengthsNm, IReadOnlyList<double> reflectances)
    {
        ArgumentNullException.ThrowIfNull(wavelengthsNm);
        ArgumentNullException.ThrowIfNull(reflectances);
        return new LureColour(name, Spectrum.FromTable(Grid, [.. wavelengthsNm], [.. reflectances]), ColourBasis.Measured);
    }

    /// <summary>Radiant exitance of the surface under an irradiance (W/(m2 nm)).</summary>
    /// <param name="irradiance">Irradiance on the surface (W/(m2 nm)).</param>
    public Spectrum Exitance(Spectrum irradiance)
    {
        ArgumentNullException.ThrowIfNull(irradiance);
        double[] exitance = new double[Grid.Count];
        AddExitance(irradiance.Values, exitance);
        return new Spectrum(Grid, exitance);
    }

    /// <summary>Writes the exitance under an irradiance into a span, without allocation.</summary>
    internal void AddExitance(ReadOnlySpan<double> irradiance, Span<double> exitance)
    {
        ReadOnlySpan<double> reflectance = Reflectance.Values;
        for (int i = 0; i < irradiance.Length; i++)
            exitance[i] += reflectance[i] * irradiance[i];
        foreach (Fluorophore dye in dyes)
            dye.AddExitance(irradiance, exitance);
    }
}
