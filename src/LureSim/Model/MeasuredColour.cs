namespace LureSim.Model;

/// <summary>A colour by its measured reflectance.</summary>
/// <param name="Name">Name.</param>
/// <param name="WavelengthsNm">Wavelengths (nm), rising, two or more.</param>
/// <param name="Reflectances">Reflectance at each, 0 to 1.</param>
/// <exception cref="ArgumentNullException">A part is missing.</exception>
/// <exception cref="ArgumentException">There are fewer than two wavelengths, they do not rise, or a value lies outside 0 to 1.</exception>
public sealed record MeasuredColour(string Name, IReadOnlyList<double> WavelengthsNm, IReadOnlyList<double> Reflectances)
{
    /// <summary>Name.</summary>
    public string Name { get; init => field = Guard.Given(value); } = Guard.Given(Name);

    /// <summary>Wavelengths (nm), rising, two or more.</summary>
    public IReadOnlyList<double> WavelengthsNm { get; init => field = Rising(value); } = Rising(WavelengthsNm);

    /// <summary>Reflectance at each wavelength, 0 to 1. That there are as many as wavelengths is checked where they become a spectrum.</summary>
    public IReadOnlyList<double> Reflectances { get; init => field = Shares(value); } = Shares(Reflectances);

    private static IReadOnlyList<double> Rising(IReadOnlyList<double> value)
    {
        Guard.Given(value, nameof(WavelengthsNm));
        Guard.That(value.Count >= 2, "There must be two or more wavelengths.", nameof(WavelengthsNm));
        Guard.That(value[0] > 0 && value.Zip(value.Skip(1), (before, after) => after > before).All(rises => rises), "The wavelengths must be above 0 and rise.", nameof(WavelengthsNm));
        return value;
    }

    private static IReadOnlyList<double> Shares(IReadOnlyList<double> value)
    {
        foreach (double share in Guard.Given(value, nameof(Reflectances)))
            Limits.Share.Check(share, nameof(Reflectances));
        return value;
    }
}
