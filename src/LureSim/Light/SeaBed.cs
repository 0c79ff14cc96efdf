namespace LureSim.Light;

/// <summary>Kinds of bottom by look.</summary>
public enum SeaBedKind
{
    /// <summary>Pale sand.</summary>
    Sand,

    /// <summary>Dark mud.</summary>
    Mud,

    /// <summary>Grass bed, seen from above.</summary>
    Grass,

    /// <summary>Shell and oyster rubble.</summary>
    Shell,
}

/// <summary>The bottom as a diffuse reflector.</summary>
/// <param name="Depth">Depth of the bottom (m).</param>
/// <param name="Reflectance">Diffuse reflectance, 0-1.</param>
/// <param name="Basis">Where the reflectance comes from.</param>
public sealed record SeaBed(double Depth, Spectrum Reflectance, ColourBasis Basis)
{
    /// <summary>A bottom of a kind. The spectra are drawn after typical published shapes (from memory): stand-ins.</summary>
    /// <param name="kind">Kind of bottom.</param>
    /// <param name="depth">Depth (m), 0.05-1000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside its range.</exception>
    public static SeaBed Of(SeaBedKind kind, double depth)
    {
        _ = Guard.InRange(depth, 0.05, 1000.0, nameof(depth), "m");
        double Ramp(double nm, double at400, double at700) => at400 + ((at700 - at400) * Math.Clamp((nm - 400.0) / 300.0, 0.0, 1.2));
        double Bell(double nm, double peak, double width) => Math.Exp(-0.5 * (nm - peak) * (nm - peak) / (width * width));
        Spectrum reflectance = Spectrum.FromFunction(WavelengthGrid.Visible, nm => kind switch
        {
            SeaBedKind.Sand => Ramp(nm, 0.20, 0.40),
            SeaBedKind.Mud => Ramp(nm, 0.05, 0.12),
            SeaBedKind.Grass => 0.025 + (0.06 * Bell(nm, 557.0, 32.0)) + (0.15 / (1.0 + Math.Exp(-(nm - 715.0) / 10.0))),
            SeaBedKind.Shell => Ramp(nm, 0.22, 0.35),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of bottom."),
        });
        return new SeaBed(depth, reflectance, ColourBasis.StandIn);
    }
}
