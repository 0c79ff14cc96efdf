namespace LureSim.Report.Figures;

/// <summary>One lure colour at one depth.</summary>
/// <param name="Camera">Screen colour (#rrggbb) as a camera set for the surface shows it.</param>
/// <param name="Eye">Screen colour (#rrggbb) as a person's eye sees it after some minutes there.</param>
/// <param name="Word">The eye's view in a word: bright, light, muted, dark, near black, unseen.</param>
/// <param name="Lightness">CIE lightness L* of the eye's view, 0 to 100.</param>
public sealed record PlateCell(string Camera, string Eye, string Word, double Lightness);

/// <summary>Lure colours against depth.</summary>
/// <param name="Depths">Depths (m), increasing.</param>
/// <param name="Colours">Names of the colours.</param>
/// <param name="Cells">Cells, [depth][colour].</param>
public sealed record ColourPlate(IReadOnlyList<double> Depths, IReadOnlyList<string> Colours, IReadOnlyList<IReadOnlyList<PlateCell>> Cells);

/// <summary>Downwelling light against wavelength at a few depths.</summary>
/// <param name="WavelengthsNm">Wavelengths (nm), increasing.</param>
/// <param name="Depths">Depths (m), increasing; the first is just below the surface.</param>
/// <param name="Irradiance">Spectral irradiance (W m-2 nm-1), [depth][wavelength].</param>
public sealed record SpectrumPlate(IReadOnlyList<double> WavelengthsNm, IReadOnlyList<double> Depths, IReadOnlyList<IReadOnlyList<double>> Irradiance);
