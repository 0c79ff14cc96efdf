using LureSim.Model;
using LureSim.Motion.Line;
using LureSim.Water;

namespace LureSim.Motion;

/// <summary>Finds, step by step, where the lure meets bottom, grass, strike zone and surface; knows where it is at the moment.</summary>
internal sealed class EventFinder
{
    // Sub-intervals of a step in which an event is looked for.
    private const int Subdivisions = 4;

    // Height above the bottom that a falling lure is brought to before the step that touches (m), and slowest fall that this is done for (m/s).
    private const double ContactGap = 0.001;

    // Lift that ends a bottom contact (m).
    private const double ContactHysteresis = 0.005;

    private readonly ILineBoundary rod;
    private readonly StrikeZone zone;
    private readonly double contactRadius;
    private readonly double bottomZ;
    private readonly double grassZ;

    private bool onBottom;
    private bool inZone;
    private bool inGrass;
    private bool outOfWater;

    /// <summary>Creates a finder for a lure that starts outside of all of them.</summary>
    /// <param name="water">Depth and grass.</param>
    /// <param name="contactRadius">Distance of the lure's centre from what it touches (m).</param>
    /// <param name="zone">Strike zone.</param>
    /// <param name="rod">Tells where the rod tip is, from which distances are counted.</param>
    public EventFinder(WaterColumn water, double contactRadius, StrikeZone zone, ILineBoundary rod)
    {
        this.rod = rod;
        this.zone = zone;
        this.contactRadius = contactRadius;
        bottomZ = -water.Depth;
        grassZ = water.GrassHeight > 0 ? bottomZ + water.GrassHeight : double.NegativeInfinity;
    }

    /// <summary>End of the part of a step in which the lure first touched the bottom (s); infinite before.</summary>
    public double FirstContact { get; private set; } = double.PositiveInfinity;

    /// <summary>Finds the events of a step, in order of time.</summary>
    /// <param name="step">The step, about to be accepted.</param>
    /// <param name="found">Takes them.</param>
    public void Find(in LureStep step, ICollection<TrackEvent> found)
    {
        double start = step.Start;
        for (int i = 1; i <= Subdivisions; i++)
        {
            double from = start + (step.Length * (i - 1) / Subdivisions), to = start + (step.Length * i / Subdivisions);
            double z = step.Z.At(to);
            Zone(z, from, to, step, found);
            if (grassZ > double.NegativeInfinity) Level(z < grassZ, ref inGrass, grassZ, from, to, step, TrackEventKind.EntersGrass, TrackEventKind.LeavesGrass, found);
            double bottom = bottomZ + contactRadius + (onBottom ? ContactHysteresis : 0);
            Level(z < bottom, ref onBottom, bottom, from, to, step, TrackEventKind.BottomContact, TrackEventKind.LeavesBottom, found);
            if (onBottom && double.IsPositiveInfinity(FirstContact)) FirstContact = to;
            Level(z > contactRadius, ref outOfWater, contactRadius, from, to, step, TrackEventKind.BreaksSurface, null, found);
        }
    }

    /// <summary>What the lure touches at a height (m) in the step at hand.</summary>
    public TrackState StateAt(double z)
    {
        TrackState state = TrackState.None;
        if (onBottom) state |= TrackState.OnBottom;
        if (z < grassZ) state |= TrackState.InGrass;
        if (zone.Contains(-z)) state |= TrackState.InZone;
        if (z > contactRadius) state |= TrackState.OutOfWater;
        return state;
    }

    /// <summary>Time until a falling lure is just above the bottom (s), infinite where that is not ahead: a step across the contact would fail.</summary>
    /// <param name="z">Height of the lure (m).</param>
    /// <param name="rate">Its rate (m/s).</param>
    public double TimeToBottom(double z, double rate)
    {
        double gap = z - bottomZ - contactRadius - ContactGap, speed = -rate;
        return gap > 0.2 * ContactGap && speed > ContactGap ? gap / speed : double.PositiveInfinity;
    }

    /// <summary>An event at a place of the lure (m).</summary>
    public TrackEvent At(TrackEventKind kind, double time, double x, double y, double z)
    {
        Span<double> tip = stackalloc double[3], velocity = stackalloc double[3];
        rod.Tip(time, tip, velocity);
        return new TrackEvent(kind, time, -z, Math.Sqrt(((x - tip[0]) * (x - tip[0])) + ((y - tip[1]) * (y - tip[1]))));
    }

    // The zone has two ends: which of them was passed shows on the side that is outside.
    private void Zone(double z, double from, double to, in LureStep step, ICollection<TrackEvent> found)
    {
        bool now = z <= -zone.Top && z >= -zone.Bottom;
        if (now == inZone) return;
        inZone = now;
        double outside = step.Z.At(now ? from : to);
        Add(now ? TrackEventKind.EntersZone : TrackEventKind.LeavesZone, outside > -zone.Top ? -zone.Top : -zone.Bottom, from, to, step, found);
    }

    private void Level(bool now, ref bool state, double level, double from, double to, in LureStep step, TrackEventKind enters, TrackEventKind? leaves, ICollection<TrackEvent> found)
    {
        if (now == state) return;
        state = now;
        if ((now ? enters : leaves) is { } kind) Add(kind, level, from, to, step, found);
    }

    private void Add(TrackEventKind kind, double level, double from, double to, in LureStep step, ICollection<TrackEvent> found)
    {
        double time = step.Z.Crossing(level, from, to);
        found.Add(At(kind, time, step.X.At(time), step.Y.At(time), step.Z.At(time)));
    }
}
