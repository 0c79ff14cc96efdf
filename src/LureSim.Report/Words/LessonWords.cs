using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Report.Words;

/// <summary>Puts a lesson in light and sight into words.</summary>
public static class LessonWords
{
    /// <summary>The spot of the scenario, beside the waters of the lesson.</summary>
    public const string ThisSpot = "this spot";

    /// <summary>A water of the lesson.</summary>
    /// <param name="water">Kind of water.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no kind of water.</exception>
    public static string Water(WaterKind water) => water switch
    {
        WaterKind.ClearOcean => "clear water",
        WaterKind.CoastalGreen => "green coastal water",
        WaterKind.TanninStained => "tannin-stained water",
        WaterKind.Silty => "silty water",
        _ => throw new ArgumentOutOfRangeException(nameof(water), water, "Unknown water kind."),
    };

    /// <summary>A criterion of going dark, for the head of a column.</summary>
    /// <param name="criterion">The criterion.</param>
    /// <param name="eye">The eye of the lesson.</param>
    /// <exception cref="ArgumentNullException"><paramref name="eye"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">It is no criterion.</exception>
    public static string Criterion(DarkCriterion criterion, FishEye eye)
    {
        ArgumentNullException.ThrowIfNull(eye);
        return criterion switch
        {
            DarkCriterion.LuminanceAgainstWhite => "near black beside white",
            DarkCriterion.Chroma => "without hue",
            DarkCriterion.ContrastToWater => "a silhouette",
            DarkCriterion.FishCones => $"to the cones of a {eye.CommonName}{(eye.Basis == EyeBasis.StandIn ? " (stand-in)" : "")}",
            _ => throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Unknown criterion."),
        };
    }
}
