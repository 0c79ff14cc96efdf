using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Stepping;

namespace LureSim.Report.Words;

/// <summary>Puts a plan's choice into words: why, what may go wrong, and where the inputs end.</summary>
public static class ChoiceWords
{
    /// <summary>Why the first choice is the first choice, with numbers.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static IReadOnlyList<string> Reasons(Plan plan, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var format = new UnitFormat(units);
        Choice choice = plan.Choice;
        List<string> reasons = [.. plan.Uncertainty is { } study ? UncertaintyWords.Sentences(study, units) : [], Reach(plan, format)];
        if (choice.Lighter is { } lighter)
            reasons.Add($"One step lighter, {format.HeadText(lighter.Rig.Head)}: {TrackWords.Verdict(lighter)}.");
        if (choice.Heavier is { } heavier)
            reasons.Add($"One step heavier, {format.HeadText(heavier.Rig.Head)}: {TrackWords.Verdict(heavier)}.");
        if (choice.Fallback is { } fallback)
            reasons.Add($"Second choice: {Name(fallback, format)}: {TrackWords.Verdict(fallback)}.");
        if (choice.NeverOnBottom.Count > 0)
            reasons.Add($"In this current {Grammar.Join(choice.NeverOnBottom.Select(format.HeadText))} {(choice.NeverOnBottom.Count == 1 ? "does" : "do")} not reach bottom with this presentation.");
        if (plan.Colours.Advice is { } advice)
            reasons.AddRange(ColourWords.Sentences(advice, plan.Colours.Eye.CommonName, units));
        reasons.AddRange(ColourWords.Seen(plan.Colours, units));
        if (plan.Clarity is { } clarity)
            reasons.Add(ColourWords.Clarity(clarity, units));
        if (plan.Body is { } body)
        {
            reasons.AddRange(BodyWords.Sentences(body, units));
            reasons.AddRange(BodyWords.Overturned(body, choice.First, plan.Candidates.Where(c => c.Rig.Body == body.First).MaxBy(c => c.Score)));
            if (plan.Box is { } box)
                reasons.AddRange(BoxWords.Sentences(box, choice.First, body, units));
        }

        return reasons;
    }

    /// <summary>The choice in one line, the same for every command: rig, color, hands and its numbers over the tries.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="colour">Name of its color.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="choice"/> is null.</exception>
    public static string Line(Choice choice, string colour, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var format = new UnitFormat(units);
        Presentation way = choice.First.Rig.Presentation;
        string count = way.CountDown is { } seconds ? seconds > 0 ? $"{UnitFormat.SecondsNumber(seconds)}-count" : "no count" : "let it sink to the bottom";
        string numbers = choice.Numbers is { Tries: > 1 } tries ? $"; in the zone {UnitFormat.Share.Text(tries.ZoneShare.Median)} ({UnitFormat.Share.Text(tries.ZoneShare.Low)} to {UnitFormat.Share.Text(tries.ZoneShare.High)} in 8 of 10 tries)" : "";
        return $"Choice: {Name(choice.First, format)}, {colour}, {count}{numbers}.";
    }

    /// <summary>What may go wrong with the first choice, and where the model is weak here.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static IReadOnlyList<string> Warnings(Plan plan, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var format = new UnitFormat(units);
        return [.. plan.Choice.Warnings.Select(warning => Warning(plan, warning, format))];
    }

    /// <summary>Limits of the inputs: a Secchi depth outside the kind of water, light that is hardly known, runs that were cut short.</summary>
    /// <param name="plan">The plan.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static IReadOnlyList<string> Notes(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var notes = new List<string>();
        LightField field = plan.Colours.Chart.Field;
        if (field.Water.Status != WaterFitStatus.Matched) notes.Add(LightWords.Fit(field.Water));
        if (field.Surface.Regime != LightRegime.Day) notes.Add($"{LightWords.Regime(field.Surface.Regime)}. {LightWords.Note(field.Surface)}");
        foreach (Candidate c in plan.Candidates.Where(c => c.Track.End is not null))
            notes.Add($"{c.Rig.Head.Label}, {c.Rig.Presentation.Name}: {TrackWords.End(c.Track.End)}");
        return notes;
    }

    /// <summary>A first choice whose run did not end as it should, said where the eye falls; empty where it did.</summary>
    /// <param name="first">The first choice.</param>
    /// <exception cref="ArgumentNullException"><paramref name="first"/> is null.</exception>
    public static IReadOnlyList<string> Unfinished(Candidate first)
    {
        ArgumentNullException.ThrowIfNull(first);
        return first.Track.Status == SimulationStatus.Completed ? [] : [$"The run of the first choice did not complete: {TrackWords.EndOrStatus(first.Track)}"];
    }

    private static string Reach(Plan plan, UnitFormat format)
    {
        StrikeZone zone = plan.Scenario.Spot.StrikeZone;
        Candidate first = plan.Choice.First;
        Coverage c = first.Coverage;
        string band = $"{format.Length.Number(zone.Top)} to {format.Length.Text(zone.Bottom)}";
        return c.TimeToZone is { } time
            ? $"{Grammar.Capital(Name(first, format))} spends {UnitFormat.Share.Text(c.ZoneShare)} of the retrieve in the strike zone ({band} down), at a middle depth of {format.Length.Text(c.MedianDepth)}; it is there {UnitFormat.SecondsNumber(time)} s after splash-down."
            : $"No rig of this tackle box reaches the strike zone ({band} down). {Grammar.Capital(Name(first, format))} comes nearest: it runs at a middle depth of {format.Length.Text(c.MedianDepth)}.";
    }

    private static string Warning(Plan plan, ChoiceWarning warning, UnitFormat format)
    {
        string share = UnitFormat.Share.Text(warning.Value);
        return warning.Kind switch
        {
            ChoiceWarningKind.SeldomInZoneTooHigh => $"Even the best rig is in the zone only {share} of the retrieve: a heavier head, a slower retrieve or a longer count-down would keep it down.",
            ChoiceWarningKind.SeldomInZone => $"Even the best rig is in the zone only {share} of the retrieve: look at the figures before you trust the ranking.",
            ChoiceWarningKind.TouchesShell => $"It touches shell {share} of the retrieve: expect snags and check the leader.",
            ChoiceWarningKind.InGrass => $"It is in the grass {share} of the retrieve: rig it weedless.",
            ChoiceWarningKind.SweptAcross => $"The current carries it up to {format.Length.Text(warning.Value)} across the cast: throw up-current of the target, and mind that the line belly makes strikes hard to feel.",
            ChoiceWarningKind.NearTie => $"{format.HeadText(plan.Choice.Fallback!.Rig.Head)} ({plan.Choice.Fallback.Rig.Presentation.Name}) scores within 5 % of it: the model cannot tell these two apart.",
            ChoiceWarningKind.LowSun => $"The sun is near or below the horizon: light levels change by the minute, and the colours shown are for this {(plan.Scenario.Spot.Sky is SkyByClock ? "moment" : "elevation")} only.",
            _ => throw new ArgumentOutOfRangeException(nameof(warning), warning.Kind, "Not a warning."),
        };
    }

    private static string Name(Candidate candidate, UnitFormat format)
    {
        Rig rig = candidate.Rig;
        string lure = rig.Head.IsNone ? rig.Body.Label : $"{format.HeadText(rig.Head)} with the {rig.Body.Label}";
        return $"{lure}, {rig.Presentation.Name}{(rig.Presentation.RetrieveSpeed > 0 ? $" at {format.Speed.Text(rig.Presentation.RetrieveSpeed)}" : "")}";
    }
}
