namespace LureSim.Report.Figures;

/// <summary>One lure colour at one depth.</summary>
/// <param name="Unadapted">Screen colour (#rrggbb) as a camera set for the surface, or a diver's first glance, shows it.</param>
/// <param name="Adapted">Screen colour (#rrggbb) as an eye used to the light at that depth sees it.</param>
/// <param name="Word">The adapted view in a word: bright, muted, dark, near black, unseen.</param>
/// <param name="Lightness">CIE lightness L* of the adapted view, 0 to 100.</param>
public sealed record PlateCell(string Unadapted, string Adapted, string Word, double Lightness);

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
