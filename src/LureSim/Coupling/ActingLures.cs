using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;

namespace LureSim.Coupling;

/// <summary>
/// Lures for the path with the drag that their action and their faults add, in the water of the spot: a lure near neutral hangs otherwise on its line in fresh
/// water than in salt. Each is computed once for a water, however many retrieves it is tried with.
/// </summary>
public static class ActingLures
{
    // Speeds (m/s) between which the factor is interpolated: a slow crawl to a burn.
    private static readonly double[] Speeds = [0.2, 0.4, 0.8, 1.6];

    // A bound on memory only; a tackle box holds far fewer.
    private const int MostKept = 512;

    private static readonly KeptResults<Key, LureProperties> Kept = new(MostKept);

    /// <summary>The lure as it moves on the retrieve.</summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="spot">The spot, for the density and the viscosity of its water.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static LureProperties Of(Outfit tackle, Spot spot, JigHead head, LureBody body)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        LureBody computed = body.Drag is null ? body : body with { Drag = null };

        // What a head is called moves nothing: a common size is the head of the box that weighs as much.
        head = head with { Label = "" };
        var key = new Key(head, computed, tackle.Rigging, tackle.Leader?.Kind ?? tackle.Line.Kind, tackle.Leader?.Diameter ?? tackle.Line.Diameter, spot.TemperatureCelsius, spot.Salinity);
        return Kept.Of(key, () => Build(tackle, spot, head, computed)).Value is var lure && body.Drag is { } own ? ScaledDragLure.Of(lure, own.Factor) : lure;
    }

    private static LureProperties Build(Outfit tackle, Spot spot, JigHead head, LureBody body)
    {
        LureProperties still = TackleBuilder.Lure(head, body);
        (double[] factors, double[] lifts) = SwimmingDrag.Of(tackle, spot, head, body, Speeds);
        return factors.All(f => f == 1) && lifts.All(a => a == 0) ? still : ActingLure.Of(still, Speeds, factors, lifts);
    }

    private readonly record struct Key(JigHead Head, LureBody Body, Rigging Rigging, LineKind Kind, double Diameter, double Temperature, double Salinity);
}
