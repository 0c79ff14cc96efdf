using LureSim.Model;
using LureSim.Tackle;

namespace LureSim.Scenarios;

/// <summary>Checks and builds what a scenario says on how well its inputs are known.</summary>
internal static class UncertaintyBuilder
{
    private static readonly string[] Spreads = ["current", "cast", "retrieve_speed", "depth", "clarity", "rod_tip_height"];

    /// <summary>Checks that edges are in order.</summary>
    public static void Check(ReadValue? uncertainty, Action<ReadValue, string, string, string> add)
    {
        foreach (ReadValue? spread in Spreads.Select(name => uncertainty?[name]))
        {
            foreach (ReadValue list in ((ReadValue?[])[spread?["between"], spread?["triangular"]]).OfType<ReadValue>())
            {
                for (int i = 1; i < list.Items.Count; i++)
                {
                    if (list.Items[i].Number < list.Items[i - 1].Number)
                        add(list.Items[i], "the values are out of order", "the smaller number first", "give the values in order");
                }
            }
        }
    }

    /// <summary>Builds; what is not given is assumed or exact.</summary>
    /// <param name="uncertainty">What the scenario says of it; null for nothing.</param>
    /// <param name="stand">Where the angler stands, where the height of the rod tip comes from it.</param>
    public static ScenarioUncertainty Build(ReadValue? uncertainty, StandHeight? stand = null)
    {
        ScenarioUncertainty others = uncertainty?["others"]?.Word?.Meaning is false ? ScenarioUncertainty.None
            : stand is null ? ScenarioUncertainty.Assumed : ScenarioUncertainty.Assumed with { RodHeight = Spread.OfShare(stand.Spread) };
        if (uncertainty is null)
            return others;
        ReadValue? drag = uncertainty["line_drag"];
        return others with
        {
            Current = Of("current", others.Current),
            Cast = Of("cast", others.Cast),
            RetrieveSpeed = Of("retrieve_speed", others.RetrieveSpeed),
            Depth = Of("depth", others.Depth),
            Clarity = Of("clarity", others.Clarity),
            RodHeight = Of("rod_tip_height", others.RodHeight),
            LineDrag = drag?["factor"] is { } factor ? Spread.OfShare(factor.Number) : others.LineDrag,
            LureDrag = uncertainty["lure_drag"] is { } lure ? Spread.OfShare(lure.Number) : others.LureDrag,
            LineLaw = drag?["law"]?.Word?.Meaning is LineLawChoice law ? law : others.LineLaw,
            SightIsKnown = uncertainty["sight"]?.Word?.Meaning is bool known ? known : others.SightIsKnown,
            Samples = uncertainty["samples"] is { } samples ? (int)samples.Number : others.Samples,
            Seed = uncertainty["seed"] is { } seed ? (int)seed.Number : others.Seed,
        };

        Spread Of(string name, Spread fallback)
        {
            ReadValue? value = uncertainty[name];
            if (value?["between"] is { } band)
                return Spread.OfBand(band.Items[0].Number, band.Items[1].Number);
            if (value?["triangular"] is { } triangle)
                return Spread.OfTriangle(triangle.Items[0].Number, triangle.Items[1].Number, triangle.Items[2].Number);
            return value?["plus_or_minus"] is not { } margin ? fallback
                : margin.Text.AsSpan().TrimEnd().EndsWith("%", StringComparison.Ordinal) ? Spread.OfShare(margin.Number) : Spread.OfAmount(margin.Number);
        }
    }
}
