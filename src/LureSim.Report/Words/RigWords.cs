using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Lures;
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
        if (rigging.HookGape is { } gape)
            parts.Add($"hook gap {format.RulerText(gape)}");
        if (rigging.WeightStation is { } station)
            parts.Add($"weight {UnitFormat.PercentText(station)} of the way down the shank");
        parts.AddRange(Faults(rigging, format));
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

    /// <summary>The faults, one by one; small lengths as a ruler measures them.</summary>
    public static IEnumerable<string> Faults(Rigging rigging, UnitFormat format) => FaultsByKind(rigging, format).Select(fault => fault.Text);

    /// <summary>The same with their kinds.</summary>
    public static IEnumerable<(RigFault Fault, string Text)> FaultsByKind(Rigging rigging, UnitFormat format)
    {
        if (rigging.ExitSideways != 0)
            yield return (RigFault.ExitSideways, format.Say($"hook comes out {format.RulerText(rigging.ExitSideways)} {Grammar.Side(rigging.ExitSideways)} of center"));
        if (rigging.ExitAbove != 0)
            yield return (RigFault.ExitAbove, $"hook comes out {format.RulerText(rigging.ExitAbove)} too {(rigging.ExitAbove > 0 ? "high" : "low")}");
        if (rigging.Bend != 0)
            yield return (RigFault.Bend, $"bait bent {UnitFormat.AngleText(rigging.Bend)} to the {Grammar.Side(rigging.Bend)}");
        if (rigging.PointLean != 0)
            yield return (RigFault.PointLean, $"hook point leans {UnitFormat.AngleText(rigging.PointLean)} to the {Grammar.Side(rigging.PointLean)}");
        if (rigging.HeadTurn != 0)
            yield return (RigFault.HeadTurn, $"head turned {UnitFormat.AngleText(rigging.HeadTurn)} to the {Grammar.Side(rigging.HeadTurn)}");
        if (rigging.PulledUp != 0)
            yield return (RigFault.PulledUp, $"pulled up {format.RulerText(rigging.PulledUp)} too far");
        if (rigging.TailLost != 0)
            yield return (RigFault.TailLost, $"{UnitFormat.PercentText(rigging.TailLost)} of the tail is missing");
    }

    /// <summary>The same for a lure on its hook, a hook that does not fit it among them; none for a lure that needs no hook.</summary>
    public static IEnumerable<(RigFault Fault, string Text)> FaultsOf(Rig rig, Rigging rigging, UnitFormat format)
    {
        if (!rig.Body.NeedsHead)
            yield break;
        foreach ((RigFault, string) fault in FaultsByKind(rigging, format))
            yield return fault;
        foreach (RigFault fault in RigChecker.Trials(rigging, rig).Select(trial => trial.Fault))
        {
            if (fault == RigFault.Shank)
                yield return (fault, $"hook holds {UnitFormat.PercentText(rigging.ShankShare ?? 0)} of the bait, {UnitFormat.PercentText(rig.Body.Kind.Proportions.ShankShare)} is usual");
            else if (fault == RigFault.HookGape)
                yield return (fault, $"hook gap {format.RulerText(rigging.HookGape ?? 0)}, {format.RulerText(SoftBait.CommonGape(rig.Head, rig.Body, rigging))} fits this bait");
            else if (fault == RigFault.WeightStation)
                yield return (fault, $"weight {UnitFormat.PercentText(rigging.WeightStation ?? 0)} of the way down the shank, {UnitFormat.PercentText(SoftBait.CommonWeightStation)} is usual");
        }
    }

    /// <summary>What is right where a fault is not, in a few words.</summary>
    public static string Right(RigFault fault) => fault switch
    {
        RigFault.ExitSideways => "hook out on the seam",
        RigFault.ExitAbove => "hook out where the bait lies straight",
        RigFault.Bend => "bait straight",
        RigFault.PointLean => "point straight up",
        RigFault.HeadTurn => "head in line with the bait",
        RigFault.PulledUp => "bait flat, no bunch",
        RigFault.Shank => "shorter hook, rear free",
        RigFault.HookGape => "smaller hook",
        RigFault.WeightStation => "weight under the middle of the shank",
        RigFault.TailLost => "whole tail",
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "No single fault."),
    };
}
