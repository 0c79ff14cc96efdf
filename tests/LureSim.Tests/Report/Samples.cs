using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Stepping;

namespace LureSim.Tests.Report;

/// <summary>
/// Hand-made inputs for the figures and the sheet. The tracks are plausible curves, not simulations: they
/// exercise the drawing (crossing, converging and dragging lines), nothing is concluded from them.
/// </summary>
internal static class Samples
{
    private const double OunceInKilograms = 0.028349523125;
    private const double Foot = 0.3048;

    public static readonly string[] FourHeads = ["1/8", "1/4", "3/8", "1/2"];
    public static readonly string[] TwelveHeads = ["1/32", "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "1", "1 1/2"];

    public static JigHead Head(string ounces, HeadMetal metal = HeadMetal.Lead) => new(Ounces(ounces) * OunceInKilograms, metal, 0.0008, ounces + " oz");

    public static double Ounces(string text)
    {
        double sum = 0;
        foreach (string part in text.Split(' '))
        {
            string[] fraction = part.Split('/');
            sum += fraction.Length == 2
                ? double.Parse(fraction[0], System.Globalization.CultureInfo.InvariantCulture) / double.Parse(fraction[1], System.Globalization.CultureInfo.InvariantCulture)
                : double.Parse(part, System.Globalization.CultureInfo.InvariantCulture);
        }

        return sum;
    }

    public static Scenario Bridge(string[]? heads = null, double currentDirection = Math.PI) => new()
    {
        Title = "Bridge channel on the ebb",
        Notes = "Second span from the east, casting upcurrent of the piling.",
        Spot = new Spot
        {
            Depth = 18 * Foot,
            Bottom = BottomKind.Shell,
            CurrentSpeed = 0.6,
            CurrentDirection = currentDirection,
            Salinity = 28,
            TemperatureCelsius = 20,
            Clarity = new SecchiClarity(1.8, WaterKind.CoastalGreen),
            Sky = new SkyByElevation(0.9),
            CloudCover = 0.3,
            WindSpeed = 4,
            StrikeZone = new StrikeZone(14 * Foot, 18 * Foot),
            TargetFish = "red drum",
        },
        Tackle = Tackle(heads ?? FourHeads, 8 * Foot),
        Presentations = [new Presentation { Name = "slow steady", CastLength = 22, RetrieveSpeed = 0.4 }, new Presentation { Name = "lift and drop", CastLength = 22, RetrieveSpeed = 0.5, Moves = Move.StopAndGo(2, 3, 2, 0.6) }],
    };

    public static Scenario Flat(string[]? heads = null, double grass = 0.25) => new()
    {
        Title = "Grass flat, high sun",
        Spot = new Spot
        {
            Depth = 3 * Foot,
            Bottom = BottomKind.Sand,
            GrassHeight = grass,
            Salinity = 32,
            TemperatureCelsius = 27,
            Clarity = new SecchiClarity(3.5, WaterKind.ClearOcean),
            Sky = new SkyByElevation(1.1),
            StrikeZone = new StrikeZone(1 * Foot, 2 * Foot),
            TargetFish = "spotted seatrout",
        },
        Tackle = Tackle(heads ?? ["1/16", "1/8", "3/16", "1/4"], 7 * Foot),
        Presentations = [new Presentation { Name = "slow swim over the grass", CastLength = 18, CountDown = 0, RetrieveSpeed = 0.5 }],
    };

    public static Scenario Deep() => Bridge(["1", "1 1/2"]) with
    {
        Title = "Deep rock ledge",
        Spot = Bridge().Spot with { Depth = 40, Bottom = BottomKind.Hard, CurrentSpeed = 0, StrikeZone = new StrikeZone(30, 38) },
    };

    public static TackleBox Tackle(string[] heads, double tip) => new()
    {
        RodTipHeight = tip,
        Reel = new Reel(5.2, 0.045),
        Line = new LineSpecification(LineKind.Braid, 66.7, 0.00023),
        Leader = new LeaderSpecification(LineKind.Fluorocarbon, 89, 0.00037, 0.6),
        JigHeads = [.. heads.Select(h => Head(h))],
        Bodies = [new LureBody(BodyProfile.PaddleTail, 0.089, 0.018, 0.014, 1050, "3.5 in paddle tail")],
        Colours = ["white", "chartreuse", "red", "dark purple", "black", "natural silver-green"],
    };

    public static Track Track(Scenario scenario, JigHead head, Presentation presentation)
    {
        Spot spot = scenario.Spot;
        const double dt = 0.1;
        double ounces = Math.Max(head.Mass / OunceInKilograms, 0.02);
        double sink = Math.Min(1.2, 0.75 * Math.Sqrt(ounces));
        double lift = 0.05 + (0.25 * presentation.RetrieveSpeed);
        double along = Math.Cos(spot.CurrentDirection) * spot.CurrentSpeed;
        double across = Math.Sin(spot.CurrentDirection) * spot.CurrentSpeed;
        List<double> time = [];
        List<double> xs = [];
        List<double> ys = [];
        List<double> zs = [];
        List<TrackState> states = [];
        List<LineShape> shapes = [];
        double x = presentation.CastLength;
        double y = 0;
        double depth = 0;
        double t = 0;
        double reelStart = presentation.CountDown ?? double.PositiveInfinity;
        bool reeling = false;
        while (t < 300 && x > presentation.LineLeftAtEnd)
        {
            bool bottom = depth >= spot.Depth - 1e-9;
            if (!reeling && (t >= reelStart || bottom || t > 25))
                reeling = true;
            TrackState state = reeling ? TrackState.Reeling : TrackState.Falling;
            if (bottom)
                state |= TrackState.OnBottom;
            if (depth > spot.Depth - spot.GrassHeight)
                state |= TrackState.InGrass;
            if (spot.StrikeZone.Contains(depth))
                state |= TrackState.InZone;
            time.Add(t);
            xs.Add(x);
            ys.Add(y);
            zs.Add(-depth);
            states.Add(state);
            if (reeling && Math.Abs((t % 8) - 4) < dt / 2)
                shapes.Add(Shape(scenario, t, x, y, depth));

            double cycle = presentation.Moves.Count > 1 ? t % presentation.Moves.Sum(move => move.Duration) : 0;
            bool paused = reeling && cycle > presentation.Moves[0].Duration;
            double speed = !reeling ? 0 : paused ? 0 : presentation.RetrieveSpeed;
            x += dt * (-speed + (reeling ? 0 : 0.25 * along));
            y += dt * (across * 0.35 * Math.Exp(-t / 20) / (1 + ounces));
            double down = !reeling ? sink * Math.Exp(-0.25 * spot.CurrentSpeed / (sink + 0.05))
                : sink * (paused ? 0.8 : 0.55) * (1 - (0.6 * spot.CurrentSpeed * 0.1 / sink)) - (paused ? 0 : lift * (1 + (0.6 * depth / Math.Max(1.5, x))));
            depth = Math.Clamp(depth + (dt * down * (reeling ? 0.35 : 1)), 0.05, spot.Depth);
            // The line draws the lure up as it shortens.
            depth = Math.Min(depth, 0.55 * x * Math.Sqrt(ounces) + 0.3);
            t += dt;
        }

        int n = time.Count;
        return new Track
        {
            Status = SimulationStatus.Completed,
            Statistics = new SimulationStatistics(n, 0, 3 * n, dt, 1e-4),
            Time = [.. time],
            X = [.. xs],
            Y = [.. ys],
            Z = [.. zs],
            VelocityX = new double[n],
            VelocityY = new double[n],
            VelocityZ = new double[n],
            SpeedThroughWater = new double[n],
            RodTension = new double[n],
            LureTension = new double[n],
            RodAngle = new double[n],
            LureAngle = new double[n],
            LineOut = new double[n],
            State = [.. states],
            Events = [],
            Shapes = shapes,
        };
    }

    public static Coverage Cover(Scenario scenario, Track track)
    {
        List<int> retrieve = [.. Enumerable.Range(0, track.Count).Where(i => !track.State[i].HasFlag(TrackState.Falling))];
        StrikeZone zone = scenario.Spot.StrikeZone;
        double Share(Func<int, bool> test) => retrieve.Count == 0 ? 0 : retrieve.Count(test) / (double)retrieve.Count;
        List<double> depths = [.. retrieve.Select(track.Depth).Order()];
        return new Coverage(
            Share(i => zone.Contains(track.Depth(i))),
            Share(i => track.Depth(i) < zone.Top),
            Share(i => track.Depth(i) > zone.Bottom),
            Share(i => track.State[i].HasFlag(TrackState.OnBottom)),
            Share(i => track.State[i].HasFlag(TrackState.InGrass)),
            Enumerable.Range(0, track.Count).Where(i => zone.Contains(track.Depth(i))).Select(i => (double?)track.Time[i]).FirstOrDefault(),
            Enumerable.Range(0, track.Count).Where(i => track.State[i].HasFlag(TrackState.OnBottom)).Select(i => (double?)track.Time[i]).FirstOrDefault(),
            depths.Count == 0 ? 0 : depths[depths.Count / 2],
            depths.Count == 0 ? 0 : depths[^1],
            retrieve.Count * 0.1,
            track.Y.Select(Math.Abs).Max());
    }

    public static List<Candidate> Candidates(Scenario scenario, Presentation presentation)
    {
        List<Candidate> result = [];
        foreach (JigHead head in scenario.Tackle.JigHeads)
        {
            Track track = Track(scenario, head, presentation);
            Coverage coverage = Cover(scenario, track);
            double score = Math.Max(0, coverage.ZoneShare - (0.5 * coverage.BottomShare) - (0.5 * coverage.GrassShare));
            result.Add(new Candidate(new Rig(head, scenario.Tackle.Bodies[0], presentation), track, coverage, score));
        }

        return result;
    }

    public static Candidate Best(IReadOnlyList<Candidate> candidates) => candidates.MaxBy(c => c.Score)!;

    public static List<CurrentSample> Current(Scenario scenario)
    {
        Spot spot = scenario.Spot;
        return spot.CurrentSpeed <= 0 ? []
            : [.. Enumerable.Range(0, 9).Select(i => spot.Depth * i / 8 * 0.98).Select(d => new CurrentSample(d, spot.CurrentSpeed * Math.Pow(1 - (d / spot.Depth), 1 / 7.0)))];
    }

    public static FallTable Fall(Scenario scenario)
    {
        List<double> depths = [.. Enumerable.Range(1, 9).Select(i => scenario.Spot.Depth * i / 9)];
        return new FallTable(depths, [.. scenario.Tackle.JigHeads.Select(h =>
        {
            double speed = 0.75 * Math.Sqrt(h.Mass / OunceInKilograms) / (1 + (0.5 * Math.Sqrt(h.Mass / OunceInKilograms)));
            return new FallColumn(h, speed, [.. depths.Select(d => (double?)(d / speed * (1 + (0.03 * d))))], [.. depths.Select(d => h.Mass < 0.0015 && d > 3 ? (double?)null : 1.4 * d / speed)]);
        })]);
    }

    public static CoverageGrid Grid(Scenario scenario)
    {
        double[] speeds = [0.2, 0.35, 0.5, 0.65, 0.8, 1.0];
        int rows = scenario.Tackle.JigHeads.Count;
        double[,] zone = new double[rows, speeds.Length];
        double[,] bottom = new double[rows, speeds.Length];
        double[,] grass = new double[rows, speeds.Length];
        double[,] median = new double[rows, speeds.Length];
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < speeds.Length; c++)
            {
                Coverage coverage = Cover(scenario, Track(scenario, scenario.Tackle.JigHeads[r], scenario.Presentations[0] with { RetrieveSpeed = speeds[c] }));
                zone[r, c] = coverage.ZoneShare;
                bottom[r, c] = coverage.BottomShare;
                grass[r, c] = coverage.GrassShare;
                median[r, c] = coverage.MedianDepth;
            }
        }

