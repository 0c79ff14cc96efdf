using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Trials;

/// <summary>Measures where a track spent its time.</summary>
public static class CoverageMeasure
{
    /// <summary>Coverage of a track; the retrieve runs from the first turn of the handle to the end.</summary>
    /// <param name="track">The track.</param>
    /// <param name="zone">The strike zone.</param>
    /// <param name="touching">Depth (m) from which the lure counts as touching the bottom; infinite for contact alone.</param>
    /// <returns>Shares of 0 where the track has no retrieve.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Coverage Of(Track track, StrikeZone zone, double touching = double.PositiveInfinity) => Of(track, zone, touching, null);

    /// <summary>The same over a bottom that may slope: the zone moves with it where it is stated above the bottom, and so does the depth of a touch.</summary>
    /// <param name="track">The track.</param>
    /// <param name="zone">The strike zone, at the depth of the spot.</param>
    /// <param name="touching">Depth (m) from which the lure counts as touching the bottom where the spot is as deep as it is stated; infinite for contact alone.</param>
    /// <param name="slope">The spot seen along the cast, where its bottom slopes; null for an even one.</param>
    internal static Coverage Of(Track track, StrikeZone zone, double touching, Spot? slope)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(zone);
        int start = 0;
        while (start < track.Count && (track.State[start] & TrackState.Falling) != 0) start++;
        int count = track.Count - start;
        int inZone = 0, above = 0, below = 0, bottom = 0, grass = 0, dragged = 0, settled = 0, touches = 0;
        double across = 0, deepest = 0, way = 0, felt = 0;
        bool near = false, down = false;
        double since = 0;
        ScoreWeights weights = ScoreWeights.Default;
        double reference = track.Count > 0 ? track.Y[0] : 0;
        for (int i = 0; i < track.Count; i++)
        {
            across = Math.Max(across, Math.Abs(track.Y[i] - reference));
            deepest = Math.Max(deepest, track.Depth(i));
            if (i < start) continue;
            double depth = track.Depth(i);
            double here = slope is null ? 0 : slope.DepthAt(track.X[i], track.Y[i]) - slope.Depth, shift = zone.MovesWithBottom ? here : 0;
            if (depth < zone.Top + shift) above++;
            else if (depth > zone.Bottom + shift) below++;
            else inZone++;
            if ((track.State[i] & TrackState.InGrass) != 0) grass++;
            felt += Math.Clamp(track.RodTension[i] / weights.FeelTension, 0, 1);
            bool touch = (track.State[i] & TrackState.OnBottom) != 0 || depth >= touching + here;
            if (touch)
            {
                bottom++;
                if (!near) touches++;
                if (!down) since = track.Time[i];
                if (track.Time[i] - since > weights.SettleTime) settled++;
                double speed = Math.Sqrt((track.VelocityX[i] * track.VelocityX[i]) + (track.VelocityY[i] * track.VelocityY[i]));
                if (speed > weights.Crawl)
                {
                    dragged++;
                    if (i > start) way += speed * (track.Time[i] - track.Time[i - 1]);
                }
            }

            down = touch;

            // A lure that hangs about the limit has touched once.
            near = touch || (near && depth >= touching + here - weights.HookLength);
        }

        double share = count > 0 ? 1.0 / count : 0;
        double median = 0;
        if (count > 0)
        {
            double[] depths = new double[count];
            for (int i = 0; i < count; i++) depths[i] = track.Depth(start + i);
            median = MathNet.Numerics.Statistics.ArrayStatistics.MedianInplace(depths);
        }

        return new Coverage(
            inZone * share,
            above * share,
            below * share,
            bottom * share,
            grass * share,
            First(track, TrackEventKind.EntersZone),
            First(track, TrackEventKind.BottomContact),
            median,
            deepest,
            count > 0 ? track.Time[^1] - track.Time[start] : 0,
            across)
        {
            CastLength = track.Count > 0 ? track.X[0] : 0,
            DragShare = dragged * share,
            SettledShare = settled * share,
            DraggedLength = way,
            Touches = touches,
            FeltShare = count > 0 ? felt * share : 1,
        };
    }

    private static double? First(Track track, TrackEventKind kind)
    {
        foreach (TrackEvent item in track.Events)
        {
            if (item.Kind == kind) return item.Time;
        }

        return null;
    }
}
