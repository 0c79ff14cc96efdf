using LureSim.Decision;
using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;

namespace LureSim.Report.Sheets;

/// <summary>The three numbers that justify each recommendation; the first figure of the section is the picture to them.</summary>
internal static class Explanations
{
    // A speed is as good as the best one within this share of its time in the zone.
    private const double AsGood = 0.9;

    /// <summary>Why this weight: its time in the zone, and that of a step lighter and heavier.</summary>
    public static IReadOnlyList<LabelledText> Weight(Sheet sheet, UnitFormat format)
    {
        Rig rig = sheet.Choice.First.Rig;
        Candidate[] alike = [.. sheet.Candidates.Where(c => Choice.SameWay(c.Rig, rig)).DistinctBy(c => c.Rig.Head).OrderBy(c => c.Rig.Head.Mass)];
        int at = Array.FindIndex(alike, c => c.Rig.Head == rig.Head);
        return
        [
            new(UnitFormat.PercentText(sheet.Choice.First.Coverage.ZoneShare), $"of the retrieve in the strike zone with {format.HeadText(rig.Head)}"),
            Neighbour(at - 1, "lighter"),
            Neighbour(at + 1, "heavier"),
        ];

        LabelledText Neighbour(int index, string word)
        {
            if (at < 0 || index < 0 || index >= alike.Length)
                return new(UnitFormat.None, $"nothing {word} in your box");
            Coverage c = alike[index].Coverage;
            string why = c.GrassShare > 0.05 ? $", {UnitFormat.PercentText(c.GrassShare)} in grass" : c.BottomShare > 0.05 ? $", {UnitFormat.PercentText(c.BottomShare)} on bottom" : "";
            return new(UnitFormat.PercentText(c.ZoneShare), $"one size {word}, {format.HeadText(alike[index].Rig.Head)}{why}");
        }
    }

    /// <summary>Why this speed: what it gives, the best of the map, and how far it may be off.</summary>
    public static IReadOnlyList<LabelledText> Speed(Sheet sheet, UnitFormat format)
    {
        Rig rig = sheet.Choice.First.Rig;
        if (sheet.Coverage is not { } grid || grid.Speeds.Count == 0)
            return [];
        int row = grid.Heads.ToList().IndexOf(rig.Head);
        if (row < 0)
            return [];
        int best = Enumerable.Range(0, grid.Speeds.Count).MaxBy(s => grid.ZoneShare[row, s]);
        double top = grid.ZoneShare[row, best];

        // The stretch of neighbouring speeds about the best one that are as good.
        int slow = best, fast = best;
        while (slow > 0 && grid.ZoneShare[row, slow - 1] >= AsGood * top) slow--;
        while (fast + 1 < grid.Speeds.Count && grid.ZoneShare[row, fast + 1] >= AsGood * top) fast++;
        return
        [
            new(format.SpeedText(rig.Presentation.RetrieveSpeed), $"the choice: {UnitFormat.PercentText(sheet.Choice.First.Coverage.ZoneShare)} in the zone"),
            new(format.SpeedText(grid.Speeds[best]), $"best speed tried: {UnitFormat.PercentText(top)} in the zone"),
            new($"{format.SpeedNumber(grid.Speeds[slow])} to {format.SpeedText(grid.Speeds[fast])}", "about as good with this head"),
        ];
    }

    /// <summary>Why this body.</summary>
    public static IReadOnlyList<LabelledText> Body(Sheet sheet, UnitFormat format)
    {
        if (sheet.Body is not { } choice)
            return [];
        LabelledText wanted = (choice.Wanted.Least, choice.Wanted.Most) is ({ } least, { } most)
            ? new($"{format.SizeNumber(least)} to {format.SizeText(most)}", "length the deciding rule asks for")
            : new(UnitFormat.None, "no rule asks for a length");
        return
        [
            new(format.SizeText(choice.First.Length), $"length of the {format.LureText(choice.First)}"),
            wanted,
            choice.Fits.Count > 1
                ? new($"{UnitFormat.PercentText(choice.Fits[0].Suitability)} / {UnitFormat.PercentText(choice.Fits[1].Suitability)}", $"fit, against the {format.LureText(choice.Fits[1].Body)}")
                : new(UnitFormat.PercentText(choice.Fits[0].Suitability), "fit; the only lure in your box"),
        ];
    }

    /// <summary>Why this count: to the upper and the lower edge of the zone, and the fall rate.</summary>
    public static IReadOnlyList<LabelledText> CountDown(Sheet sheet, UnitFormat format)
    {
        JigHead head = sheet.Choice.First.Rig.Head;
        if (sheet.Fall?.Columns.FirstOrDefault(c => c.Head == head) is not { } column)
            return [];
        StrikeZone zone = sheet.Scenario.Spot.StrikeZone;
        return
        [
            new(UnitFormat.SecondsText(At(zone.Top)), $"bail open, to the top of the zone, {format.LengthText(zone.Top)}"),
            new(UnitFormat.SecondsText(At(zone.Bottom)), $"to its lower edge, {format.LengthText(zone.Bottom)}"),
            new(format.SinkText(column.TerminalSpeed), $"sink rate of {format.HeadText(head)} with this lure"),
        ];

        // Between the rows of the table; nothing is made up below the last depth reached.
        double? At(double depth)
        {
            double before = 0, time = 0;
            for (int i = 0; i < sheet.Fall.Depths.Count; i++)
            {
                if (column.SlackLineSeconds[i] is not { } seconds)
                    return null;
                if (sheet.Fall.Depths[i] >= depth)
                    return time + ((seconds - time) * (depth - before) / (sheet.Fall.Depths[i] - before));
                (before, time) = (sheet.Fall.Depths[i], seconds);
            }

            return null;
        }
    }

    /// <summary>Why this colour.</summary>
    public static IReadOnlyList<LabelledText> Colour(Sheet sheet, UnitFormat format)
    {
        if (sheet.ColourAdvice is not { } advice)
            return [];
        string limit = UnitFormat.Number(LureSights.LikenessSteps, 0);
        ColourWorth chosen = advice.Choice, farthest = advice.Colours[advice.Farthest];
        return
        [
            new(ColourWords.SeenFrom(advice, chosen, format), $"{chosen.Name} seen from, where the lure runs"),
            new(ColourWords.SeenFrom(advice, farthest, format), farthest.Name == chosen.Name ? format.Say($"no color in your box shows farther") : chosen.Tied ? $"{farthest.Name}: no real difference" : $"{farthest.Name}, shows farthest"),
            new(UnitFormat.Number(chosen.DifferenceToForage, 0), format.Say($"color difference to {advice.Forage} ({limit} or less = cannot be told apart)")),
        ];
    }
}
