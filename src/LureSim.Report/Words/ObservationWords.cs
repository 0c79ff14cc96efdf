using System.Diagnostics;
using LureSim.Decision.Observations;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>What was seen on the water, what it changed, and what to look at next, in plain sentences.</summary>
public static class ObservationWords
{
    /// <summary>Heading of the part of a page that tells it.</summary>
    public const string Heading = "What you saw";

    /// <summary>An observation in a few words: "1/4 oz on bottom at a 9-count".</summary>
    /// <param name="seen">The observation.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Line(Observation seen, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(format);
        string lure = seen.Body is null ? "" : Lure(seen, format) + " ", figure = Figure(seen, seen.Value, format);
        if (!seen.Happened)
        {
            return seen.Kind switch
            {
                ObservationKind.FirstTick => $"{lure}not ticking yet at {figure}",
                ObservationKind.TurnsToTick => $"{lure}not ticking after {figure}",
                ObservationKind.BottomTime => $"{lure}not on bottom by {figure}",
                _ => throw new ArgumentOutOfRangeException(nameof(seen), seen.Kind, "It cannot have failed to happen so far."),
            };
        }

        return seen.Kind switch
        {
            ObservationKind.BottomTime => $"{lure}on bottom {(seen.Counted ? "at" : "in")} {figure}",
            ObservationKind.FirstTick => $"{lure}first ticks at {figure}",
            ObservationKind.TurnsToTick => $"{lure}ticks after {figure}",
            ObservationKind.TurnsToClear => $"{lure}clear of the bottom after {figure}",
            ObservationKind.LineAngle => $"{lure}line {figure}",
            ObservationKind.ExitAngle => $"{lure}came out {figure}",
            ObservationKind.WhiteVanishes => $"white plate gone at {figure}",
            ObservationKind.LureVanishes => $"bright lure gone at {figure}",
            ObservationKind.FloatDrift => $"float: {format.LengthText(seen.Length!.Value)} in {figure}",
            ObservationKind.PoolFall => $"{lure}fell {format.LengthText(seen.Length!.Value)} in {figure} in still water",
            ObservationKind.LineOut => $"{lure}on bottom with {figure} of line out",
            _ => throw new ArgumentOutOfRangeException(nameof(seen), seen.Kind, "Not a kind of observation."),
        };
    }

    /// <summary>What was known of an input and what is known now: "Current: 0.4 to 1.3 kn, now 0.8 to 1 kn".</summary>
    /// <param name="input">The input.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Learned(LearnedInput input, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(format);
        return $"{Name(input, format)}: {Band(input.Kind, input.Before, format)}, now {Band(input.Kind, input.After, format)}";
    }

    /// <summary>Name of an input: "current", "drag of the 4 in paddle tail".</summary>
    /// <param name="input">The input.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Name(LearnedInput input, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(format);
        return input.Kind switch
        {
            LearnedInputKind.Current => "current",
            LearnedInputKind.Depth => "depth",
            LearnedInputKind.LureDrag => $"drag of the {format.LureText(input.Body!)}",
            LearnedInputKind.LineDrag => "drag of the line",
            LearnedInputKind.Clarity => "a white disk goes out of sight at",
            _ => throw new ArgumentOutOfRangeException(nameof(input), input.Kind, "Not an input."),
        };
    }

    /// <summary>A range of an input in which eight in ten lie; drags as a share of the computed one.</summary>
    /// <param name="kind">The input.</param>
    /// <param name="range">The range.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Band(LearnedInputKind kind, Interval range, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(range);
        ArgumentNullException.ThrowIfNull(format);
        string low = Value(kind, range.Low, format), high = Value(kind, range.High, format);
        if (low == high) return high;
        int space = low.LastIndexOf(' ');
        bool same = space > 0 && high.EndsWith(low[space..], StringComparison.Ordinal);
        return $"{(same ? low[..space] : low)} to {high}{(kind is LearnedInputKind.LineDrag or LearnedInputKind.LureDrag ? " of the computed one" : "")}";
    }

    /// <summary>Why an observation was left out, and what to check: "A 5-count cannot be true at 18 ft with this head (8 to 11 s expected): check the depth or the weight. It is left out.".</summary>
    /// <param name="fit">An observation in conflict.</param>
    /// <param name="scenario">The scenario as it was given.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The observation is in no conflict.</exception>
    public static string Conflict(ObservationFit fit, Scenario scenario, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(format);
        if (fit.Conflict is not { } conflict) throw new ArgumentException("The observation was used.", nameof(fit));
        Observation seen = fit.Observation;
        Interval expected = conflict.Kind == ConflictKind.WithScenario ? fit.Before : fit.After;
        string with = conflict.Kind == ConflictKind.WithOthers ? "with what else you saw"
            : seen.Kind is ObservationKind.BottomTime or ObservationKind.FirstTick or ObservationKind.LineOut ? $"at {format.HandText(scenario.Spot.Depth)}{(seen.Head is { IsNone: false } ? " with this head" : "")}"
            : "with what the scenario says";
        string check = Grammar.Join(conflict.Suspects.Select(suspect => "the " + Suspect(suspect)), "or");
        return $"{Grammar.Capital(Line(seen, format))}: cannot be true {with} ({Expected(seen, expected, format)} expected). Check {(check.Length > 0 ? check : "the figure")}; it is left out.";
    }

    /// <summary>Whether the choice stays or moves, and how sure it is now.</summary>
    /// <param name="seen">What observations did.</param>
    /// <param name="choice">The choice now.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Outcome(CalibratedChoice seen, Decision.Choice choice, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(format);
        string now = ChoiceWords.Lure(choice.First.Rig, format), was = ChoiceWords.Lure(seen.Before.First.Rig, format);
        string sure = choice.Numbers is { Tries: > 1 } tries ? $": best or as good in {choice.AsGoodIn} of {tries.Tries} tries, {seen.BestBefore} before" : "";
        return seen.Moved ? $"The choice moves from {was} to {now}{sure}." : $"The choice stays {now}{sure}.";
    }

    /// <summary>All that observations changed, a sentence each.</summary>
    /// <param name="seen">What observations did.</param>
    /// <param name="choice">The choice now.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Sentences(CalibratedChoice seen, Decision.Choice choice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        ObservationUpdate update = seen.Update;
        return
        [
            Outcome(seen, choice, format),
            .. update.Fits.Where(fit => fit.Conflict is null).Select(fit => $"{Grammar.Capital(Line(fit.Observation, format))} ({Expected(fit.Observation, fit.Before, format)} expected)."),
            .. update.Learned.Select(input => $"{Grammar.Capital(Learned(input, format))} (8 times in 10)."),
            .. update.Learned.Any() || update.Fits.Count == 0 ? Array.Empty<string>() : ["What you saw fits what the scenario says and narrows nothing."],
            .. update.Conflicts.Select(fit => Conflict(fit, update.Scenario, format)),
        ];
    }

    /// <summary>What was learned on one line, for a card or a terminal: "current now 0.8 to 1 kn, depth now 17 to 18 ft"; empty where nothing was.</summary>
    /// <param name="update">What was learned.</param>
    /// <param name="format">Units.</param>
    /// <param name="most">Inputs that are told, those that were narrowed most.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Brief(ObservationUpdate update, UnitFormat format, int most = 2)
    {
        ArgumentNullException.ThrowIfNull(update);
        ArgumentNullException.ThrowIfNull(format);
        return string.Join("; ", update.Learned.OrderBy(input => input.Narrowed).Take(most).Select(input => Learned(input, format)));
    }

    /// <summary>What to look at next and what it decides.</summary>
    /// <param name="look">The look.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Next(NextLook look, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(look);
        ArgumentNullException.ThrowIfNull(format);
        return $"{Grammar.Capital(Look(look, format))}: {Decides(look, format)}; expect {Expected(look.Observation, look.Expected, format)} (chance of the wrong lure now {UnitFormat.PercentText(look.WrongNow)}, then about {UnitFormat.PercentText(look.WrongThen)}).";
    }

    /// <summary>The same in a few words, for a card: "look first: count the 1/4 oz to the bottom (1/4 oz or 3/8 oz)".</summary>
    /// <param name="look">The look.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string First(NextLook look, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(look);
        ArgumentNullException.ThrowIfNull(format);
        string between = look.Between.Count == 2 ? $" ({Grammar.Join(look.Between.Select(format.HeadText), "or")})" : "";
        return $"look first: {Look(look, format)}{between}";
    }

    /// <summary>That a lure falls by its own numbers.</summary>
    /// <param name="body">A bait with a drag of its own.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The bait has no drag of its own.</exception>
    public static string Own(LureBody body, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(format);
        if (body.Drag is not { } own) throw new ArgumentException("Nothing was measured of it.", nameof(body));
        string date = own.Date is { } day ? FormattableString.Invariant($", measured {day:yyyy-MM-dd}") : "", how = own.How.Length > 0 ? $" ({own.How.TrimEnd('.')})" : "";
        return $"The {format.LureText(body)} falls by its own numbers: drag {UnitFormat.Number(own.Factor, 2)} times the computed one, within {UnitFormat.PercentText(own.Margin)}{date}{how}.";
    }

    /// <summary>A drag that timings gave.</summary>
    /// <param name="found">What they gave.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Calibration(DragCalibration found, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(format);
        List<string> sentences =
        [
            $"{Grammar.Capital(format.LureText(found.Body))}: drag {UnitFormat.Number(found.Drag.Factor, 2)} times the computed one ({UnitFormat.Number(found.Low, 2)} to {UnitFormat.Number(found.High, 2)}, 8 times in 10), from {UnitFormat.Counted(found.Timings.Count, "timing")}.",
        ];
        if (found.Scatter > 1.5) sentences.Add($"The timings differ {UnitFormat.Number(found.Scatter, 1)} times as much as a hand on a watch explains: time it a few more times.");
        sentences.AddRange(found.Odd.Select(odd => $"One timing stands apart: {Line(odd.Timing, format)}. Check its depth and its weight."));
        sentences.AddRange(found.Impossible.Select(timing => $"Cannot be true: {Line(timing, format)}. It is left out; check its depth, its time and its weight."));
        return sentences;
    }

    /// <summary>How timings were made, for a tackle file.</summary>
    /// <param name="found">What they gave.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string How(DragCalibration found, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(format);
        string falls = Grammar.Join(found.Timings.Take(4).Select(timing => $"{(timing.Timing.Head is { IsNone: false } head ? format.HeadText(head) + " " : "")}{format.LengthText(timing.Timing.Length!.Value)} in {Watch(timing.Timing.Value)}"));
        return $"{UnitFormat.Counted(found.Timings.Count, "timed fall")} in still water: {falls}{(found.Timings.Count > 4 ? " and more" : "")}";
    }

    private static string Look(NextLook look, UnitFormat format)
    {
        Observation seen = look.Observation;
        return seen.Kind switch
        {
            ObservationKind.BottomTime => $"count the {Lure(seen, format)} to the bottom once",
            ObservationKind.LineAngle => $"with the {Lure(seen, format)} on the bottom, see how far the line points off the cast",
            ObservationKind.FloatDrift => $"time a float over {format.LengthText(seen.Length!.Value)}",
            _ => throw new UnreachableException($"{seen.Kind} is not looked for."),
        };
    }

    private static string Decides(NextLook look, UnitFormat format) => look.Between.Count == 2
        ? $"it decides between {Grammar.Join(look.Between.Select(format.HeadText))}"
        : "it tells most";

    private static string Lure(Observation seen, UnitFormat format) => seen.Head is { IsNone: false } head ? format.HeadText(head) : format.LureText(seen.Body!);

    // A figure in the words of its kind.
    private static string Figure(Observation seen, double value, UnitFormat format) => seen.Kind switch
    {
        ObservationKind.BottomTime when seen.Counted => RetrieveWords.Count(value),
        ObservationKind.FirstTick => RetrieveWords.Count(value),
        ObservationKind.BottomTime or ObservationKind.FloatDrift or ObservationKind.PoolFall => Watch(value),
        ObservationKind.TurnsToTick or ObservationKind.TurnsToClear => UnitFormat.Counted(Math.Round(value), "turn"),
        ObservationKind.LineAngle or ObservationKind.ExitAngle => Math.Abs(value) < 0.01 ? "straight along the cast" : $"{UnitFormat.DegreesText(Math.Abs(value))} {Grammar.Side(value)} of the cast",
        ObservationKind.WhiteVanishes or ObservationKind.LureVanishes => format.HandText(value),
        ObservationKind.LineOut => format.LengthText(value),
        _ => throw new ArgumentOutOfRangeException(nameof(seen), seen.Kind, "Not a kind of observation."),
    };

    private static string Expected(Observation seen, Interval range, UnitFormat format)
    {
        if (!double.IsFinite(range.Low) || range.Low >= 299) return "never";
        if (seen.Kind is ObservationKind.LineAngle or ObservationKind.ExitAngle)
            return $"{Figure(seen, range.Low, format)} to {Figure(seen, range.High, format)}";
        if (seen.Kind is ObservationKind.TurnsToTick or ObservationKind.TurnsToClear)
            return $"{UnitFormat.Number(Math.Max(0, range.Low), 0)} to {Figure(seen, Math.Max(0, range.High), format)}";
        bool seconds = seen.Kind is ObservationKind.BottomTime or ObservationKind.FirstTick or ObservationKind.FloatDrift or ObservationKind.PoolFall;
        string high = !double.IsFinite(range.High) || range.High >= 299 ? "never" : seconds ? UnitFormat.SecondsText(range.High) : Figure(seen, range.High, format);
        string low = seconds ? UnitFormat.SecondsText(range.Low) : Figure(seen, range.Low, format);
        if (low == high) return high;
        int space = low.LastIndexOf(' ');
        return space > 0 && high.EndsWith(low[space..], StringComparison.Ordinal) ? $"{low[..space]} to {high}" : $"{low} to {high}";
    }

    // What a watch shows: tenths below 20 s.
    private static string Watch(double seconds) => $"{UnitFormat.Number(seconds, seconds < 20 ? 1 : 0)} s";

    private static string Value(LearnedInputKind kind, double value, UnitFormat format) => kind switch
    {
        LearnedInputKind.Current => format.FlowText(value),
        LearnedInputKind.Depth or LearnedInputKind.Clarity => format.LengthText(value),
        LearnedInputKind.LureDrag or LearnedInputKind.LineDrag => UnitFormat.PercentText(value),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not an input."),
    };

    private static string Suspect(ConflictSuspect suspect) => suspect switch
    {
        ConflictSuspect.Depth => "depth",
        ConflictSuspect.Current => "current",
        ConflictSuspect.Weight => "weight",
        ConflictSuspect.Lure => "lure",
        ConflictSuspect.Cast => "length of the cast",
        ConflictSuspect.Line => "line",
        ConflictSuspect.Clarity => "clarity of the spot",
        ConflictSuspect.Length => "distance that was timed",
        _ => throw new ArgumentOutOfRangeException(nameof(suspect), suspect, "Not a suspect."),
    };
}
