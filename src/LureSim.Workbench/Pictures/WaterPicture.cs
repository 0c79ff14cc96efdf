using LureSim.Casting;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Figures;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Stepping;
using LureSim.Workbench.Bench;
using OxyPlot;

namespace LureSim.Workbench.Pictures;

/// <summary>Where the heads run, as the page draws it: finished strings and whole centimetres.</summary>
internal static class WaterPicture
{
    // The picture is drawn about this many pixels wide at the most, twice as many points are of no use.
    private const double Pixels = 1200;

    // Height over width that the water should fill; the vertical stretch comes from it.
    private const double WantedShape = 0.42;
    private const double NarrowShape = 0.75;
    private const int MostStretch = 10;

    // Current that fills the arrow (m/s), and sweep from which the view from above is worth its place (m): 5 ft.
    private const double FullArrow = 1.55;
    private const double Swept = 1.5;

    // Rows that differ by less do about the same.
    private const double Alike = 0.05;

    /// <summary>The knobs of a question.</summary>
    public static IReadOnlyList<KnobView> Knobs(BenchQuestion question) =>
    [
        .. question.Knobs.Select(knob => new KnobView(
            knob.Id,
            knob.Name,
            knob.Place.ToString().ToLowerInvariant(),
            knob.Kind.ToString().ToLowerInvariant(),
            [.. knob.Stops.Select(stop => stop.Value)],
            [.. knob.Stops.Select(stop => stop.Label)],
            [.. knob.Stops.Select(stop => Math.Round(100 * stop.Si, 2))],
            knob.Id == KnobIds.Head ? -1 : knob.FromFile,
            knob.UncheckedFrom)),
    ];

    /// <summary>The water of a question.</summary>
    /// <param name="question">The question.</param>
    /// <param name="format">Units.</param>
    public static SceneView Scene(BenchQuestion question, UnitFormat format)
    {
        Spot spot = question.Scenario.Spot;
        Presentation way = question.First.Rig.Presentation;
        Spot seen = spot.SeenAlong(way.Aim);

        // The picture is as long as the longest cast in it; what it says is the cast of the first.
        double Thrown(Rig rig) => CastReach.Of(spot, FishingRig.Of(question.Scenario.Tackle, rig.Head, rig.Body), rig.Presentation).Length;
        double cast = Thrown(question.First.Rig), reach = question.Lures.Max(lure => Thrown(lure.Rig));
        double from = -0.06 * reach, to = 1.06 * reach;
        double air = question.Scenario.Tackle.RodTipHeight;
        int stretch = Math.Clamp((int)Math.Round(WantedShape * (to - from) / spot.Depth), 1, MostStretch), narrow = Math.Clamp((int)Math.Round(NarrowShape * (to - from) / spot.Depth), 1, 2 * MostStretch);
        double along = spot.CurrentSpeed > 0 ? Math.Cos(seen.CurrentDirection) : 0;
        double plate = spot.Clarity is SecchiClarity secchi ? secchi.Depth : 0;
        string current = spot.CurrentSpeed > 0 ? $"{format.FlowText(spot.CurrentSpeed)} {SpotWords.Direction(seen.CurrentDirection, format.System)}" : "slack water";
        return new SceneView
        {
            Depth = Cm(spot.Depth),
            Grass = Cm(spot.GrassHeight),
            Floor = Floor(seen, from, to),
            Pieces = Pieces(seen, from, to),
            ZoneFollows = spot.StrikeZone.MovesWithBottom,
            ZoneTop = Cm(spot.StrikeZone.Top),
            ZoneBottom = Cm(spot.StrikeZone.Bottom),
            Cast = Cm(cast),
            Rod = Cm(air),
            From = Cm(from),
            To = Cm(to),
            Plate = Cm(plate),
            Along = Math.Round(along, 3),
            Flow = Math.Round(Math.Min(1, spot.CurrentSpeed / FullArrow), 3),
            Bottom = spot.Bottom.ToString().ToLowerInvariant(),
            Stretch = stretch,
            StretchText = StretchWords(stretch),
            NarrowStretch = narrow,
            NarrowStretchText = StretchWords(narrow),
            CurrentText = current,
            DepthText = SpotWords.Depth(spot, format),
            CastText = $"{format.HandText(cast)} cast",
            PlateText = plate > 0 ? plate <= spot.Depth ? $"a white plate is gone at {format.HandText(plate)}" : $"you see the bottom (clear to {format.HandText(plate)})" : SpotWords.Water(spot.Clarity, format),
            ZoneText = "strike zone",
            CountText = way.CountDown is { } count ? count >= PictureWords.ShortestCount ? $"{UnitFormat.Number(count, 1)}-count" : "no count" : "lets it sink",
            BottomText = SpotWords.Bottoms(spot),
            GrassText = spot.Profile is { IsEven: false } ? SpotWords.GrassText(spot, format) : spot.GrassHeight > 0 ? $"grass {format.HandText(spot.GrassHeight)}" : "",
            Across = Ticks(0, to, format, 8),
            Down = Ticks(0, spot.Depth, format, 6),
            Alt = $"The water cut along the cast: {SpotWords.Depth(spot, format)} deep over {SpotWords.Bottoms(spot)}, strike zone {(spot.Profile is { IsEven: false } ? SpotWords.Zone(spot, format) : format.HandBand(spot.StrikeZone.Top, spot.StrikeZone.Bottom))}, {current}. One line for each head, from where it hits the water to the rod.",
        };
    }

