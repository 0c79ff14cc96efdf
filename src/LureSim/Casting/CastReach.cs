using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;

namespace LureSim.Casting;

/// <summary>How far a lure is cast.</summary>
/// <param name="Length">Level distance from the rod tip (m), within the limits of a cast.</param>
/// <param name="InStillAir">The same without the wind (m).</param>
/// <param name="Wanted">The distance that the presentation asks of every lure (m); null where each flies as far as it does.</param>
/// <param name="LaunchSpeed">Speed off the rod (m/s); NaN where neither rod nor a known cast says it.</param>
/// <param name="Mass">Mass of the lure (kg).</param>
/// <param name="Effort">Share of the hand's strength; NaN where nothing says it.</param>
/// <param name="Rating">Where the lure stands in the rod's rating.</param>
public sealed record CastOfLure(double Length, double InStillAir, double? Wanted, double LaunchSpeed, double Mass, double Effort, RodRating Rating)
{
    // A hand does not notice less (share of the cast).
    private const double Noticeable = 0.03;

    /// <summary>True if the lure cannot be thrown as far as the presentation wants it.</summary>
    public bool FallsShort => Wanted is { } wanted && Length < (1 - Noticeable) * wanted;

    /// <summary>Share of the wanted distance that it reaches, 0 to 1.</summary>
    public double Share => Wanted is { } wanted ? Math.Min(1, Length / wanted) : 1;
}

/// <summary>A lure and the rating of a rod.</summary>
public enum RodRating
{
    /// <summary>No rod was given.</summary>
    NoRod,

    /// <summary>Lighter than the rod is rated for: it hardly loads the rod.</summary>
    Under,

    /// <summary>Within the rating.</summary>
    Within,

    /// <summary>Heavier than the rod is rated for.</summary>
    Over,
}

/// <summary>The own length of the cast of each lure.</summary>
/// <remarks>
/// "60 ft with 1/4 oz" fixes the effort: the share of the hand's strength with which that lure flies 60 ft in still air. Every other lure is thrown with the same. A length
/// without a lure is one that the angler wants of each lure; with a rod it is cut to what an easy cast of the lure reaches, without one it is taken as it stands.
/// </remarks>
public static class CastReach
{
    // Line that is left on the spool at the longest cast, and a cast over the end of the retrieve (shares, m).
    private const double OnSpool = 1.05;
    private const double BeyondEnd = 0.5;

    // A rod tip at the moment of the release stands higher than in the retrieve by this share of the rod.
    private const double ReleaseShare = 0.5;

    // Effort between which it is sought; what needs more is no cast.
    private const double LeastEffort = 1e-3;
    private const double MostEffort = 20;

