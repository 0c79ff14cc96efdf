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

    /// <summary>Below this nobody counts (s).</summary>
    public const double ShortestCount = 0.25;

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
        string lure = ChoiceWords.Lure(run.Rig, format);
        string count = way.CountDown is not { } seconds ? "let it sink to the bottom" : seconds < ShortestCount ? "no count" : $"{UnitFormat.SecondsNumber(seconds)}-count";
        string hands = way.RetrieveSpeed > 0 ? RetrieveWords.Pace(way.RetrieveSpeed, question.Scenario.Tackle.Reel, format) : "no reeling";
        string start = $"{lure}, {way.Name}, {count}, {hands}";
        if (run.Verdict == TrialVerdict.NotComputed) return $"{start}: could not be computed. {TrackWords.EndOrStatus(run.Track)}";
        Coverage c = run.Coverage;
        (double high, double low) = Running(run.Track);
        string runs = $"runs {(format.HandNumber(high) == format.HandNumber(low) ? "at " : "")}{format.HandBand(high, low)}";
        return c.TimeToZone is { } time
            ? $"{start}: in the strike zone after {UnitFormat.SecondsText(time)}, {runs}, in the zone {UnitFormat.PercentText(c.ZoneShare)} of the retrieve."
            : $"{start}: {runs}, never in the strike zone ({format.HandBand(question.Scenario.Spot.StrikeZone.Top, question.Scenario.Spot.StrikeZone.Bottom)}).";
    }

    /// <summary>What changed against the picture that is kept.</summary>
    public static string Difference(Candidate run, Candidate pinned, string kept, UnitFormat format)
    {
        Coverage now = run.Coverage, then = pinned.Coverage;
        List<string> parts = [];
        double share = now.ZoneShare - then.ZoneShare, depth = now.MedianDepth - then.MedianDepth;
        if (Math.Abs(share) >= AlikeShare) parts.Add($"{(share > 0 ? "+" : "−")}{UnitFormat.Number(Math.Abs(100 * share), 0)} points in the zone");
        if (Math.Abs(depth) >= AlikeDepth) parts.Add($"{format.HandText(Math.Abs(depth))} {(depth > 0 ? "deeper" : "shallower")}");
        if (now.TimeToZone is { } a && then.TimeToZone is { } b && Math.Abs(a - b) >= AlikeTime) parts.Add($"there {UnitFormat.SecondsText(Math.Abs(a - b))} {(a > b ? "later" : "sooner")}");
        if (now.TimeToZone is null != then.TimeToZone is null) parts.Add(now.TimeToZone is null ? "no longer gets there" : "gets there now");
        return parts.Count == 0 ? $"No real difference from the one you kept ({kept})." : $"Against the one you kept ({kept}): {string.Join(", ", parts)}.";
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
    public static string Against(SightMode mode) => mode switch
    {
        SightMode.MatchesBackground => "about as light as the water: hard to make out",
        SightMode.Reflects => "lighter than the water: shines",
        SightMode.Silhouettes or SightMode.GoneDark => "darker than the water: stands out as a shape",
        _ => throw new ArgumentOutOfRangeException(nameof(mode), mode, "Not a mode."),
    };
}