    // Depths along the cast, a hand's breadth apart.
    private static int[] Floor(Spot seen, double from, double to)
    {
        const double Spacing = 0.2;
        if (seen.Profile is not { IsEven: false }) return [];
        int count = (int)Math.Ceiling((to - from) / Spacing);
        return [.. Enumerable.Range(0, count + 1).Select(i => from + (i * Spacing)).SelectMany(x => (int[])[Cm(x), Cm(seen.DepthAt(x, 0))])];
    }

    private static FloorPiece[] Pieces(Spot seen, double from, double to)
    {
        if (seen.Profile is not { Stretches.Count: > 0 } profile) return [];

        // Along the cast the stretches lie farther apart than along the profile where the cast goes aslant.
        double stretch = 1 / Math.Max(0.05, Math.Abs(Math.Cos(seen.ProfileDirection)));
        double[] edges = [from, .. profile.Stretches.SelectMany(item => (double[])[item.From * stretch, item.To * stretch]).Where(edge => edge > from && edge < to).Distinct().Order(), to];
        return [.. edges.Zip(edges.Skip(1)).Select(pair =>
        {
            double along = seen.AlongProfile(0.5 * (pair.First + pair.Second), 0);
            return new FloorPiece(Cm(pair.First), Cm(pair.Second), seen.BottomAt(along).ToString().ToLowerInvariant(), Cm(seen.GrassAt(along)));
        })];
    }

    /// <summary>Paths of some lures.</summary>
    /// <param name="question">The question.</param>
    /// <param name="runs">Runs by place of the lure.</param>
    /// <param name="scene">The water, for the stretch.</param>
    /// <param name="format">Units.</param>
    public static IReadOnlyList<LineView> Lines(BenchQuestion question, IEnumerable<(int Index, Candidate Run)> runs, SceneView scene, UnitFormat format) =>
        [.. runs.Where(run => run.Run.Track.Count > 1).Select(run => Line(question, run.Index, run.Run, scene, format))];

    /// <summary>What the heads do.</summary>
    /// <param name="question">The question.</param>
    /// <param name="runs">Runs of all lures.</param>
    /// <param name="format">Units.</param>
    public static IReadOnlyList<RowView> Rows(BenchQuestion question, IReadOnlyList<Candidate> runs, UnitFormat format)
    {
        int[] ties = Ties(runs);
        return [.. runs.Select((run, i) =>
        {
            Coverage c = run.Coverage;
            bool known = run.Track.Status != SimulationStatus.Failed;
            (string color, string dark, int marker) = Look(question, i);
            return new RowView
            {
                Id = question.Lures[i].Name,
                Name = run.Rig.Head.IsNone ? format.LureText(run.Rig.Body) : format.HeadText(run.Rig.Head),
                Above = Percent(c.AboveShare),
                Zone = Percent(c.ZoneShare),
                Below = Percent(c.BelowShare),
                Bottom = Percent(c.BottomShare),
                Share = known ? $"{UnitFormat.PercentText(c.ZoneShare)} in zone" : UnitFormat.None,
                When = c.TimeToZone is { } time ? $"there after {UnitFormat.SecondsText(time)}" : "never there",
                Words = PictureWords.Short(run, question.Scenario.Spot),
                Tie = ties[i],
                Color = color,
                DarkColor = dark,
                Marker = marker,
                Known = known,
            };
        })];
    }

    /// <summary>Depths by time as a table.</summary>
    /// <param name="question">The question.</param>
    /// <param name="runs">Runs of all lures.</param>
    /// <param name="format">Units.</param>
    public static TableView Table(BenchQuestion question, IReadOnlyList<Candidate> runs, UnitFormat format)
    {
        double longest = runs.Max(run => run.Track.Count > 0 ? run.Track.Time[^1] : 0);
        double step = ((double[])[5, 10, 20, 30, 60, 120, 300]).First(s => longest / s <= 10 || s >= 300);
        double[] times = [.. Enumerable.Range(0, (int)(longest / step) + 1).Select(i => i * step)];
        return new TableView(
            $"Depth in {format.LengthUnit}, by seconds since it hit the water",
            ["head", .. times.Select(t => UnitFormat.SecondsText(t))],
            [.. runs.Select((run, i) => (IReadOnlyList<string>)[question.Lures[i].Name, .. times.Select(t => DepthAt(run.Track, t, format))])]);
    }

