using System.Globalization;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Workbench.Bench;

/// <summary>The knobs of a scenario, with one presentation in the hand.</summary>
internal static class KnobCatalogue
{
    // Fastest retrieve whose swimming is checked (m/s), docs/validation.md.
    private const double FastestChecked = 1.5;

    private const double Knot = 1852.0 / 3600.0;
    private const double Foot = 0.3048;
    private const double Mile = 1609.344 / 3600.0;

    private static readonly (string Value, string Label)[] Directions =
    [
        ("away", "away from you"), ("45 deg", "away and to your left"), ("left", "to your left"), ("135 deg", "toward you and to your left"),
        ("towards", "toward you"), ("225 deg", "toward you and to your right"), ("right", "to your right"), ("315 deg", "away and to your right"),
    ];

    /// <summary>The knobs.</summary>
    /// <param name="scenario">The scenario of the file.</param>
    /// <param name="retrieve">Place of the presentation in the file.</param>
    /// <param name="marked">A choice's presentation, whose count and speed are to be steps too; null for none.</param>
    /// <param name="heads">Names of the lures, light to heavy.</param>
    /// <param name="bait">Place of the soft bait among those of the file that go on a head; -1 for none.</param>
    /// <param name="units">Units of the words.</param>
    public static IReadOnlyList<Knob> Of(Scenario scenario, int retrieve, Presentation? marked, IReadOnlyList<string> heads, int bait, UnitSystem units)
    {
        var format = new UnitFormat(units);
        bool us = units == UnitSystem.Us;
        Spot spot = scenario.Spot;
        Presentation way = scenario.Presentations[retrieve];
        LureBody[] soft = [.. scenario.Tackle.Bodies.Where(body => body.NeedsHead)];
        List<Knob> knobs =
        [
            Slider(KnobIds.Current, "Current", KnobPlace.Strip, us ? Range(0, 3, 0.1, Knot, "kn") : Range(0, 1.5, 0.05, 1, "m/s"), spot.CurrentSpeed, v => v == 0 ? "slack" : format.FlowText(v)),
            Slider(KnobIds.Depth, "Depth", KnobPlace.Strip, Depths(scenario, us), spot.Depth, format.HandText),
        ];
        if (spot.Clarity is SecchiClarity secchi)
        {
            (double least, double most) = secchi.Kind switch
            {
                WaterKind.ClearOcean => (2.0, 30.0),
                WaterKind.CoastalGreen => (0.3, 15.0),
                WaterKind.TanninStained or WaterKind.Silty => (0.15, 10.0),
                _ => throw new ArgumentOutOfRangeException(nameof(scenario), secchi.Kind, "Not a kind of water."),
            };
            IEnumerable<(string Value, double Si)> stops = us
                ? [.. Range(0.5, 6, 0.5, Foot, "ft"), .. Range(7, 20, 1, Foot, "ft"), .. Range(25, 100, 5, Foot, "ft")]
                : [.. Range(0.2, 2, 0.1, 1, "m"), .. Range(2.5, 6, 0.5, 1, "m"), .. Range(7, 30, 1, 1, "m")];
            knobs.Add(Slider(KnobIds.Clarity, "Clarity", KnobPlace.Strip, [.. stops.Where(stop => stop.Si >= least - 1e-9 && stop.Si <= most + 1e-9)], secchi.Depth, v => $"you see down {format.HandText(v)}"));
        }

        knobs.Add(Count(way, marked));
        if (way.RetrieveSpeed > 0)
        {
            IReadOnlyList<(string Value, double Si)> speeds = us ? Range(0.2, 7, 0.1, Foot, "ft/s") : Range(0.05, 2.1, 0.05, 1, "m/s");
            Knob speed = Slider(KnobIds.Speed, "Reel", KnobPlace.Strip, [.. speeds.Where(stop => stop.Si <= way.FastestSpeed)], way.RetrieveSpeed, v => RetrieveWords.Pace(v, scenario.Tackle.Reel, format));
            if (marked is { RetrieveSpeed: > 0 } && marked.RetrieveSpeed <= way.FastestSpeed)
            {
                List<KnobStop> more = [.. speed.Stops];
                Insert(more, new KnobStop(Written(marked.RetrieveSpeed, "m/s"), marked.RetrieveSpeed, RetrieveWords.Pace(marked.RetrieveSpeed, scenario.Tackle.Reel, format)));
                speed = speed with { Stops = more, FromFile = more.FindIndex(stop => ReferenceEquals(stop, speed.Stops[speed.FromFile])) };
            }

            int beyond = speed.Stops.ToList().FindIndex(stop => stop.Si > FastestChecked);
            knobs.Add(speed with { UncheckedFrom = beyond < 0 ? speed.Stops.Count : beyond });
        }

        knobs.Add(Choice(KnobIds.Head, "Head", KnobPlace.Strip, [.. heads.Select(head => (head, head))], 0) with { Kind = KnobKind.Slider });
        if (MovesText.LiftOf(way) is { } lift)
        {
            IEnumerable<(string Value, double Si)> heights = us ? [.. Range(2, 12, 2, Foot / 12, "in"), .. Range(1.5, 8, 0.5, Foot, "ft")] : [.. Range(0.05, 0.3, 0.05, 1, "m"), .. Range(0.4, 2.5, 0.1, 1, "m")];
            knobs.Add(Marked(Slider(KnobIds.Lift, "Rod lift", KnobPlace.More, [.. heights.Where(height => MovesText.CanBeSaid(MovesText.Lifted(way, height.Si)))], lift, format.TravelText), marked is null ? null : MovesText.LiftOf(marked), "m", format.TravelText));
        }

        if (MovesText.RestOf(way) is { } rest)
        {
            IEnumerable<(string Value, double Si)> rests = [.. Range(0.5, 5, 0.5, 1, "s"), .. Range(6, 12, 1, 1, "s"), .. Range(15, 30, 5, 1, "s")];
            knobs.Add(Marked(Slider(KnobIds.Rest, "Rest", KnobPlace.More, [.. rests.Where(time => MovesText.CanBeSaid(MovesText.Rested(way, time.Si)))], rest, v => UnitFormat.SecondsText(v)), marked is null ? null : MovesText.RestOf(marked), "s", v => UnitFormat.SecondsText(v)));
        }

        knobs.Add(Marked(Slider(KnobIds.Aim, "Cast angle", KnobPlace.More, Range(-60, 60, 5, Math.PI / 180, "deg"), Turned(way.Aim), AimText), marked is null ? null : Turned(marked.Aim), "rad", AimText));
        knobs.Add(Choice(KnobIds.Retrieve, "Retrieve", KnobPlace.More, [.. scenario.Presentations.Select(p => (p.Name, p.Name))], retrieve));
        if (soft.Length > 1) knobs.Add(Choice(KnobIds.Bait, "Soft bait", KnobPlace.More, [.. soft.Select(body => (body.Label, body.Label))], Math.Max(0, bait)));
        knobs.Add(Slider(KnobIds.Cast, "Cast", KnobPlace.More, us ? Range(20, 150, 5, Foot, "ft") : Range(6, 45, 1, 1, "m"), way.CastLength, format.HandText));
        knobs.Add(Slider(KnobIds.ZoneTop, spot.StrikeZone.MovesWithBottom ? "Zone, upper edge above bottom" : "Zone, upper edge", KnobPlace.More, us ? Range(0, 40, 0.5, Foot, "ft") : Range(0, 12, 0.1, 1, "m"), spot.StrikeZone.MovesWithBottom ? spot.Depth - spot.StrikeZone.Top : spot.StrikeZone.Top, format.LengthText));
        knobs.Add(Slider(KnobIds.ZoneBottom, spot.StrikeZone.MovesWithBottom ? "Zone, lower edge above bottom" : "Zone, lower edge", KnobPlace.More, us ? Range(0, 60, 0.5, Foot, "ft") : Range(0, 18, 0.1, 1, "m"), spot.StrikeZone.MovesWithBottom ? spot.Depth - spot.StrikeZone.Bottom : spot.StrikeZone.Bottom, format.LengthText));
        knobs.Add(Places(KnobIds.Direction, "Current goes", Directions, spot.CurrentDirection));
        knobs.Add(Slider(KnobIds.Wind, "Wind", KnobPlace.More, us ? Range(0, 30, 1, Mile, "mph") : Range(0, 14, 0.5, 1, "m/s"), spot.WindSpeed, v => v == 0 ? "calm" : format.WindText(v)));
        knobs.Add(Slider(KnobIds.Line, $"{Grammar.Capital(TackleWords.LineName(scenario.Tackle.Line.Kind))} line", KnobPlace.More, us ? [.. ((double[])[4, 6, 8, 10, 12, 15, 20, 30, 40, 50, 65]).Select(lb => Step(lb, 4.4482216152605, "lb"))] : [.. ((double[])[2, 3, 4, 5, 6, 8, 10, 14, 18, 23, 29]).Select(kg => Step(kg, 9.80665, "kg"))], scenario.Tackle.Line.Strength, format.StrengthText));
        if (spot.Sky is SkyByElevation sky)
            knobs.Add(Slider(KnobIds.Sun, "Sun above the horizon", KnobPlace.More, Range(sky.SunElevation < 0 ? -20 : 0, 90, 5, Math.PI / 180, "deg"), Math.Max(sky.SunElevation, -20 * Math.PI / 180), UnitFormat.DegreesText));
        knobs.Add(Choice(KnobIds.Temperature, "Water temperature", KnobPlace.More, Temperatures(spot.TemperatureCelsius, us, format), -1));
        bool clean = scenario.Tackle.Rigging.IsClean;
        if (soft.Length > 0)
            knobs.Add(Choice(KnobIds.Hook, "On the hook", KnobPlace.Rig, [.. (clean ? (string[])[] : [KnobIds.AsInFile]).Concat([KnobIds.Straight, KnobIds.OffCenter, KnobIds.Bent]).Select(word => (word, word))], 0));
        knobs.Add(Choice(KnobIds.Knot, "Knot", KnobPlace.Rig, [("loop", "loop"), ("snug", "snug"), ("clip", "clip")], scenario.Tackle.Rigging.Knot switch
        {
            KnotStyle.Loop => 0,
            KnotStyle.Snug => 1,
            KnotStyle.Clip or KnotStyle.SplitRing => 2,
            _ => throw new ArgumentOutOfRangeException(nameof(scenario), scenario.Tackle.Rigging.Knot, "Not a knot."),
        }));
        return knobs;
    }

