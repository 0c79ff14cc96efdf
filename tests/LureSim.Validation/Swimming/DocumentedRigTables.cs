using System.Globalization;
using System.Text;
using LureSim.Coupling;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Swimming;
using LureSim.Tackle;

namespace LureSim.Validation.Swimming;

/// <summary>
/// The tables of docs/rigging.md, a lure each: what a fault does by its amount and by speed. All of them cost minutes, so that this test holds the first row and one more of each to
/// what the model says today; LURESIM_UPDATE_DOCS=1 writes them all anew after a change that is meant.
/// </summary>
public class DocumentedRigTables
{
    private const int Tries = 6;
    private const double Ounce = 0.028349523125, Inch = 0.0254, Degree = Math.PI / 180;

    private static readonly double[] Speeds = [0.3, 0.6, 1.0, 1.3];

    private static readonly Spot Water = new()
    {
        Depth = 4,
        Salinity = 30,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.8),
        StrikeZone = new StrikeZone(2, 4),
        TargetFish = "red drum",
    };

    public static TheoryData<string> Names => [.. Lures.Select(lure => lure.Key)];

    private static Dictionary<string, Lure> Lures { get; } = new[]
    {
        new Lure("Paddle tail, 4 in, 1/4 oz", BodyProfile.PaddleTail, 4, 4, WeightPlace.Nose),
        new Lure("Paddle tail, 4 in, 1/8 oz", BodyProfile.PaddleTail, 4, 8, WeightPlace.Nose),
        new Lure("Paddle tail, 4 in, unweighted hook", BodyProfile.PaddleTail, 4, 0, WeightPlace.Nose),
        new Lure("Soft jerkbait, 5 in, unweighted hook", BodyProfile.SoftJerkbait, 5, 0, WeightPlace.Nose),
        new Lure("Soft jerkbait, 5 in, 1/16 oz on the shank", BodyProfile.SoftJerkbait, 5, 16, WeightPlace.Shank),
        new Lure("Shrimp, 3½ in, 1/8 oz", BodyProfile.ShrimpImitation, 3.5, 8, WeightPlace.Nose),
        new Lure("Curl-tail grub, 3 in, 1/8 oz", BodyProfile.CurlTailGrub, 3, 8, WeightPlace.Nose),
        new Lure("Crab, 2½ in, 1/4 oz", BodyProfile.CrabImitation, 2.5, 4, WeightPlace.Nose),
    }.ToDictionary(lure => lure.Name);

    [Theory]
    [MemberData(nameof(Names))]
    public void Table_in_the_document_is_the_one_computed(string name)
    {
        Lure lure = Lures[name];
        List<(string Name, Rigging Rigging)> faults = Faults(lure);
        string path = Repository.File("docs", "rigging.md");
        if (Environment.GetEnvironmentVariable("LURESIM_UPDATE_DOCS") == "1")
        {
            string[] rows = new string[faults.Count];
            Parallel.For(0, faults.Count, i => rows[i] = Row(lure, faults[i]));
            string table = string.Join('\n', [Heading(lure), "| --- | --- | --- | --- | --- |", .. rows]) + "\n";

            // One test after the other: they share the file.
            lock (Lures)
            {
                string text = File.ReadAllText(path);
                (int from, int to) = Place(text, name);
                File.WriteAllText(path, text[..from] + table + text[to..]);
            }

            return;
        }

        string written;
        lock (Lures)
        {
            string text = File.ReadAllText(path);
            (int from, int to) = Place(text, name);
            written = text[from..to];
        }

        string[] lines = written.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(faults.Count + 2, lines.Length);
        Assert.Equal(Heading(lure), lines[0]);
        foreach (int i in (int[])[0, 3])
            Assert.Equal(Row(lure, faults[i]), lines[i + 2]);
    }

    private static (int From, int To) Place(string text, string name)
    {
        string begin = $"<!-- begin computed: {name} -->\n", end = "<!-- end computed -->";
        int from = text.IndexOf(begin, StringComparison.Ordinal) + begin.Length;
        int to = from < begin.Length ? -1 : text.IndexOf(end, from, StringComparison.Ordinal);
        Assert.True(to >= from, $"docs/rigging.md has no place for the table '{name}'.");
        return (from, to);
    }

    private static string Heading(Lure lure) => $"| {lure.Name} | 1 ft/s (0.3 m/s) | 2 ft/s (0.6 m/s) | 3.3 ft/s (1 m/s) | 4.3 ft/s (1.3 m/s) |";

    private static List<(string Name, Rigging Rigging)> Faults(Lure lure)
    {
        bool nose = lure.Weight > 0 && lure.Place == WeightPlace.Nose;
        double gape = SoftBait.CommonGape(lure.Head, lure.Body, new Rigging());
        return
        [
            ("straight", new Rigging()),
            .. new[] { 10, 20, 30 }.Select(a => ($"bent to the side {a}°", new Rigging { Bend = a * Degree })),
            .. new[] { 10, -10, 20, -20 }.Select(a => ($"bent {(a > 0 ? "up" : "down")} {Math.Abs(a)}°", new Rigging { ExitAbove = BodyBends.ExitOfBend(a * Degree, lure.Body.Kind.Proportions.ShankShare * lure.Body.Length) })),
            .. new[] { 2, 4 }.Select(mm => ($"hook out to one side {mm} mm", new Rigging { ExitSideways = mm * 1e-3 })),
            .. new[] { 70, 85 }.Select(share => ($"long shank {share}%", new Rigging { ShankShare = share / 100.0 })),
            .. new[] { 1.5, 2 }.Select(times => (string.Create(CultureInfo.InvariantCulture, $"hook gap {times:0.#} times the usual"), new Rigging { HookGape = times * gape })),
            .. new[] { 15, 30, 60 }.Select(lost => ($"tail lost {lost}%", new Rigging { TailLost = lost / 100.0 })),
            .. nose ? new[] { 10, 20 }.Select(a => ($"head turned {a}°", new Rigging { HeadTurn = a * Degree })) : new[] { 1, 4 }.Select(mm => ($"pulled up {mm} mm", new Rigging { PulledUp = mm * 1e-3 })),
            .. lure.Place == WeightPlace.Shank ? new[] { 10, 90 }.Select(at => ($"weight at {at}% of the shank", new Rigging { WeightStation = at / 100.0 })) : [],
        ];
    }

    private static string Row(Lure lure, (string Name, Rigging Rigging) fault)
    {
        FishingRig rig = new()
        {
            RodTipHeight = 1.5,
            Reel = new Reel(6.2, 0.045),
            Line = new LineSpecification(LineKind.Braid, 44.5, 0.00021),
            Head = lure.Head,
            Body = lure.Body,
            Rigging = fault.Rigging,
        };
        var window = new RigWindow(rig, Water, lure.Head, lure.Body);
        LureProperties path = TackleBuilder.Lure(lure.Head, lure.Body);
        var row = new StringBuilder($"| {fault.Name} |");
        foreach (double speed in Speeds)
            row.Append(CultureInfo.InvariantCulture, $" {Cell(window.SteadyTries(speed, window.HeldElevation(path, speed), Tries))} |");
        return row.ToString();
    }

    private static string Cell(EnsembleAssessment cell)
    {
        ActionReport r = cell.Report;
        string what = cell.Verdict switch
        {
            ActionVerdict.Swims => "swims",
            ActionVerdict.Muted => "dead",
            ActionVerdict.Still => "straight",
            ActionVerdict.Leans => r.UpsideDown ? "upside down" : string.Create(CultureInfo.InvariantCulture, $"leans {Math.Abs(r.MeanRoll) / Degree:0}°"),
            ActionVerdict.RunsOff => string.Create(CultureInfo.InvariantCulture, $"runs off {100 * Math.Abs(r.CourseSlope):0}%"),
            ActionVerdict.Rolls => string.Create(CultureInfo.InvariantCulture, $"rolls {r.RollAmplitude / Degree:0}°"),
            ActionVerdict.Spins => string.Create(CultureInfo.InvariantCulture, $"**spins {Math.Abs(r.SpinRate):0.0}/s**"),
            _ => throw new InvalidOperationException($"A steady pull ends in {cell.Verdict}."),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{what} {cell.Agreeing}/{cell.Members.Count}");
    }

    private sealed record Lure(string Name, BodyProfile Profile, double Inches, int Weight, WeightPlace Place)
    {
        public LureBody Body { get; } = LureKinds.Of(Profile).Body(Inches * Inch, "a bait");

        public JigHead Head { get; } = new(Weight == 0 ? 0 : Ounce / Weight, HeadMetal.Lead, HookWire.CommonMass(Inches * Inch), "a head") { Place = Place };
    }
}
