using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts what the light model says of itself into words.</summary>
public static class LightWords
{
    /// <summary>A part of the day.</summary>
    /// <param name="regime">The part.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no part of the day.</exception>
    public static string Regime(LightRegime regime) => regime switch
    {
        LightRegime.Day => "Day",
        LightRegime.LowSun => "Low sun",
        LightRegime.Twilight => "Twilight",
        LightRegime.Night => "Night",
        _ => throw new ArgumentOutOfRangeException(nameof(regime), regime, "Not a part of the day."),
    };

    /// <summary>What the model leaves out in this light, in one sentence.</summary>
    /// <param name="light">The light.</param>
    /// <exception cref="ArgumentNullException"><paramref name="light"/> is null.</exception>
    public static string Note(SurfaceLight light)
    {
        ArgumentNullException.ThrowIfNull(light);
        return light.ByMoon ? "Moonlight from a published illuminance curve, good to a factor of two; colour vision has ended or is ending." : light.Regime switch
        {
            LightRegime.Day => "Clear-sky spectrum of a clean rural atmosphere; haze and waves are left out.",
            LightRegime.LowSun => "Level from a published illuminance curve, good to some tens of per cent; a flat surface underrates a low sun.",
            LightRegime.Twilight => "Level from a published illuminance curve; the spectrum is that of the sky at sunset, real twilight is bluer.",
            LightRegime.Night => "Night sky without moon: order of magnitude only; colour vision has ended.",
            _ => throw new ArgumentOutOfRangeException(nameof(light), light.Regime, "Not a part of the day."),
        };
    }

    /// <summary>What to tell when the water asked for was not reached; empty otherwise.</summary>
    /// <param name="water">The water.</param>
    /// <exception cref="ArgumentNullException"><paramref name="water"/> is null.</exception>
    public static string Fit(OpticalWater water)
    {
        ArgumentNullException.ThrowIfNull(water);
        if (water.Asked is not { } asked)
            return "";
        string given = $"as a Secchi depth of {UnitFormat.Number(asked.SecchiDepth, 2)} m", used = $"{UnitFormat.Number(water.SecchiDepth, 2)} m, is used.";
        return water.Status switch
        {
            WaterFitStatus.Matched => "",
            WaterFitStatus.ClearestOfKind => $"{Kind(asked.Kind)} water does not get as clear {given}; the clearest of its kind, {used}",
            WaterFitStatus.MurkiestOfKind => $"{Kind(asked.Kind)} water does not get as murky {given}; the murkiest of its kind, {used}",
            _ => throw new ArgumentOutOfRangeException(nameof(water), water.Status, "Not a status."),
        };
    }

    /// <summary>A kind of water at the head of a sentence.</summary>
    internal static string Kind(WaterKind kind) => kind switch
    {
        WaterKind.ClearOcean => "Clear ocean",
        WaterKind.CoastalGreen => "Coastal green",
        WaterKind.TanninStained => "Tannin-stained",
        WaterKind.Silty => "Silty",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown water kind."),
    };
}
