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
    private readonly BottomRelief? relief;

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
        relief = water.Relief;
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
        Levels before = LevelsAt(step.X.At(start), step.Y.At(start));
        for (int i = 1; i <= Subdivisions; i++)
        {
            double from = start + (step.Length * (i - 1) / Subdivisions), to = start + (step.Length * i / Subdivisions);
            double z = step.Z.At(to);
            Levels here = relief is null ? before : LevelsAt(step.X.At(to), step.Y.At(to));
            Zone(z, in before, in here, from, to, step, found);
            if (here.Grass > double.NegativeInfinity) Level(z < here.Grass, ref inGrass, before.Grass, here.Grass, from, to, step, TrackEventKind.EntersGrass, TrackEventKind.LeavesGrass, found);
            double hysteresis = onBottom ? ContactHysteresis : 0;
            Level(z < here.Bottom + hysteresis, ref onBottom, before.Bottom + hysteresis, here.Bottom + hysteresis, from, to, step, TrackEventKind.BottomContact, TrackEventKind.LeavesBottom, found);
            if (onBottom && double.IsPositiveInfinity(FirstContact)) FirstContact = to;
            Level(z > contactRadius, ref outOfWater, contactRadius, contactRadius, from, to, step, TrackEventKind.BreaksSurface, null, found);
            before = here;
        }
    }

    /// <summary>What the lure touches at a place (m) in the step at hand.</summary>
    public TrackState StateAt(double x, double y, double z)
    {
        Levels here = LevelsAt(x, y);
        TrackState state = TrackState.None;
        if (onBottom) state |= TrackState.OnBottom;
        if (z < here.Grass) state |= TrackState.InGrass;
        if (-z >= here.ZoneTop && -z <= here.ZoneBottom) state |= TrackState.InZone;
        if (z > contactRadius) state |= TrackState.OutOfWater;
        return state;
    }

    /// <summary>Time until a falling lure is just above the bottom (s), infinite where that is not ahead: a step across the contact would fail.</summary>
    /// <param name="position">Place of the lure (m).</param>
    /// <param name="velocity">Its velocity (m/s).</param>
    public double TimeToBottom(ReadOnlySpan<double> position, ReadOnlySpan<double> velocity)
    {
        double gap = position[2] - bottomZ - contactRadius - ContactGap, speed = -velocity[2];
        if (relief is not null)
        {
            BottomPlace below = relief.At(position[0], position[1]);
            gap = below.Clearance(position[2]) - contactRadius - ContactGap;
            speed -= below.Slope * ((velocity[0] * below.AxisX) + (velocity[1] * below.AxisY));
            speed *= below.NormalZ;
        }

        return gap > 0.2 * ContactGap && speed > ContactGap ? gap / speed : double.PositiveInfinity;
    }

    /// <summary>An event at a place of the lure (m).</summary>
    public TrackEvent At(TrackEventKind kind, double time, double x, double y, double z)
    {
        Span<double> tip = stackalloc double[3], velocity = stackalloc double[3];
        rod.Tip(time, tip, velocity);
        return new TrackEvent(kind, time, -z, Math.Sqrt(((x - tip[0]) * (x - tip[0])) + ((y - tip[1]) * (y - tip[1]))));
    }

    // Heights of the lure's centre (m) and depths of the zone's edges at a place.
    private Levels LevelsAt(double x, double y)
    {
        if (relief is null) return new Levels(bottomZ + contactRadius, grassZ, zone.Top, zone.Bottom);
        BottomPlace below = relief.At(x, y);
        double shift = zone.Shift(-bottomZ, below.Depth);
        return new Levels((contactRadius / below.NormalZ) - below.Depth, relief.HasGrass ? below.Grass > 0 ? below.Grass - below.Depth : -below.Depth - 1 : double.NegativeInfinity, zone.Top + shift, zone.Bottom + shift);
    }

    // The zone has two ends: which of them was passed shows on the side that is outside.
    private void Zone(double z, in Levels before, in Levels here, double from, double to, in LureStep step, ICollection<TrackEvent> found)
    {
        bool now = z <= -here.ZoneTop && z >= -here.ZoneBottom;
        if (now == inZone) return;
        inZone = now;
        double outside = step.Z.At(now ? from : to);
        bool top = outside > -(now ? before : here).ZoneTop;
        Add(now ? TrackEventKind.EntersZone : TrackEventKind.LeavesZone, top ? -before.ZoneTop : -before.ZoneBottom, top ? -here.ZoneTop : -here.ZoneBottom, from, to, step, found);
    }

    private void Level(bool now, ref bool state, double before, double here, double from, double to, in LureStep step, TrackEventKind enters, TrackEventKind? leaves, ICollection<TrackEvent> found)
    {
        if (now == state) return;
        state = now;
        if ((now ? enters : leaves) is { } kind) Add(kind, before, here, from, to, step, found);
    }

    private void Add(TrackEventKind kind, double before, double here, double from, double to, in LureStep step, ICollection<TrackEvent> found)
    {
        double time = before == here ? step.Z.Crossing(here, from, to) : Passing(step.Z.At(from) - before, step.Z.At(to) - here, from, to);
        found.Add(At(kind, time, step.X.At(time), step.Y.At(time), step.Z.At(time)));
    }

    // Over a slope the level moves with the lure: a quarter of a step is short enough for a straight line.
    private static double Passing(double first, double second, double from, double to) => first * second < 0 ? from + ((to - from) * first / (first - second)) : to;

    private readonly record struct Levels(double Bottom, double Grass, double ZoneTop, double ZoneBottom);
}
