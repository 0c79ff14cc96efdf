using System.Globalization;
using LureSim.Validation.Reference;

namespace LureSim.Validation.Motion;

/// <summary>
/// Random rigs at rest behind a rod tip that stands or drifts, retrieved for 5 s: the reel comes up to speed and stops, the rod is lifted, swept and lowered. The engine, fine and
/// as it is used, against the limit of the independent lumped-mass code.
/// </summary>
/// <remarks>
/// The rigs are drawn from the whole ranges. Left out are only those that lie on the bottom, hang below their lure or have the lure within 0.1 m of the surface at rest; and those
/// whose lure touches bottom or surface or whose line goes slack on the way, by the independent code alone. LURESIM_RIG_LIST=FILE writes a line for each.
/// </remarks>
public class RandomRetrieveTests
{
    private const string Area = "Motion: random retrieves";
    private const string Source = "independent lumped-mass code, extrapolated in the segments";
    private const int Rigs = 58;
    private const int Least = 50;
    private const int CoarseSegments = 30;
    private const int MostSegments = 480;
    private const int EngineSegments = 120;

    // A fifth of it moves depths by 0.02 mm and tensions by 0.03 %.
    private const double Step = 1e-3;

    // Least clearance above the bottom and below the surface (m), and longest slack (s).
    private const double Clearance = 0.02;
    private const double LeastDepth = 0.03;
    private const double LongestSlack = 0.02;

    private static readonly Lock Gate = new();

    private sealed record Outcome(
        double Depth, double Tension, double DefaultDepth, double DefaultTension, double ReferenceDepthStep, double ReferenceTensionStep);

    [Fact]
    public void Engine_and_independent_code_agree_on_retrieves_from_a_settled_line()
    {
        var random = new Random(1);
        RetrieveRig[] rigs = [.. Enumerable.Range(0, Rigs).Select(_ => RetrieveRig.Draw(random))];
        var outcomes = new Outcome?[Rigs];
        Parallel.For(0, Rigs, i => outcomes[i] = Compare(i + 1, rigs[i]));
        Outcome[] compared = [.. outcomes.OfType<Outcome>()];

        string name = string.Create(CultureInfo.InvariantCulture, $"{compared.Length} random retrieves from a settled line: ");
        ValidationLog.AtMost(CheckClass.SameEquations, Area, "Random retrieves left out for bottom, surface or slack line on the way", Source, Rigs - Least, Rigs - compared.Length);
        ValidationLog.AtMost(CheckClass.SameEquations, Area, name + "largest difference in depth", Source, 0.005, compared.Max(o => o.Depth), "m");
        ValidationLog.AtMost(CheckClass.SameEquations, Area, name + "largest relative difference in the tension at the tip (mean over 0.2 s)", Source, 0.01, compared.Max(o => o.Tension));
        ValidationLog.AtMost(CheckClass.SameEquations, Area, name + "largest distance of the independent code from its own limit, depth", Source, 0.003, compared.Max(o => o.ReferenceDepthStep), "m");
        ValidationLog.AtMost(CheckClass.SameEquations, Area, name + "largest distance of the independent code from its own limit, tension", Source, 0.005, compared.Max(o => o.ReferenceTensionStep));

        // As the product computes by default; largest for light balls on 40 m and more of thick line.
        ValidationLog.AtMost(CheckClass.SameEquations, Area, name + "largest difference in depth, default 40 segments and tolerances", Source, 0.02, compared.Max(o => o.DefaultDepth), "m");
        ValidationLog.AtMost(CheckClass.SameEquations, Area, name + "largest relative difference in tension, default 40 segments and tolerances", Source, 0.02, compared.Max(o => o.DefaultTension));
    }

    private static Outcome? Compare(int number, RetrieveRig rig)
    {
        RetrieveResult coarse = rig.Reference(CoarseSegments, Step);
        if (coarse.Clearance < Clearance || coarse.LeastDepth < LeastDepth || coarse.LongestSlack > LongestSlack)
        {
            List(string.Create(
                CultureInfo.InvariantCulture,
                $"rig {number}: {rig}; left out: clearance {coarse.Clearance:F2} m, least depth {coarse.LeastDepth:F2} m, slack {coarse.LongestSlack:F3} s"));
            return null;
        }

        var limit = ReferenceLimit.Of((coarse.Depth, coarse.Tension), CoarseSegments, MostSegments, n =>
        {
            RetrieveResult result = rig.Reference(n, Step);
            return (result.Depth, result.Tension);
        });
        RetrieveResult engine = rig.Engine(new EngineSettings { Segments = EngineSegments, Tolerance = 0.1 }), asUsed = rig.Engine(new EngineSettings());
        var outcome = new Outcome(
            limit.DepthError(engine.Depth), limit.TensionError(engine.Tension), limit.DepthError(asUsed.Depth), limit.TensionError(asUsed.Tension), limit.LargestDepthStep, limit.LargestTensionStep);
        List(string.Create(
            CultureInfo.InvariantCulture,
            $"rig {number}: {rig}; depth {outcome.Depth * 1e3:F2} mm, tension {outcome.Tension * 100:F2} %; default {outcome.DefaultDepth * 1e3:F2} mm {outcome.DefaultTension * 100:F2} %; independent code with {limit.Segments} segments {outcome.ReferenceDepthStep * 1e3:F2} mm {outcome.ReferenceTensionStep * 100:F2} % from its limit"));
        return outcome;
    }

    private static void List(string line)
    {
        if (Environment.GetEnvironmentVariable("LURESIM_RIG_LIST") is not { Length: > 0 } list) return;
        lock (Gate) File.AppendAllText(list, line + Environment.NewLine);
    }
}