    /// <summary>How a lure is drawn: color on light ground, on dark ground, marker. The same as on the sheets.</summary>
    /// <param name="question">The question.</param>
    /// <param name="index">The lure.</param>
    public static (string Light, string Dark, int Marker) Look(BenchQuestion question, int index)
    {
        double place = question.Lures.Count == 1 ? 0.6 : index / (question.Lures.Count - 1.0);
        OxyColor light = Palette.Weight(place);
        OxyColor dark = OxyColor.Interpolate(OxyColor.FromRgb(0xFF, 0x9A, 0x5C), OxyColor.FromRgb(0xF4, 0xEC, 0xFF), place);
        return (Hex(light), Hex(dark), index % 5);
    }

    private static LineView Line(BenchQuestion question, int index, Candidate run, SceneView scene, UnitFormat format)
    {
        Track track = run.Track;
        Presentation way = run.Rig.Presentation;
        bool focus = index == question.Focus;
        int start = 0;
        while (start < track.Count - 1 && (track.State[start] & TrackState.Falling) != 0) start++;
        double[] x = [.. Enumerable.Range(0, track.Count).Select(i => track.X[i] - (way.DriftAlong * track.Time[i]))];
        double[] z = [.. Enumerable.Range(0, track.Count).Select(i => Math.Max(-0.3, track.Depth(i)) * scene.Stretch)];
        double error = (scene.To - scene.From) / 100.0 / Pixels;
        List<int> keep = PathThinner.Keep(x, z, 0, start, error);
        int begin = keep.Count - 1;
        keep.AddRange(PathThinner.Keep(x, z, start, track.Count - 1, error).Skip(1));
        var line = new LineView(question.Lures[index].Name, [.. keep.Select(i => Cm(x[i]))], [.. keep.Select(i => Cm(z[i] / scene.Stretch))], begin);
        if (!focus) return line;
        double across = run.Coverage.DriftAcross;
        int farthest = Enumerable.Range(0, track.Count).MaxBy(i => Math.Abs(track.Y[i] - track.Y[0]));
        double left = track.Y[farthest] - track.Y[0];
        return line with
        {
            Y = [.. keep.Select(i => Cm(track.Y[i] - (way.DriftLeft * track.Time[i])))],
            T = [.. keep.Select(i => (int)Math.Round(10 * track.Time[i]))],
            Line = Shape(track),
            Swept = across > Swept ? $"swept {format.HandText(across)} to your {(left > 0 ? "left" : "right")}" : null,
        };
    }

    // The line in the water at a third of the retrieve: when most of it is out.
    private static int[]? Shape(Track track)
    {
        if (track.Shapes.Count == 0) return null;
        LineShape shape = track.Shapes[Math.Min(track.Shapes.Count - 1, track.Shapes.Count / 3)];
        return [.. Enumerable.Range(0, shape.X.Length).SelectMany(i => (int[])[Cm(shape.X[i]), Cm(-shape.Z[i])])];
    }

    // Neighbors whose shares all lie within what the model can tell belong together.
    private static int[] Ties(IReadOnlyList<Candidate> runs)
    {
        int[] ties = new int[runs.Count];
        int group = 0;
        for (int i = 0; i < runs.Count;)
        {
            int end = i;
            double low = runs[i].Coverage.ZoneShare, high = low;
            while (end + 1 < runs.Count)
            {
                double next = runs[end + 1].Coverage.ZoneShare;
                if (Math.Max(high, next) - Math.Min(low, next) >= Alike) break;
                (low, high) = (Math.Min(low, next), Math.Max(high, next));
                end++;
            }

            // Heads that all never get there are told so in words.
            if (end > i && high > 0)
            {
                group++;
                for (int k = i; k <= end; k++) ties[k] = group;
            }

            i = end + 1;
        }

        return ties;
    }

    private static string DepthAt(Track track, double time, UnitFormat format)
    {
        if (track.Count == 0 || time > track.Time[^1] + 1e-9) return "in";
        int i = Array.FindIndex(track.Time, t => t >= time - 1e-9);
        return format.LengthNumber(Math.Max(0, track.Depth(Math.Max(0, i))));
    }

    private static List<TickView> Ticks(double from, double to, UnitFormat format, int most)
    {
        double unit = 1 / format.LengthValue(1);
        double step = ((double[])[0.25, 0.5, 1, 2, 5, 10, 20, 25, 50, 100]).First(s => (to - from) / unit / s <= most || s >= 100);
        List<TickView> ticks = [];
        for (int i = 0; (i * step * unit) + from <= to + 1e-9; i++)
            ticks.Add(new TickView(Cm(from + (i * step * unit)), $"{UnitFormat.Number(i * step, 2)} {format.LengthUnit}"));
        return ticks;
    }

    private static string StretchWords(int stretch) => stretch == 1 ? "drawn to scale" : $"to scale, depth drawn {stretch} times";

    private static int Percent(double share) => double.IsFinite(share) ? (int)Math.Round(100 * share) : 0;

    private static int Cm(double metres) => double.IsFinite(metres) ? (int)Math.Round(100 * Math.Clamp(metres, -1000, 1000)) : 0;

    private static string Hex(OxyColor color) => FormattableString.Invariant($"#{color.R:x2}{color.G:x2}{color.B:x2}");
}
