using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;
using MathNet.Numerics.Distributions;

namespace LureSim.Decision.Trials;

/// <summary>How a lure passes a structure, over the directions that a cast takes about the one that is aimed at.</summary>
/// <remarks>
/// The structure does not act on the motion: the path is that of open water, turned about the rod by the error of the aim. Posts are hung up on where the lure comes within the length of a hook of them, or
/// where the line lies across them; a clump where the lure is over it and lower than its top by less than that; an overhang where the cast lands on it.
/// </remarks>
/// <param name="Structure">The structure.</param>
/// <param name="ReachTime">Seconds within its reach after the splash-down.</param>
/// <param name="Nearest">Least horizontal distance of the lure from it for a cast that goes where it is aimed (m).</param>
/// <param name="ShadeShare">Share of the retrieve in its shade, 0 to 1.</param>
/// <param name="SnagChance">Chance that lure or line hangs up on it, 0 to 1.</param>
public sealed record StructurePass(SpotStructure Structure, double ReachTime, double Nearest, double ShadeShare, double SnagChance)
{
    /// <summary>Error of the aim that nine casts in ten stay within (radians), three degrees: a yard at 60 feet. Assumed.</summary>
    public const double AimError = 3 * Math.PI / 180;

    private const int Directions = 9;

    // Quantile 0.95 of the standard normal distribution.
    private const double NineInTen = 1.6448536269514722;

    // Middles of nine equal slices of the normal distribution.
    private static readonly double[] Errors = [.. Enumerable.Range(0, Directions).Select(i => Normal.InvCDF(0, AimError / NineInTen, (i + 0.5) / Directions))];

    /// <summary>The passes of a rig by every structure of a spot, in the spot's order.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="track">Its run.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<StructurePass> Of(Spot spot, Rig rig, Track track)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(track);
        if (spot.Structures.Count == 0) return [];
        Spot seen = spot.SeenAlong(rig.Presentation.Aim);
        double hook = ScoreWeights.Default.HookLength + TackleBuilder.Lure(rig.Head, rig.Body).ContactRadius;
        return [.. spot.Structures.Select(structure => Of(seen, structure, rig.Presentation, track, hook))];
    }

    /// <summary>The structure in whose shade a rig runs for more than half of its retrieve; null for none.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="candidate">A rig with its run.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static SpotStructure? MainShade(Spot spot, Candidate candidate)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(candidate);
        return spot.Structures.Count == 0 || spot.ShadedSky is not null ? null : Of(spot, candidate.Rig, candidate.Track).FirstOrDefault(pass => pass.ShadeShare > 0.5)?.Structure;
    }

    private static StructurePass Of(Spot spot, SpotStructure structure, Presentation presentation, Track track, double hook)
    {
        double time = 0, shade = 0, nearest = double.PositiveInfinity;
        int snags = 0, retrieve = 0, interval = 0;
        foreach (TrackState state in track.State) retrieve += (state & TrackState.Falling) == 0 ? 1 : 0;
        foreach (double error in Errors)
        {
            (double sine, double cosine) = Math.SinCos(error);
            bool hung = false;
            for (int i = 0; i < track.Count; i++)
            {
                double x = (track.X[i] * cosine) - (track.Y[i] * sine), y = (track.X[i] * sine) + (track.Y[i] * cosine);
                double along = spot.AlongProfile(x, y), left = spot.AcrossProfile(x, y), distance = structure.DistanceTo(along, left);
                if (distance <= structure.Reach) time += i > 0 ? track.Time[i] - track.Time[i - 1] : 0;
                if ((track.State[i] & TrackState.Falling) == 0 && structure.Shades(along, left)) shade++;
                if (interval == Directions / 2) nearest = Math.Min(nearest, distance);
                if (hung) continue;
                double rodX = presentation.DriftAlong * track.Time[i], rodY = presentation.DriftLeft * track.Time[i];
                hung = structure.Kind switch
                {
                    StructureKind.Posts => distance <= hook || Crosses(structure, spot.AlongProfile(rodX, rodY), spot.AcrossProfile(rodX, rodY), along, left),
                    StructureKind.OysterClump => distance <= hook && -track.Z[i] >= spot.DepthAt(x, y) - structure.Height - hook,
                    StructureKind.Overhang => i == 0 && distance == 0,
                    _ => throw new ArgumentOutOfRangeException(nameof(structure), structure.Kind, "Not a structure."),
                };
            }

            if (hung) snags++;
            interval++;
        }

        return new StructurePass(structure, time / Directions, nearest, retrieve > 0 ? shade / (Directions * retrieve) : 0, (double)snags / Directions);
    }

    // Whether the straight line from rod to lure passes through the rectangle (Liang & Barsky 1984).
    private static bool Crosses(SpotStructure s, double x0, double y0, double x1, double y1)
    {
        double from = 0, to = 1;
        return Clip(x1 - x0, x0 - s.From, s.To - x0) && Clip(y1 - y0, y0 - (s.Left - (0.5 * s.Width)), s.Left + (0.5 * s.Width) - y0);

        // Both distances inside, of the start from the near side and from the far side.
        bool Clip(double d, double low, double high)
        {
            if (d == 0) return low >= 0 && high >= 0;
            double a = -low / d, b = high / d;
            from = Math.Max(from, Math.Min(a, b));
            to = Math.Min(to, Math.Max(a, b));
            return from <= to;
        }
    }
}