    /// <summary>An angle between half a turn to the right and half a turn to the left (radians).</summary>
    public static double Turned(double angle) => Math.IEEERemainder(angle, 2 * Math.PI);

    private static string AimText(double angle) => Math.Abs(angle) < 0.5 * Math.PI / 180 ? "straight out" : $"{UnitFormat.DegreesText(Math.Abs(angle))} to your {(angle > 0 ? "left" : "right")}";

    // With a step where a choice has its hand, so that the choice itself can be shown.
    private static Knob Marked(Knob knob, double? at, string symbol, Func<double, string> label)
    {
        if (at is not { } value || !double.IsFinite(value) || knob.Stops.Any(stop => Math.Abs(stop.Si - value) < 1e-6)) return knob;
        List<KnobStop> more = [.. knob.Stops];
        KnobStop own = knob.Stops[knob.FromFile];
        Insert(more, symbol == "rad" ? new KnobStop(Written(value * 180 / Math.PI, "deg"), value, label(value)) : new KnobStop(Written(value, symbol), value, label(value)));
        return knob with { Stops = more, FromFile = more.FindIndex(stop => ReferenceEquals(stop, own)), UncheckedFrom = more.Count };
    }

    // The tide must leave some water at any hour, over the shallowest place of a bottom that slopes too.
    private static List<(string Value, double Si)> Depths(Scenario scenario, bool us)
    {
        const double LeastWater = 0.25;
        double rise = scenario.Spot.Profile is { } profile ? profile.Deepest - profile.Shallowest : 0;
        double least = LeastWater + rise - Math.Min(0, scenario.Tide.Select(point => point.DepthChange).DefaultIfEmpty(0).Min());
        IEnumerable<(string Value, double Si)> all = us ? [.. Range(1, 20, 0.5, Foot, "ft"), .. Range(21, 60, 1, Foot, "ft")] : [.. Range(0.3, 6, 0.1, 1, "m"), .. Range(6.5, 18, 0.5, 1, "m")];
        return [.. all.Where(stop => stop.Si >= least)];
    }

