using LureSim.Casting;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Coupling;

/// <summary>One cast with the whole model: the lure swims on its path, and its swimming drags and lifts.</summary>
public static class Cast
{
    /// <summary>
    /// The track of a lure from splash-down to the end of the retrieve, with the drag and the lift that its action and its rigging add. What every command runs;
    /// <see cref="Retrieve.Simulate"/> below it knows a lure only as drag by speed.
    /// </summary>
    /// <param name="spot">The spot.</param>
    /// <param name="rig">Rod, reel, line and the lure on it.</param>
    /// <param name="presentation">Cast, fall and retrieve; a cast that was given with a lure is as long as this one flies (<see cref="CastReach"/>).</param>
    /// <param name="options">Settings; null for the defaults. No more line than the reel holds goes out.</param>
    /// <param name="cancellation">Checked every step.</param>
    /// <returns>The track; see <see cref="Track.Status"/> for how it ended.</returns>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    /// <example><code>
    /// using LureSim.Coupling;
    /// using LureSim.Model;
    /// using LureSim.Motion;
    /// var spot = new Spot { Depth = 4, Salinity = 30, TemperatureCelsius = 20, Clarity = new SecchiClarity(2, WaterKind.CoastalGreen), Sky = new SkyByElevation(0.8), StrikeZone = new StrikeZone(2, 4), TargetFish = "red drum" };
    /// var rig = new FishingRig
    /// {
    ///     RodTipHeight = 1.5, Reel = new Reel(6.2, 0.045), Line = new LineSpecification(LineKind.Braid, 44.5, 0.00021),
    ///     Head = new JigHead(0.00709, HeadMetal.Lead, 0.0011, "1/4 oz"), Body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.019, 0.0164, 1050, "paddle tail"),
    /// };
    /// Track track = Cast.Simulate(spot, rig, new Presentation { Name = "steady", CastLength = 20, RetrieveSpeed = 0.5 });
    /// Console.WriteLine(track.Z.Min());
    /// </code></example>
    public static Track Simulate(Spot spot, FishingRig rig, Presentation presentation, SimulationOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(presentation);
        options ??= new SimulationOptions();
        presentation = CastReach.Own(spot, rig, presentation);
        return Retrieve.Simulate(
            WaterColumn.Of(spot.SeenAlong(presentation.Aim)),
            ActingLures.Of(rig, spot, rig.Head, rig.Body),
            TackleBuilder.Line(rig),
            rig.RodTipHeight,
            presentation,
            spot.StrikeZone,
            options with { LineCapacity = Math.Min(options.LineCapacity, rig.Reel.LineCapacity) },
            cancellation);
    }
}
