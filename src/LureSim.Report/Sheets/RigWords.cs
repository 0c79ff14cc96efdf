using LureSim.Decision;
using LureSim.Model;

namespace LureSim.Report.Sheets;

/// <summary>Puts rigging into words.</summary>
internal static class RigWords
{
    /// <summary>Knot, shank and faults of a rigging.</summary>
    public static string Of(Rigging rigging, UnitFormat format)
    {
        List<string> parts = [Knot(rigging, format)];
        if (rigging.ShankShare is { } share)
            parts.Add($"shank {UnitFormat.PercentText(share)} of the body");
        parts.AddRange(Faults(rigging));
        return string.Join("; ", parts) + (rigging.IsClean ? "; put on cleanly" : "");
    }

    /// <summary>The verdict of a rig check in one or two sentences.</summary>
    public static string Verdict(RigFocus check, UnitFormat format)
    {
        string text = Capital(ActionWords.Line(check.Action.Retrieve.Report, format.System)) + ".";
        return check.Mend.Count > 0 ? $"{text} {check.Mend[0].What}" : text;
    }

    /// <summary>The parts of a rig check, for its section.</summary>
    public static IEnumerable<LabelledText> Items(RigFocus check, Rigging rigging, UnitFormat format)
    {
        yield return new LabelledText("Rigged", Capital(Of(rigging, format)) + ".");
        yield return new LabelledText("On the retrieve", $"{Capital(ActionWords.Line(check.Action.Retrieve.Report, format.System))}. {string.Join(" ", check.Action.Retrieve.Report.Reasons)}");
        if (check.Action.Twitch is { } twitch)
            yield return new LabelledText("On the twitch", Capital(ActionWords.Line(twitch.Report, format.System)) + ".");
        yield return new LabelledText("On the fall", Capital(ActionWords.Line(check.Fall.Report, format.System)) + ".");
        foreach (Mending mend in check.Mend)
            yield return new LabelledText("Mend", mend.What);
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>The knot.</summary>
    public static string Knot(Rigging rigging, UnitFormat format) => rigging.Knot switch
    {
        KnotStyle.Snug => "snug knot",
        KnotStyle.Clip => $"clip of {format.SizeText(rigging.LoopLength)}",
        KnotStyle.SplitRing => $"split ring of {format.SizeText(rigging.LoopLength)}",
        _ => $"loop knot of {format.SizeText(rigging.LoopLength)}",
    };

    /// <summary>The faults, one by one; small lengths in mm in either system, as they are measured with a ruler.</summary>
    public static IEnumerable<string> Faults(Rigging rigging)
    {
        if (rigging.ExitSideways != 0)
            yield return $"hook out {Millimetres(rigging.ExitSideways)} {Side(rigging.ExitSideways)} of the centre line";
        if (rigging.ExitAbove != 0)
            yield return $"hook out {Millimetres(rigging.ExitAbove)} too {(rigging.ExitAbove > 0 ? "high" : "low")}";
        if (rigging.Bend != 0)
            yield return $"body bent {Degrees(rigging.Bend)} to the {Side(rigging.Bend)}";
        if (rigging.PointLean != 0)
            yield return $"hook point leans {Degrees(rigging.PointLean)} to the {Side(rigging.PointLean)}";
        if (rigging.HeadTurn != 0)
            yield return $"head turned {Degrees(rigging.HeadTurn)} to the {Side(rigging.HeadTurn)}";
        if (rigging.PulledUp != 0)
            yield return $"pulled up {Millimetres(rigging.PulledUp)} too far";
    }

    private static string Millimetres(double metres) => $"{UnitFormat.Number(Math.Abs(metres) * 1000, 1)} mm";

    private static string Degrees(double radians) => $"{UnitFormat.Number(Math.Abs(radians) * 180 / Math.PI, 1)}°";

    private static string Side(double value) => value > 0 ? "left" : "right";
}