    /// <summary>The presentation with the own cast of a rig in place of one that was given with another lure or is limited by the rod; the same one where its length holds for every lure.</summary>
    /// <param name="spot">The spot, for its wind.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="presentation">The presentation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Presentation Own(Spot spot, FishingRig rig, Presentation presentation)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(presentation);
        return IsOwn(rig, presentation) ? presentation with { CastLength = Of(spot, rig, presentation).Length, CastWith = null, FullCast = false } : presentation;
    }

    /// <summary>Whether the length of the cast is each lure's own.</summary>
    /// <param name="outfit">The outfit.</param>
    /// <param name="presentation">The presentation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static bool IsOwn(Outfit outfit, Presentation presentation)
    {
        ArgumentNullException.ThrowIfNull(outfit);
        ArgumentNullException.ThrowIfNull(presentation);
        return presentation.CastWith is not null || presentation.FullCast || outfit.Rod is not null;
    }

    /// <summary>How far a rig is cast.</summary>
    /// <param name="spot">The spot, for its wind.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="presentation">The presentation.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static CastOfLure Of(Spot spot, FishingRig rig, Presentation presentation)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(presentation);
        PathLure lure = rig.Body.Kind.OnPath(rig.Head, rig.Body);

        // Of a jig the head is what people hold against the rod (common practice); of a bait on a bare hook nothing is said.
        double rated = rig.Head.Mass > 0 ? rig.Head.Mass : lure.Mass;
        RodRating rating = rig.Rod is not { } rod ? RodRating.NoRod
            : rig.Head is { IsNone: false, Mass: 0 } ? RodRating.Within
            : rated < rod.LightestLure ? RodRating.Under
            : rated > rod.HeaviestLure ? RodRating.Over
            : RodRating.Within;
        double? wanted = presentation.CastWith is null && !presentation.FullCast ? presentation.CastLength : null;
        if (!IsOwn(rig, presentation)) return new CastOfLure(presentation.CastLength, presentation.CastLength, wanted, double.NaN, lure.Mass, double.NaN, rating);
        CastingHand hand = CastingHand.Of(rig.Rod ?? CastingHand.UsualRod);
        double effort = presentation.CastWith is { } known ? Effort(rig, hand, known, presentation.CastLength) : CastingHand.EasyEffort;
        double angle = spot.WindDirection - presentation.Aim;
        double along = spot.WindSpeed * Math.Cos(angle), left = spot.WindSpeed * Math.Sin(angle);
        var flight = new CastFlight(lure, TackleBuilder.Line(rig).Main, null, CastFlight.Wobble);
        double speed = Math.Min(hand.LaunchSpeed(lure.Mass, effort), 200);
        double still = Within(flight.Fly(speed, Release(rig)).Length, rig, presentation);
        double blown = spot.WindSpeed > 0 ? Within(flight.Fly(speed, Release(rig), CastFlight.UsualAngle, along, left).Length, rig, presentation) : still;
        return wanted is { } most
            ? new CastOfLure(Math.Min(blown, most), Math.Min(still, most), most, speed, lure.Mass, effort, rating)
            : new CastOfLure(blown, still, null, speed, lure.Mass, effort, rating);
    }

    /// <summary>
    /// Share of the hand's strength with which a lure flies so far in still air; above 1 it is more than the rod is taken to give, infinite where no effort does it.
    /// </summary>
    /// <param name="outfit">Rod and line.</param>
    /// <param name="known">The lure.</param>
    /// <param name="length">Level distance from the rod tip (m).</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static double Effort(Outfit outfit, CastAnchor known, double length)
    {
        ArgumentNullException.ThrowIfNull(outfit);
        ArgumentNullException.ThrowIfNull(known);
        double effort = Effort(outfit, CastingHand.Of(outfit.Rod ?? CastingHand.UsualRod), known, length);
        return effort < MostEffort ? effort : double.PositiveInfinity;
    }

    /// <summary>Length of an easy cast of a lure in still air (m).</summary>
    /// <param name="outfit">Rod, reel and line; a usual rod where there is none.</param>
    /// <param name="head">Head.</param>
    /// <param name="body">Body.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static double Easy(Outfit outfit, JigHead head, LureBody body)
    {
        ArgumentNullException.ThrowIfNull(outfit);
        ArgumentNullException.ThrowIfNull(body);
        PathLure lure = body.Kind.OnPath(head, body);
        double speed = CastingHand.Of(outfit.Rod ?? CastingHand.UsualRod).LaunchSpeed(lure.Mass, CastingHand.EasyEffort);
        double length = new CastFlight(lure, TackleBuilder.Line(outfit).Main, null, CastFlight.Wobble).Fly(speed, Release(outfit)).Length;
        return Math.Clamp(Math.Min(length, outfit.Reel.LineCapacity / OnSpool), Limits.CastLength.Least, Limits.CastLength.Most);
    }

    private static double Effort(Outfit outfit, CastingHand hand, CastAnchor known, double length)
    {
        PathLure lure = known.Body.Kind.OnPath(known.Head, known.Body);
        double mass = known.Mass ?? lure.Mass;
        var flight = new CastFlight(lure, TackleBuilder.Line(outfit).Main, known.Mass, CastFlight.Wobble);
        double height = Release(outfit);

        // The distance grows with the effort: regula falsi in the logarithms, Illinois form (Dowell and Jarratt 1971).
        double low = Math.Log(LeastEffort), high = Math.Log(MostEffort);
        double below = Miss(low), above = Miss(high);
        if (above < 0) return MostEffort;
        if (below > 0) return LeastEffort;
        int side = 0;
        double at = high;
        for (int turn = 0; turn < 60; turn++)
        {
            at = ((low * above) - (high * below)) / (above - below);
            double miss = Miss(at);
            if (Math.Abs(miss) < 1e-7 || high - low < 1e-9) break;
            if (miss < 0)
            {
                (low, below) = (at, miss);
                if (side < 0) above /= 2;
                side = -1;
            }
            else
            {
                (high, above) = (at, miss);
                if (side > 0) below /= 2;
                side = 1;
            }
        }

        return Math.Exp(at);

        double Miss(double logarithm) => Math.Log(flight.Fly(Math.Min(hand.LaunchSpeed(mass, Math.Exp(logarithm)), 200), height).Length / length);
    }

    private static double Release(Outfit outfit) => outfit.RodTipHeight + (ReleaseShare * (outfit.Rod?.Length ?? CastingHand.UsualLength));

    // A cast shorter than the line that is left at its end, or longer than the spool holds, is none.
    private static double Within(double length, FishingRig rig, Presentation presentation)
    {
        double least = Math.Max(Math.Max(Limits.CastLength.Least, presentation.LineLeftAtEnd + BeyondEnd), (rig.Leader?.Length ?? 0) + BeyondEnd);
        return Math.Max(Math.Min(Math.Min(length, Limits.CastLength.Most), rig.Reel.LineCapacity / OnSpool), Math.Min(least, Limits.CastLength.Most));
    }
}
