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
    /// <param name="units">Units of the sentence.</param>
    /// <exception cref="ArgumentNullException"><paramref name="light"/> is null.</exception>
    public static string Note(SurfaceLight light, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(light);
        return units.Spell(light.ByMoon ? "Moonlight by a published curve, good to a factor of two; colors are gone or going." : light.Regime switch
        {
            LightRegime.Day => "Clear sky over clean air; haze and waves are left out.",
            LightRegime.LowSun => "Brightness by a published curve, good to a third or so; a flat surface lets in too little of a low sun.",
            LightRegime.Twilight => "Brightness by a published curve; the sky's color is that at sunset, real twilight is bluer.",
            LightRegime.Night => "Night sky without moon, good to a factor of ten; colors are gone.",
            _ => throw new ArgumentOutOfRangeException(nameof(light), light.Regime, "Not a part of the day."),
        });
    }

    /// <summary>What to tell when the water asked for was not reached; empty otherwise.</summary>
    /// <param name="water">The water.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Fit(OpticalWater water, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(format);
        if (water.Asked is not { } asked)
            return "";
        string given = $"as a white plate gone at {format.LengthText(asked.SecchiDepth)}", used = $"{format.LengthText(water.SecchiDepth)}, is used.";
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
