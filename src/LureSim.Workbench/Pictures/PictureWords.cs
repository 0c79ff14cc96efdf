using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>Sentences of the page.</summary>
internal static class PictureWords
{
    // Less than this is no difference: of a share, of a depth (m) and of a wait (s).
    private const double AlikeShare = 0.05;
    private const double AlikeDepth = 0.15;
    private const double AlikeTime = 0.5;

    // Share of a bottom contact from which a lure drags rather than ticks.
    private const double Drags = 0.5;

    /// <summary>Two words on a run.</summary>
    public static string Short(Candidate candidate, Spot spot)
    {
        Coverage c = candidate.Coverage;
        bool bottomIsZone = spot.StrikeZone.Bottom >= spot.Depth - 0.1;
        return candidate.Verdict switch
        {
            TrialVerdict.NotComputed => "not computed",
            TrialVerdict.BelowZone => "runs below",
            TrialVerdict.NeverDownToZone => "never gets there",
            TrialVerdict.DragsInGrass => "in the grass",
            TrialVerdict.PlodsOnBottom => bottomIsZone ? "on bottom" : "drags bottom",
            TrialVerdict.TouchesBottom => c.BottomShare > Drags ? "drags bottom" : "ticks bottom",
            TrialVerdict.MostlyAbove => "mostly above",
            TrialVerdict.MostlyBelow => "mostly below",
            TrialVerdict.RunsClear => "runs clean",
            TrialVerdict.PartlyInZone => "partly in zone",
            _ => throw new ArgumentOutOfRangeException(nameof(candidate), candidate.Verdict, "Not a verdict."),
        };
    }

    /// <summary>The sentence on top: what is tied on, what the hands do, and what comes of it.</summary>
    public static string Sentence(BenchQuestion question, Candidate run, UnitFormat format)
    {
        Presentation way = run.Rig.Presentation;
        string lure = Lure(run.Rig, format);
        string count = way.CountDown is not { } seconds ? "let it sink to the bottom" : seconds <= 0 ? "no count" : $"{UnitFormat.SecondsNumber(seconds)}-count";
        string hands = way.RetrieveSpeed > 0 ? KnobCatalogue.Turns(way.RetrieveSpeed, question.Scenario.Tackle.Reel, format) : "no reeling";
        string start = $"{lure}, {way.Name}, {count}, {hands}";
        if (run.Verdict == TrialVerdict.NotComputed) return $"{start}: could not be computed. {TrackWords.EndOrStatus(run.Track)}";
        Coverage c = run.Coverage;
        (double high, double low) = Running(run.Track);
        string runs = $"runs {Band(high, low, format)}";
        return c.TimeToZone is { } time
            ? $"{start}: in the strike zone after {UnitFormat.SecondsText(time)}, {runs}, in the zone {UnitFormat.PercentText(c.ZoneShare)} of the retrieve."
            : $"{start}: {runs}, never in the strike zone ({Band(question.Scenario.Spot.StrikeZone.Top, question.Scenario.Spot.StrikeZone.Bottom, format)}).";
    }

    /// <summary>A lure with its head.</summary>
    public static string Lure(Rig rig, UnitFormat format) => rig.Head.IsNone ? rig.Body.Label : $"{format.HeadText(rig.Head)} with the {rig.Body.Label}";

    /// <summary>What changed against the picture that is kept.</summary>
    public static string Difference(Candidate run, Candidate pinned, string kept, UnitFormat format)
    {
        Coverage now = run.Coverage, then = pinned.Coverage;
        List<string> parts = [];
        double share = now.ZoneShare - then.ZoneShare, depth = now.MedianDepth - then.MedianDepth;
        if (Math.Abs(share) >= AlikeShare) parts.Add($"{(share > 0 ? "+" : "−")}{UnitFormat.Number(Math.Abs(100 * share), 0)} points in the zone");
        if (Math.Abs(depth) >= AlikeDepth) parts.Add($"{format.LengthText(Math.Abs(depth))} {(depth > 0 ? "deeper" : "shallower")}");
        if (now.TimeToZone is { } a && then.TimeToZone is { } b && Math.Abs(a - b) >= AlikeTime) parts.Add($"there {UnitFormat.SecondsText(Math.Abs(a - b))} {(a > b ? "later" : "sooner")}");
        if (now.TimeToZone is null != then.TimeToZone is null) parts.Add(now.TimeToZone is null ? "no longer gets there" : "gets there now");
        return parts.Count == 0 ? $"No real difference from the one you kept ({kept})." : $"Against the one you kept ({kept}): {string.Join(", ", parts)}.";
    }

    /// <summary>A band of depths as a hand can use it, "6½ to 8 ft"; one depth where the band is narrow.</summary>
    public static string Band(double from, double to, UnitFormat format)
    {
        string first = Half(format.LengthValue(from)), last = Half(format.LengthValue(to));
        return first == last ? $"at {last} {format.LengthUnit}" : $"{first} to {last} {format.LengthUnit}";
    }

    /// <summary>To the half, as a hand can use it.</summary>
    public static string Half(double value)
    {
        double half = Math.Round(value * 2, MidpointRounding.AwayFromZero) / 2;
        double whole = Math.Floor(half);
        return half == whole ? UnitFormat.Number(half, 0) : whole == 0 ? "½" : $"{UnitFormat.Number(whole, 0)}½";
    }

    /// <summary>Depths between which a lure is for eight tenths of its retrieve (m).</summary>
    public static (double High, double Low) Running(Track track)
    {
        double[] depths = [.. Enumerable.Range(0, track.Count).Where(i => (track.State[i] & TrackState.Falling) == 0).Select(track.Depth).Order()];
        if (depths.Length == 0) return (0, 0);
        const double Tail = 0.1;
        return (Math.Max(0, depths[(int)(Tail * (depths.Length - 1))]), Math.Max(0, depths[(int)((1 - Tail) * (depths.Length - 1))]));
    }

    /// <summary>How a color stands against the water behind it.</summary>
    public static string Against(Sighting sighting)
    {
        return sighting.Mode switch
        {
            SightMode.MatchesBackground => "about as light as the water: hard to make out",
            SightMode.Reflects => "lighter than the water: shines",
            SightMode.Silhouettes or SightMode.GoneDark => "darker than the water: stands out as a shape",
            _ => throw new ArgumentOutOfRangeException(nameof(sighting), sighting.Mode, "Not a mode."),
        };
    }
}
