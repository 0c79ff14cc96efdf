namespace LureSim.Light;

/// <summary>Light on the water: plane irradiance on a horizontal surface just above it, split into sun and sky.</summary>
/// <param name="Direct">Irradiance from the sun's (or moon's) disc (W/(m2 nm)) on the horizontal.</param>
/// <param name="Diffuse">Irradiance from sky and cloud (W/(m2 nm)) on the horizontal.</param>
/// <param name="ZenithAngle">Angle of the direct beam from the vertical in air (rad), 0 to pi/2.</param>
/// <param name="Regime">Which part of the day the level comes from.</param>
/// <param name="ByMoon">True where the moon is what lights the water.</param>
public sealed record SurfaceLight(Spectrum Direct, Spectrum Diffuse, double ZenithAngle, LightRegime Regime, bool ByMoon)
{
    /// <summary>Total irradiance (W/(m2 nm)).</summary>
    public Spectrum Total { get; } = Direct + Diffuse;

    /// <summary>Illuminance on the horizontal (lx).</summary>
    public double Illuminance => Colorimetry.MaximumLuminousEfficacy * Total.Dot(Colorimetry.YBar);
}

/// <summary>Which source and which part of the model a light level comes from.</summary>
public enum LightRegime
{
    /// <summary>Sun above 10 degrees: spectrum and level from the atmosphere model.</summary>
    Day,

    /// <summary>Sun between the horizon and 10 degrees: level passes over to the published illuminance curve.</summary>
    LowSun,

    /// <summary>Sun 0-18 degrees below the horizon: level from the published illuminance curve, shape from the low-sun sky.</summary>
    Twilight,

    /// <summary>Sun lower still: moon, if any, and night sky.</summary>
    Night,
}