    private static Knob Count(Presentation way, Presentation? marked)
    {
        List<KnobStop> stops = [.. Range(0, 60, 1, 1, "s").Select(stop => new KnobStop(stop.Value, stop.Si, stop.Si == 0 ? "none" : $"{UnitFormat.SecondsNumber(stop.Si)}-count"))];
        if (marked?.CountDown is { } chosen) Insert(stops, new KnobStop(Written(chosen, "s"), chosen, CountText(chosen)));
        if (way.CountDown is { } own) Insert(stops, new KnobStop(Written(own, "s"), own, CountText(own)));
        stops.Add(new KnobStop(KnobIds.ToBottom, 1000, "let it sink to the bottom"));
        return new Knob(KnobIds.Count, "Sink count", KnobPlace.Strip, KnobKind.Slider, stops, way.CountDown is { } count ? stops.FindIndex(stop => Math.Abs(stop.Si - count) < 1e-6) : stops.Count - 1);
    }

    private static string CountText(double seconds) => seconds < Pictures.PictureWords.ShortestCount ? "none" : $"{UnitFormat.Number(seconds, 1)}-count";

    private static Knob Slider(string id, string name, KnobPlace place, IReadOnlyList<(string Value, double Si)> steps, double own, Func<double, string> label)
    {
        List<KnobStop> stops = [.. steps.Select(step => new KnobStop(step.Value, step.Si, label(step.Si)))];
        int at = stops.FindIndex(stop => Math.Abs(stop.Si - own) <= 1e-4 * Math.Max(0.01, Math.Abs(own)));
        if (at < 0) at = Insert(stops, new KnobStop(Own, own, label(own)));
        return new Knob(id, name, place, KnobKind.Slider, stops, at);
    }

