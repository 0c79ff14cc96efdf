using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>How many of a thing to take: what is lost and torn in the hours, spares, and numbers that a box is packed with. Common practice, assumed.</summary>
internal static class PackWords
{
    /// <summary>Hours at a spot where no clock is given.</summary>
    public const double UsualHours = 2;

    // Spares of a head, soft baits torn an hour, and baits in a pack.
    private const int SpareHeads = 2;
    private const double TornAnHour = 2;
    private const int InPack = 6;

    // Numbers that people count out.
    private static readonly int[] Round = [2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30];

    /// <summary>Heads lost in an hour on a bottom.</summary>
    public static double LostAnHour(BottomKind bottom) => bottom switch
    {
        BottomKind.Shell => 1,
        BottomKind.Hard => 0.75,
        BottomKind.Sand or BottomKind.Mud => 0.25,
        _ => throw new ArgumentOutOfRangeException(nameof(bottom), bottom, "Not a bottom."),
    };

    /// <summary>Heads to take for those that are lost, with a sign of times: "3 3/8 oz" would read as three and three eighths.</summary>
    /// <param name="lost">Heads lost on the average.</param>
    public static string Heads(double lost)
    {
        int wanted = (int)Math.Ceiling(lost) + SpareHeads;
        return UnitFormat.Number(Round.FirstOrDefault(number => number >= wanted, wanted), 0) + " ×";
    }

    /// <summary>Packs of soft baits, or lures, to take for some hours.</summary>
    /// <param name="hours">Hours of fishing.</param>
    public static string Baits(double hours) => UnitFormat.Counted(Math.Max(1, (int)Math.Ceiling(hours * TornAnHour / InPack)), "pack") + " of";
}
