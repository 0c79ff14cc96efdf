using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Decision.Trials;

/// <summary>Where in the water a lure spends its retrieve: shares of the time in cells of distance from the rod tip and depth.</summary>
/// <param name="DistanceEdges">Edges of the cells in horizontal distance from the rod tip, or along a bottom profile (m), increasing, one more than there are columns.</param>
/// <param name="DepthEdges">Edges of the cells in depth (m), from the surface to the bottom, one more than there are rows.</param>
/// <param name="Share">Share of the retrieve in each cell, [depth, distance]; all together 1, or 0 where there was no retrieve.</param>
/// <param name="Runs">Runs that went into it.</param>
public sealed record WaterMap(IReadOnlyList<double> DistanceEdges, IReadOnlyList<double> DepthEdges, double[,] Share, int Runs)
{
    /// <summary>Rows of a map.</summary>
    public const int Rows = 30;

    /// <summary>Columns of a map.</summary>
    public const int Columns = 40;

    /// <summary>Share of the retrieve at each depth, whatever the distance.</summary>
    public IReadOnlyList<double> ByDepth => [.. Enumerable.Range(0, Share.GetLength(0)).Select(r => Enumerable.Range(0, Share.GetLength(1)).Sum(c => Share[r, c]))];

    /// <summary>The map of one track.</summary>
    /// <param name="track">The track.</param>
    /// <param name="water">The spot that it was computed in.</param>
    /// <param name="shown">The spot on whose depths the map is drawn. Where the strike zone moves with the bottom, depths are counted from the bottom.</param>
    /// <param name="presentation">The retrieve, whose rod may drift.</param>
    /// <param name="length">Reach of the map (m), above 0; what lies beyond counts in the outermost cells.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The reach is not above 0.</exception>
    public static WaterMap Of(Track track, Spot water, Spot shown, Presentation presentation, double length)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(shown);
        ArgumentNullException.ThrowIfNull(presentation);
        Guard.Positive(length);
        double[,] share = new double[Rows, Columns];
        double shift = shown.StrikeZone.MovesWithBottom ? shown.Depth - water.Depth : 0;
        Spot? along = water.Profile is { IsEven: false } ? water.SeenAlong(presentation.Aim) : null;
        int count = 0;
        for (int i = 0; i < track.Count; i++)
        {
            if ((track.State[i] & TrackState.Falling) != 0) continue;
            int row = Cell((track.Depth(i) + shift) / shown.Depth, Rows), column = Cell((along?.AlongProfile(track.X[i], track.Y[i]) ?? presentation.DistanceFromRod(track.Time[i], track.X[i], track.Y[i])) / length, Columns);
            share[row, column]++;
            count++;
        }

        for (int r = 0; r < Rows && count > 0; r++)
        {
            for (int c = 0; c < Columns; c++) share[r, c] /= count;
        }

        return new WaterMap(Edges(length, Columns), Edges(shown.Depth, Rows), share, 1);
    }

    /// <summary>The mean of several maps of the same cells.</summary>
    /// <param name="maps">Maps, at least one.</param>
    /// <exception cref="ArgumentException">There is no map, or their cells differ.</exception>
    public static WaterMap Mean(IReadOnlyList<WaterMap> maps)
    {
        ArgumentNullException.ThrowIfNull(maps);
        if (maps.Count == 0 || maps.Any(m => m.DistanceEdges[^1] != maps[0].DistanceEdges[^1] || m.DepthEdges[^1] != maps[0].DepthEdges[^1]))
            throw new ArgumentException("At least one map, all of the same cells.", nameof(maps));
        double[,] share = new double[Rows, Columns];
        foreach (WaterMap map in maps)
        {
            for (int r = 0; r < Rows; r++)
            {
                for (int c = 0; c < Columns; c++) share[r, c] += map.Share[r, c] / maps.Count;
            }
        }

        return maps[0] with { Share = share, Runs = maps.Count };
    }

    private static int Cell(double share, int count) => double.IsFinite(share) ? Math.Clamp((int)(share * count), 0, count - 1) : 0;

    private static double[] Edges(double end, int count) => [.. Enumerable.Range(0, count + 1).Select(i => end * i / count)];
}
