using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>How one jig head looks in every figure of a sheet.</summary>
/// <param name="Head">The jig head.</param>
/// <param name="Label">Its name, unlike that of any other head.</param>
/// <param name="Colour">Colour by place in the order of weights.</param>
/// <param name="Shape">Shape of its marker.</param>
/// <param name="Filled">Whether the marker is filled.</param>
internal sealed record HeadStyle(JigHead Head, string Label, OxyColor Colour, MarkerShape Shape, bool Filled)
{
    /// <summary>Styles of the heads of a tackle box and of its candidates, by head.</summary>
    public static Dictionary<JigHead, HeadStyle> For(Scenario scenario, IEnumerable<Candidate> candidates, UnitFormat format) =>
        For(scenario.Tackle.JigHeads.Concat(candidates.Select(c => c.Rig.Head)), format);

    /// <summary>Styles of all heads, by head.</summary>
    public static Dictionary<JigHead, HeadStyle> For(IEnumerable<JigHead> heads, UnitFormat format)
    {
        List<JigHead> ordered = [.. heads.Distinct().OrderBy(h => h.Mass).ThenBy(h => h.Label, StringComparer.Ordinal)];
        int shapes = Enum.GetValues<MarkerShape>().Length;
        Dictionary<JigHead, HeadStyle> styles = [];
        for (int i = 0; i < ordered.Count; i++)
        {
            JigHead head = ordered[i];
            double place = ordered.Count == 1 ? 0.6 : i / (ordered.Count - 1.0);
            bool shared = ordered.Count(h => h.Label == head.Label) > 1;
            // Heads that share a written weight differ in metal, or at least in the weight of their hooks.
            string label = format.HeadText(head) + (shared ? " " + head.Metal.ToString().ToLowerInvariant() : "");
            if (styles.Values.Any(s => s.Label == label))
                label += $" ({UnitFormat.Number(head.HookMass * 1000, 1)} g hook)";
            styles[head] = new HeadStyle(head, label, Palette.Weight(place), (MarkerShape)(i % shapes), i / shapes % 2 == 0);
        }

        return styles;
    }
}
