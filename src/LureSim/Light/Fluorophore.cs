namespace LureSim.Light;

/// <summary>A dye that takes up short-wave light and gives part of it back at longer waves.</summary>
/// <remarks>
/// The bispectral (Donaldson) matrix of one dye is the product of its excitation and its emission, in photons:
/// N(lambda) = Q e(lambda) sum over lambda' &lt;= lambda of x(lambda') N0(lambda') (Donaldson 1954, donaldson1954spectrophotometry). Photons
/// never come back with more energy than the ones taken up (the sum ends at lambda), so no light makes energy.
/// </remarks>
public sealed record Fluorophore
{
    /// <summary>Makes a dye.</summary>
    /// <param name="excitation">Share of the arriving photons that the dye takes up, 0-1.</param>
    /// <param name="emission">Shape of the emission in photons a nm; 0 or more, scaled to an integral of 1.</param>
    /// <param name="quantumYield">Photons given back for each taken up, 0-1.</param>
    /// <exception cref="ArgumentException">Excitation outside 0-1, emission negative or zero everywhere.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Quantum yield outside 0-1.</exception>
    public Fluorophore(Spectrum excitation, Spectrum emission, double quantumYield)
    {
        ArgumentNullException.ThrowIfNull(excitation);
        ArgumentNullException.ThrowIfNull(emission);
        if (excitation.Minimum() < 0.0 || excitation.Maximum() > 1.0)
            throw new ArgumentException("The excitation of a dye must lie between 0 and 1.", nameof(excitation));
        double sum = emission.Values.ToArray().Sum() * emission.Grid.StepNm;
        if (emission.Minimum() < 0.0 || !(sum > 0.0))
            throw new ArgumentException("The emission of a dye must be 0 or more, and not 0 everywhere.", nameof(emission));
        Excitation = excitation;
        Emission = (1.0 / sum) * emission;
        QuantumYield = Guard.InRange(quantumYield, 0.0, 1.0, nameof(quantumYield), "");
    }

    /// <summary>Share of the arriving photons taken up.</summary>
    public Spectrum Excitation { get; }

    /// <summary>Emission in photons a nm, integral 1.</summary>
    public Spectrum Emission { get; }

    /// <summary>Photons given back for each taken up, 0-1.</summary>
    public double QuantumYield { get; }

    /// <summary>Adds the exitance that this dye gives under an irradiance, both W/(m2 nm), on the model's grid.</summary>
    /// <param name="irradiance">Irradiance at each wavelength.</param>
    /// <param name="exitance">Exitance to add to.</param>
    internal void AddExitance(ReadOnlySpan<double> irradiance, Span<double> exitance)
    {
        ReadOnlySpan<double> wavelengths = Excitation.Grid.WavelengthsNm;
        ReadOnlySpan<double> excitation = Excitation.Values, emission = Emission.Values;
        double taken = 0.0;
        double factor = QuantumYield * Excitation.Grid.StepNm;
        for (int i = 0; i < irradiance.Length; i++)
        {
            // Photons are energy times wavelength; the constants hc cancel on the way back to energy.
            taken += excitation[i] * irradiance[i] * wavelengths[i];
            exitance[i] += factor * taken * emission[i] / wavelengths[i];
        }
    }
}
