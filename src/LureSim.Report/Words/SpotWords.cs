using System.Globalization;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts the water and the sky of a spot into words, in the form in which they were given.</summary>
public static class SpotWords
{
    /// <summary>The water as it was given.</summary>
    public static string Water(WaterClarity clarity, UnitFormat format) => clarity switch
    {
        SecchiClarity secchi => $"{KindName(secchi.Kind)}, white plate gone at {format.LengthText(secchi.Depth)}",
        JerlovClarity jerlov => $"water of Jerlov type {OpticalWater.Label(jerlov.Type)}",
        ConstituentClarity found => $"water with {UnitFormat.Number(found.Chlorophyll * 1e6, 2)} mg/m³ chlorophyll, {UnitFormat.Number(found.Dissolved440, 3)} 1/m stain at 440 nm and {UnitFormat.Number(found.Mineral * 1e3, 2)} g/m³ mineral",
        _ => throw new ArgumentOutOfRangeException(nameof(clarity), clarity, "Not a form of clarity."),
    };

    /// <summary>The sky as it was given, without the cloud.</summary>
    public static string Sky(SkySetting sky) => sky switch
    {
        SkyByElevation sun => $"sun {UnitFormat.Number(Math.Abs(sun.SunElevation) * 180 / Math.PI, 0)}° {(sun.SunElevation < 0 ? "below the horizon, no moon" : "above the horizon")}",
        SkyByClock clock => string.Create(CultureInfo.InvariantCulture, $"{clock.Time:d MMMM yyyy} at {clock.Time:HH:mm}"),
        _ => throw new ArgumentOutOfRangeException(nameof(sky), sky, "Not a form of sky."),
    };

    /// <summary>What of water and place was assumed, with the figures: "the water temperature (74°F) and the salinity (24 ppt)"; empty where all was given.</summary>
    public static string Assumed(Spot spot, UnitFormat format)
    {
        List<string> parts = [];
        if (spot.Assumed.HasFlag(SpotAssumptions.Temperature)) parts.Add($"the water temperature ({format.TemperatureText(spot.TemperatureCelsius)})");
        if (spot.Assumed.HasFlag(SpotAssumptions.Salinity)) parts.Add($"the salinity ({UnitFormat.Number(spot.Salinity, 1)} ppt)");
        if (spot.Assumed.HasFlag(SpotAssumptions.Place) && spot.Sky is SkyByClock clock)
            parts.Add($"where the sun is seen from ({UnitFormat.Number(Math.Abs(clock.Latitude) * 180 / Math.PI, 0)}° {(clock.Latitude < 0 ? "south" : "north")}, {UnitFormat.Number(Math.Abs(clock.Longitude) * 180 / Math.PI, 0)}° {(clock.Longitude < 0 ? "west" : "east")}, by the coast you named)");
        return Grammar.Join(parts);
    }

    /// <summary>How clear water is that was not given by a Secchi depth.</summary>
    public static IEnumerable<(string Label, string Text)> Clearness(Spot spot, UnitFormat format)
    {
        if (spot.Clarity is not SecchiClarity)
            yield return ("white plate gone at, computed", format.LengthText(SpotLight.Water(spot).SecchiDepth));
    }

    /// <summary>Clock and place, where sun and moon were found to be, and what the light model says of itself there.</summary>
    public static IEnumerable<(string Label, string Text)> Found(Spot spot, UnitSystem units)
    {
        if (spot.Sky is SkyByClock clock)
        {
            yield return ("clock and place", $"UTC{Signed(clock.Time.Offset.TotalHours)} h, latitude {Degrees(clock.Latitude, "N", "S")}, longitude {Degrees(clock.Longitude, "E", "W")}");
            double sun = SpotLight.SunElevationDegrees(spot);
            string moon = sun <= 0 && SpotLight.Moon(spot) is { } found ? $"; moon {Height(found.ElevationDegrees)}, {UnitFormat.PercentText(found.LitShare)} lit" : "";
            yield return ("sun, computed", Height(sun) + moon);
        }

        SurfaceLight light = SpotLight.Surface(spot);
        yield return ("light", $"{LightWords.Regime(light.Regime)}, {Illuminance(light.Illuminance)}. {LightWords.Note(light, units)}");
    }

    /// <summary>The spot on one line.</summary>
    public static string Line(Spot spot, UnitFormat format)
    {
        List<string> parts = [spot.Profile is { IsEven: false } ? $"{Depth(spot, format)} over {Bottoms(spot)}" : $"{format.LengthText(spot.Depth)} over {Bottom(spot.Bottom)}"];
        if (GrassText(spot, format) is { Length: > 0 } grass)
            parts.Add(grass);
        parts.Add(Water(spot.Clarity, format));
        parts.Add(Flow(spot, format));
        parts.Add($"strike zone {Zone(spot, format)}");
        parts.Add(Sky(spot.Sky));
        parts.Add(FishWords.Everyday(spot.TargetFish));
        return string.Join("; ", parts) + ".";
    }

    /// <summary>Depth, bottom, current and fish, for the first line of a command without a choice.</summary>
    public static string Brief(Scenario scenario, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(format);
        return CardWords.Spot(scenario, format);
    }

