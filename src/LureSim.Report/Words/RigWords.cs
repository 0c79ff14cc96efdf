using LureSim.Decision.RigChecks;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Swimming;

namespace LureSim.Report.Words;

/// <summary>Puts rigging into words.</summary>
internal static class RigWords
{
    /// <summary>Knot, shank and faults of a rigging.</summary>
    public static string Of(Rigging rigging, UnitFormat format)
    {
        List<string> parts = [Knot(rigging, format)];
        if (rigging.ShankShare is { } share)
            parts.Add($"shank {UnitFormat.PercentText(share)} of the bait");
        parts.AddRange(Faults(rigging));
        return string.Join("; ", parts) + (rigging.IsClean ? "; rigged straight" : "");
    }

    /// <summary>The verdict of a rig check in one or two sentences.</summary>
    public static string Verdict(RigFocus check, UnitFormat format)
    {
        string text = $"{OneLine(check.Action.Retrieve, format)} ({SwimmingWords.Share(check.Action.Retrieve)}).";
        return check.Fixes.Count > 0 ? $"{text} Fix: {SwimmingWords.Fix(check.Fixes[0], format.System)}" : text;
    }

    /// <summary>The parts of a rig check, for its section.</summary>
    public static IEnumerable<(string Label, string Text)> Items(RigFocus check, Rigging rigging, UnitFormat format)
    {
        yield return ("Rigged", Grammar.Capital(Of(rigging, format)) + ".");
        yield return ("On the retrieve", $"{Grammar.Capital(SwimmingWords.Line(check.Action.Retrieve, format.System))}. {string.Join(" ", SwimmingWords.Reasons(check.Action.Retrieve.Report, format.System))}");
        if (check.Action.Twitch is { } twitch)
            yield return ("On the twitch", Grammar.Capital(SwimmingWords.Line(twitch, format.System)) + ".");
        yield return ("On the fall", Grammar.Capital(SwimmingWords.Line(check.Fall, format.System)) + ".");
        foreach (RigFix fix in check.Fixes)
            yield return ("Fix", Grammar.Capital(SwimmingWords.Fix(fix, format.System)));
        if (check.Knots.Count > 0)
            yield return ("Knot", SwimmingWords.Knots(check.Knots));
    }

    // "OK" where there is nothing to fix.
    private static string OneLine(EnsembleAssessment tries, UnitFormat format) => tries.Verdict switch
    {
        ActionVerdict.Still => tries.Report.Beats ? "OK, tracks straight with a slight wag" : "OK, tracks straight",
        ActionVerdict.Glides => "OK, no action of its own on a straight pull; work it with the rod",
        ActionVerdict.Swims or ActionVerdict.Darts or ActionVerdict.Flutters => $"OK, {SwimmingWords.Line(tries.Report, format.System)}",
        _ => Grammar.Capital(SwimmingWords.Line(tries.Report, format.System)),
    };

    /// <summary>The knot.</summary>
    public static string Knot(Rigging rigging, UnitFormat format) => rigging.Knot switch
    {
        KnotStyle.Snug => "snug knot",
        KnotStyle.Clip => $"clip of {format.SizeText(rigging.LoopLength)}",
        KnotStyle.SplitRing => $"split ring of {format.SizeText(rigging.LoopLength)}",
        KnotStyle.Loop => $"loop knot of {format.SizeText(rigging.LoopLength)}",
        _ => throw new ArgumentOutOfRangeException(nameof(rigging), rigging.Knot, "Not a knot."),
    };

    /// <summary>The faults, one by one; small lengths in mm in either system, as they are measured with a ruler.</summary>
    public static IEnumerable<string> Faults(Rigging rigging)
    {
        if (rigging.ExitSideways != 0)
            yield return $"hook out {UnitFormat.MillimetresText(rigging.ExitSideways)} {Grammar.Side(rigging.ExitSideways)} of center";
        if (rigging.ExitAbove != 0)
            yield return $"hook out {UnitFormat.MillimetresText(rigging.ExitAbove)} too {(rigging.ExitAbove > 0 ? "high" : "low")}";
        if (rigging.Bend != 0)
            yield return $"bait bent {UnitFormat.AngleText(rigging.Bend)} to the {Grammar.Side(rigging.Bend)}";
        if (rigging.PointLean != 0)
            yield return $"hook point leans {UnitFormat.AngleText(rigging.PointLean)} to the {Grammar.Side(rigging.PointLean)}";
        if (rigging.HeadTurn != 0)
            yield return $"head turned {UnitFormat.AngleText(rigging.HeadTurn)} to the {Grammar.Side(rigging.HeadTurn)}";
        if (rigging.PulledUp != 0)
            yield return $"pulled up {UnitFormat.MillimetresText(rigging.PulledUp)} too far";
    }
}
