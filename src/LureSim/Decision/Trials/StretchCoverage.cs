using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Trials;

/// <summary>What a lure does over one stretch of a bottom that is not the same all along; shares are of the whole retrieve.</summary>
/// <param name="From">Where the stretch begins, from below the rod tip (m).</param>
/// <param name="To">Where it ends (m); infinite for the last.</param>
/// <param name="NearDepth">Depth at its beginning (m).</param>
/// <param name="FarDepth">Depth at its end (m).</param>
/// <param name="Bottom">What it is made of.</param>
/// <param name="Grass">Height of the grass (m).</param>
/// <param name="Name">Its name in the scenario; null for none.</param>
/// <param name="Share">Share of the retrieve there, 0 to 1.</param>
/// <param name="ZoneShare">Share in the strike zone there.</param>
/// <param name="BottomShare">Share in contact with the bottom there.</param>
/// <param name="GrassShare">Share in the grass there.</param>
public sealed record StretchCoverage(
    double From, double To, double NearDepth, double FarDepth, BottomKind Bottom, double Grass, string? Name, double Share, double ZoneShare, double BottomShare, double GrassShare)
{
    /// <summary>The retrieve by stretch, nearest first: the stretches of the scenario and those between the points of its profile. Empty over an even bottom.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="candidate">A rig with its run.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<StretchCoverage> Of(Spot spot, Candidate candidate)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(candidate);
        if (spot.Profile is not { IsEven: false } profile) return [];
        Spot seen = spot.SeenAlong(candidate.Rig.Presentation.Aim);
        double[] edges = [.. profile.Points.Select(point => point.Distance).Concat(profile.Stretches.SelectMany(stretch => (double[])[stretch.From, stretch.To])).Append(0).Distinct().Order(), double.PositiveInfinity];
        int[] all = new int[edges.Length], zone = new int[edges.Length], bottom = new int[edges.Length], grass = new int[edges.Length];
        Track track = candidate.Track;
        int count = 0;
        for (int i = 0; i < track.Count; i++)
        {
            TrackState state = track.State[i];
            if ((state & TrackState.Falling) != 0) continue;
            double along = seen.AlongProfile(track.X[i], track.Y[i]);
            int at = Math.Clamp(Array.FindLastIndex(edges, edge => edge <= along), 0, edges.Length - 2);
            count++;
            all[at]++;
            if ((state & TrackState.InZone) != 0) zone[at]++;
            if ((state & TrackState.OnBottom) != 0) bottom[at]++;
            if ((state & TrackState.InGrass) != 0) grass[at]++;
        }

        double share = count > 0 ? 1.0 / count : 0;
        return
        [
            .. Enumerable.Range(0, edges.Length - 1).Where(i => all[i] > 0).Select(i =>
            {
                double middle = double.IsInfinity(edges[i + 1]) ? edges[i] + 1 : 0.5 * (edges[i] + edges[i + 1]), end = double.IsInfinity(edges[i + 1]) ? edges[i] + 1 : edges[i + 1];
                return new StretchCoverage(
                    edges[i], edges[i + 1], profile.DepthAt(edges[i]), profile.DepthAt(end), spot.BottomAt(middle), spot.GrassAt(middle), profile.StretchAt(middle)?.Name, all[i] * share, zone[i] * share, bottom[i] * share, grass[i] * share);
            }),
        ];
    }
}