        return new CoverageGrid(scenario.Presentations[0].Name, scenario.Tackle.JigHeads, speeds, zone, bottom, grass, median);
    }

    public static readonly (string Name, double R, double G, double B)[] Paints =
    [
        ("white", 0.85, 0.85, 0.85), ("chartreuse", 0.6, 0.85, 0.1), ("red", 0.6, 0.03, 0.04), ("dark purple", 0.08, 0.02, 0.12),
        ("black", 0.02, 0.02, 0.02), ("natural silver-green", 0.35, 0.42, 0.33),
    ];

    public static ColourPlate Plate(Scenario scenario, int rows = 8)
    {
        List<double> depths = [.. Enumerable.Range(0, rows).Select(i => scenario.Spot.Depth * i / (rows - 1))];
        return new ColourPlate(depths, [.. Paints.Select(p => p.Name)], [.. depths.Select(d => (IReadOnlyList<PlateCell>)[.. Paints.Select(p =>
        {
            double r = p.R * Math.Exp(-0.55 * d);
            double g = p.G * Math.Exp(-0.22 * d);
            double b = p.B * Math.Exp(-0.4 * d);
            double white = Math.Exp(-0.22 * d);
            double lightness = 100 * Math.Cbrt(((0.21 * r) + (0.72 * g) + (0.07 * b)) / white);
            string word = lightness < 30 ? "near black" : lightness < 45 ? "dark" : lightness < 70 ? "muted" : "bright";
            return new PlateCell(Hex(r, g, b), Hex(r / white, g / white, b / white), word, lightness);
        })])]);
    }

    public static SpectrumPlate Spectrum(Scenario scenario)
    {
        List<double> nm = [.. Enumerable.Range(0, 67).Select(i => 390 + (5.0 * i))];
        List<double> depths = [.. Enumerable.Range(0, 5).Select(i => scenario.Spot.Depth * i / 4)];
        return new SpectrumPlate(nm, depths, [.. depths.Select(d => (IReadOnlyList<double>)[.. nm.Select(w =>
            (1.2 + (0.3 * Math.Sin(w / 40))) * Math.Exp(-d * (0.2 + Math.Pow((w - 560) / 140, 2))))])]);
    }

    public static Sheet Sheet(Scenario scenario, UnitSystem units = UnitSystem.Us)
    {
        List<Candidate> candidates = [.. scenario.Presentations.SelectMany(p => Candidates(scenario, p))];
        Candidate first = Best(candidates);
        Candidate? second = candidates.Where(c => c.Rig.Head != first.Rig.Head).MaxBy(c => c.Score);
        return new Sheet
        {
            Scenario = scenario,
            Candidates = candidates,
            Choice = new Choice(first, second, null, null, [], []),
            Why =
                [
                    $"The {first.Rig.Head.Label} head spends {100 * first.Coverage.ZoneShare:0}% of the retrieve in the strike zone, more than any other.",
                    "Lighter heads are lifted by the belly of the line and pass above the fish.",
                    "Heavier heads reach the zone sooner but drag.",
                ],
            Warnings = ["A fifth more current takes the lure out of the zone for the last third of the retrieve."],
            Fall = Fall(scenario),
            Coverage = Grid(scenario),
            Current = Current(scenario),
            Colour = new ColourChoice("chartreuse", "shows farthest"),
            Colours = Plate(scenario),
            Spectrum = Spectrum(scenario),
            Sight = Lessons.Of(scenario, scenario.Title, units).Sight,
            Uncertainty = Studies.Of(scenario),
            Answers = Studies.Answers(scenario),
            Units = units,
        };
    }

    private static string Hex(double r, double g, double b)
    {
        static int Channel(double v) => (int)Math.Round(255 * Math.Clamp(v <= 0.0031308 ? 12.92 * v : (1.055 * Math.Pow(v, 1 / 2.4)) - 0.055, 0, 1));
        return $"#{Channel(r):x2}{Channel(g):x2}{Channel(b):x2}";
    }

    private static LineShape Shape(Scenario scenario, double t, double x, double y, double depth)
    {
        double tip = scenario.Tackle.RodTipHeight;
        const int n = 21;
        double[] sx = new double[n];
        double[] sy = new double[n];
        double[] sz = new double[n];
        for (int i = 0; i < n; i++)
        {
            double s = i / (n - 1.0);
            double belly = 4 * s * (1 - s);
            sx[i] = (x * (1 - s)) - (belly * scenario.Spot.CurrentSpeed * 0.8 * Math.Sign(-Math.Cos(scenario.Spot.CurrentDirection)));
            sy[i] = y * (1 - s);
            sz[i] = (-depth * (1 - s)) + (tip * s) + (belly * 0.12 * depth);
        }

        return new LineShape(t, sx, sy, sz);
    }
}