    /// <summary>Value of a stop that stands for what the file has.</summary>
    public const string Own = "file";

    private static int Insert(List<KnobStop> stops, KnobStop stop)
    {
        int at = stops.FindIndex(other => other.Si >= stop.Si - 1e-9);
        if (at < 0) at = stops.Count;
        if (at < stops.Count && Math.Abs(stops[at].Si - stop.Si) < 1e-9) return at;
        stops.Insert(at, stop);
        return at;
    }

    private static Knob Choice(string id, string name, KnobPlace place, IReadOnlyList<(string Value, string Label)> words, int own) =>
        new(id, name, place, KnobKind.Choice, [.. words.Select((word, i) => new KnobStop(word.Value, i, word.Label))], own >= 0 ? own : words.ToList().FindIndex(word => word.Value == Own));

    private static Knob Places(string id, string name, (string Value, string Label)[] words, double direction)
    {
        double turn = direction / (2 * Math.PI) * words.Length;
        int nearest = (int)Math.Round(turn);
        bool exact = Math.Abs(turn - nearest) < 1e-6;
        (string Value, string Label)[] all = exact ? words : [.. words, (Own, "as in the file")];
        return Choice(id, name, KnobPlace.More, all, exact ? ((nearest % words.Length) + words.Length) % words.Length : words.Length);
    }

    private static List<(string Value, string Label)> Temperatures(double own, bool us, UnitFormat format)
    {
        List<(double Celsius, string Value)> steps = us
            ? [.. Enumerable.Range(0, 12).Select(i => 40 + (5 * i)).Select(f => ((f - 32) / 1.8, $"{f} degF"))]
            : [.. Enumerable.Range(0, 13).Select(i => 4 + (2.5 * i)).Select(c => (c, $"{c.ToString("0.#", CultureInfo.InvariantCulture)} degC"))];
        steps.RemoveAll(step => Math.Abs(step.Celsius - own) < 0.3);
        steps.Add((own, Own));
        return [.. steps.OrderBy(step => step.Celsius).Select(step => (step.Value, format.TemperatureText(step.Celsius)))];
    }

    private static List<(string Value, double Si)> Range(double from, double to, double step, double unit, string symbol) =>
        [.. Enumerable.Range(0, (int)Math.Round((to - from) / step) + 1).Select(i => Step(from + (i * step), unit, symbol))];

    private static (string Value, double Si) Step(double value, double unit, string symbol)
    {
        string text = Written(value, symbol);
        return (text, double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture) * unit);
    }

    /// <summary>A value as a scenario writes it.</summary>
    public static string Written(double value, string symbol) => value.ToString("0.####", CultureInfo.InvariantCulture) + " " + symbol;
}