    /// <summary>The current and where it goes.</summary>
    public static string Flow(Spot spot, UnitFormat format) => spot.CurrentSpeed > 0
        ? $"current {format.CurrentText(spot.CurrentSpeed)} {Direction(spot.CurrentDirection, format.System)}"
        : "no current";

    /// <summary>How deep the water is along the cast: "3 ft", or "2 to 8 ft" over a bottom that slopes.</summary>
    public static string Depth(Spot spot, UnitFormat format) =>
        spot.Profile is { } profile && profile.Shallowest < profile.Deepest ? format.HandBand(profile.Shallowest, profile.Deepest) : format.HandText(spot.Depth);

    /// <summary>The strike zone: depths, or heights above a bottom that slopes.</summary>
    public static string Zone(Spot spot, UnitFormat format) => spot.Profile is { IsEven: false } && spot.StrikeZone.MovesWithBottom
        ? $"{format.BandText(spot.Depth - spot.StrikeZone.Bottom, spot.Depth - spot.StrikeZone.Top)} above bottom"
        : format.BandText(spot.StrikeZone.Top, spot.StrikeZone.Bottom);

    /// <summary>Bottom materials in the order in which they lie from the rod outward: "mud, then shell bottom".</summary>
    public static string Bottoms(Spot spot)
    {
        if (spot.Profile is not { Stretches.Count: > 0 } profile) return Bottom(spot.Bottom);
        List<BottomKind> kinds = [];
        double end = Math.Max(profile.Points[^1].Distance, profile.Stretches[^1].To);
        foreach (double at in profile.Stretches.SelectMany(stretch => (double[])[stretch.From, stretch.To]).Prepend(0).Where(at => at < end || at == 0).Order())
        {
            if (kinds.Count == 0 || kinds[^1] != spot.BottomAt(at)) kinds.Add(spot.BottomAt(at));
        }

        string[] words = [.. kinds.Select(kind => Bottom(kind)[..^" bottom".Length])];
        return string.Join(", then ", words) + " bottom";
    }

    /// <summary>The grass and how far out it grows; empty for none.</summary>
    public static string GrassText(Spot spot, UnitFormat format)
    {
        (double From, double To, double Height)[] beds = [.. (spot.Profile?.Stretches ?? []).Where(stretch => stretch.GrassHeight is > 0).Select(stretch => (stretch.From, stretch.To, stretch.GrassHeight!.Value))];
        string all = spot.GrassHeight > 0 ? $"grass {format.LengthText(spot.GrassHeight)} high" : "";
        return beds.Length == 0 ? all : string.Join(", ", beds.Select(bed => $"grass {format.LengthText(bed.Height)} high from {format.HandBand(bed.From, bed.To)} out"));
    }

    /// <summary>Bottom material.</summary>
    public static string Bottom(BottomKind kind) => kind switch
    {
        BottomKind.Hard => "hard bottom",
        BottomKind.Sand => "sand bottom",
        BottomKind.Mud => "mud bottom",
        BottomKind.Shell => "shell bottom",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a bottom."),
    };

    /// <summary>Where current or wind goes, seen by the one who casts.</summary>
    /// <param name="direction">Direction (radians) from the cast, to the left.</param>
    /// <param name="units">Units of the text.</param>
    public static string Direction(double direction, UnitSystem units)
    {
        double along = Math.Cos(direction);
        double left = Math.Sin(direction);
        const double small = 0.26; // sine of about 15 degrees
        string first = Math.Abs(along) < small ? "" : along > 0 ? "away from you" : units.Spell("toward you");
        string second = Math.Abs(left) < small ? "" : left > 0 ? "to your left" : "to your right";
        return first.Length > 0 && second.Length > 0 ? $"{first} and {second}" : first + second;
    }

    private static string Height(double degrees) =>
        $"{UnitFormat.Number(Math.Abs(degrees), 1)}° {(degrees < 0 ? "below" : "above")} the horizon";

    private static string Signed(double hours) => (hours < 0 ? "−" : "+") + UnitFormat.Number(Math.Abs(hours), 2);

    private static string Degrees(double radians, string positive, string negative) =>
        $"{UnitFormat.Number(Math.Abs(radians) * 180 / Math.PI, 2)}° {(radians < 0 ? negative : positive)}";

    // Two significant digits: the levels are good to some tens of per cent.
    private static string Illuminance(double lux)
    {
        if (!(lux > 0))
            return "no light";
        double step = Math.Pow(10, Math.Floor(Math.Log10(lux)) - 1);
        return $"about {(Math.Round(lux / step) * step).ToString(lux < 1 ? "0.#####" : "#,0.#", CultureInfo.InvariantCulture)} lx on the water";
    }

    /// <summary>A kind of water within a sentence.</summary>
    internal static string KindName(WaterKind kind) => kind switch
    {
        WaterKind.ClearOcean => "clear ocean water",
        WaterKind.CoastalGreen => "green coastal water",
        WaterKind.TanninStained => "tannin-stained water",
        WaterKind.Silty => "silty water",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown water kind."),
    };
}
