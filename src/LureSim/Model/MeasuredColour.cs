namespace LureSim.Model;

/// <summary>A colour by its measured reflectance.</summary>
public sealed record MeasuredColour
{
    /// <summary>Makes a colour.</summary>
    /// <param name="name">Name.</param>
    /// <param name="wavelengthsNm">Wavelengths (nm), rising, two or more.</param>
    /// <param name="reflectances">Reflectance at each, 0 to 1.</param>
    /// <exception cref="ArgumentNullException">A part is missing.</exception>
    /// <exception cref="ArgumentException">The lengths differ, there are fewer than two wavelengths, they do not rise, or a reflectance lies outside 0 to 1.</exception>
    public MeasuredColour(string name, IReadOnlyList<double> wavelengthsNm, IReadOnlyList<double> reflectances)
    {
        Name = Guard.Given(name, nameof(Name));
        WavelengthsNm = Guard.Given(wavelengthsNm, nameof(WavelengthsNm));
        Reflectances = Guard.Given(reflectances, nameof(Reflectances));
        Guard.That(wavelengthsNm.Count >= 2, "There must be two or more wavelengths.", nameof(WavelengthsNm));
        Guard.That(reflectances.Count == wavelengthsNm.Count, "There must be a reflectance for each wavelength.", nameof(Reflectances));
        for (int i = 0; i < wavelengthsNm.Count; i++)
        {
            Guard.That(double.IsFinite(wavelengthsNm[i]) && (i == 0 || wavelengthsNm[i] > wavelengthsNm[i - 1]), "The wavelengths must rise.", nameof(WavelengthsNm));
            Limits.Share.Check(reflectances[i], nameof(Reflectances));
        }
    }

    /// <summary>Name.</summary>
    public string Name { get; }

    /// <summary>Wavelengths (nm), rising, two or more.</summary>
    public IReadOnlyList<double> WavelengthsNm { get; }

    /// <summary>Reflectance at each wavelength, 0 to 1.</summary>
    public IReadOnlyList<double> Reflectances { get; }
}
