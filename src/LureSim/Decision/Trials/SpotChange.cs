using LureSim.Model;

namespace LureSim.Decision.Trials;

/// <summary>A spot with other water in it.</summary>
public static class SpotChange
{
    // Water that must be left (m), the least that a scenario may have.
    private const double LeastDepth = 0.2;
    private const double MostDepth = 60;

    // Share of the water that the grass fills at most, and of its height that a strike zone keeps, where the water goes.
    private const double MostGrass = 0.9;
    private const double LeastZone = 0.25;

    /// <summary>
    /// The spot at another depth. The grass stays on the bottom; a strike zone that was given by heights above the bottom moves with it, one given by depths stays
    /// below the surface and is cut off at the bottom. A bottom that slopes keeps its shape; where it would fall dry, the least water of a spot, 0.2 m, is left over it.
    /// </summary>
    /// <param name="spot">The spot.</param>
    /// <param name="depth">Depth wanted (m). It is kept within 0.2 to 60 m, and deep enough that a quarter of a zone given by depths is left.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    public static Spot WithDepth(Spot spot, double depth)
    {
        ArgumentNullException.ThrowIfNull(spot);
        StrikeZone zone = spot.StrikeZone;
        double height = zone.Bottom - zone.Top;
        double least = zone.MovesWithBottom ? LeastDepth : Math.Max(LeastDepth, zone.Top + (LeastZone * height));
        double water = Math.Clamp(depth, Math.Min(least, spot.Depth), MostDepth);
        if (water == spot.Depth) return spot;
        BottomProfile? profile = spot.Profile?.Deepened(water - spot.Depth);
        water = profile?.Deepest ?? water;
        StrikeZone moved;
        if (zone.MovesWithBottom)
        {
            double under = spot.Depth - zone.Bottom;
            double bottom = Math.Max(water - under, LeastZone * Math.Min(height, water));
            moved = zone with { Top = Math.Max(0, bottom - height), Bottom = bottom };
        }
        else
        {
            moved = zone with { Bottom = Math.Min(zone.Bottom, water) };
        }

        return spot with { Depth = water, Profile = profile, GrassHeight = Math.Min(spot.GrassHeight, MostGrass * water), StrikeZone = moved };
    }

    /// <summary>The spot with another current at the surface.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="current">Current (m/s), kept within -3 to 3; negative against the spot's direction.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    public static Spot WithCurrent(Spot spot, double current)
    {
        ArgumentNullException.ThrowIfNull(spot);
        double speed = Math.Min(Math.Abs(current), 3);
        double direction = current >= 0 ? spot.CurrentDirection : (spot.CurrentDirection + Math.PI) % (2 * Math.PI);
        return spot with { CurrentSpeed = speed, CurrentDirection = direction };
    }
}
