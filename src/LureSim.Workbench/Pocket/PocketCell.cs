using LureSim.Decision.Trials;
using LureSim.Motion;
using LureSim.Stepping;

namespace LureSim.Workbench.Pocket;

/// <summary>What a table keeps of one run: numbers from 0 to 255, in the order of <see cref="PocketLayout"/>.</summary>
internal static class PocketCell
{
    /// <summary>A wait that never ends, and one too long to keep.</summary>
    public const byte Never = 255;

    // Shares in half points, waits in half seconds.
    private const double ShareSteps = 200;
    private const double WaitSteps = 2;

    /// <summary>Packs a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="depth">Depth of its water (m).</param>
    /// <param name="layout">How cells are laid out.</param>
    public static byte[] Pack(Candidate run, double depth, PocketLayout layout)
    {
        byte[] cell = new byte[layout.Size];
        Coverage c = run.Coverage;
        cell[PocketLayout.Zone] = Share(c.ZoneShare);
        cell[PocketLayout.Bottom] = Share(c.BottomShare);
        cell[PocketLayout.Grass] = Share(c.GrassShare);
        cell[PocketLayout.Score] = Share(run.Score);
        cell[PocketLayout.Wait] = c.TimeToZone is { } wait && wait * WaitSteps < Never - 0.5 ? (byte)Math.Round(wait * WaitSteps) : Never;
        cell[PocketLayout.Verdict] = (byte)(run.Track.Status == SimulationStatus.Failed ? TrialVerdict.NotComputed : run.Verdict);
        cell[PocketLayout.Middle] = layout.Height(depth - c.MedianDepth);
        Track track = run.Track;
        int start = 0;
        while (start < track.Count && (track.State[start] & TrackState.Falling) != 0) start++;
        int count = track.Count - start;
        for (int s = 0; s < layout.Slices; s++)
        {
            int from = start + (count * s / layout.Slices), to = Math.Max(from + 1, start + (count * (s + 1) / layout.Slices));
            double[] heights = [.. Enumerable.Range(from, Math.Max(0, Math.Min(to, track.Count) - from)).Select(i => depth - track.Depth(i)).Order()];
            if (heights.Length == 0) heights = [depth];
            cell[PocketLayout.Path + s] = layout.Height(heights[heights.Length / 2]);
            if (!layout.Wanders) continue;
            cell[PocketLayout.Path + layout.Slices + s] = layout.Height(heights[^1]);
            cell[PocketLayout.Path + (2 * layout.Slices) + s] = layout.Height(heights[0]);
        }

        // The same heights in order, whenever they were: what a lure that goes up and down by its own clock has in common with itself in other water.
        double[] all = [.. Enumerable.Range(start, Math.Max(0, track.Count - start)).Select(i => depth - track.Depth(i)).Order()];
        if (all.Length == 0) all = [depth];
        for (int k = 0; k < layout.Spread; k++) cell[layout.Lowest + k] = layout.Height(all[(int)((k + 0.5) / layout.Spread * all.Length)]);

        return cell;
    }

    private static byte Share(double share) => (byte)Math.Round(ShareSteps * Math.Clamp(double.IsFinite(share) ? share : 0, 0, 1));
}

/// <summary>How the cells of a table are laid out.</summary>
/// <param name="Slices">Parts of the retrieve, by time, of which the height above the bottom is kept.</param>
/// <param name="Wanders">True where the lure goes up and down within a part: its highest and lowest are kept too.</param>
/// <param name="Tallest">Height above the bottom (m) that stands for 255.</param>
internal sealed record PocketLayout(int Slices, bool Wanders, double Tallest)
{
    /// <summary>Places in a cell.</summary>
    public const int Zone = 0, Bottom = 1, Grass = 2, Score = 3, Wait = 4, Verdict = 5, Middle = 6, Path = 7;

    /// <summary>Heights in order that are kept of the whole retrieve; none where its path goes by and by, and says as much.</summary>
    public int Spread => Wanders ? 24 : 0;

    /// <summary>Place of the lowest of them.</summary>
    public int Lowest => Path + (Slices * (Wanders ? 3 : 1));

    /// <summary>Bytes of a cell.</summary>
    public int Size => Lowest + Spread;

    /// <summary>A height above the bottom as a number from 0 to 255.</summary>
    /// <param name="metres">The height (m).</param>
    public byte Height(double metres) => (byte)Math.Round(255 * Math.Clamp(metres / Tallest, 0, 1));
}
