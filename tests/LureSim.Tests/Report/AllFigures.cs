using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;

namespace LureSim.Tests.Report;

/// <summary>Every figure of every hard case, by name.</summary>
internal static class AllFigures
{
    public static readonly string[] Cases = ["bridge", "bridge-cross", "twelve", "one", "flat", "flat-bare", "deep", "long-names"];

    public static Scenario Scenario(string name) => name switch
    {
        "bridge" => Samples.Bridge(),
        "bridge-cross" => Samples.Bridge(null, Math.PI / 2),
        "twelve" => Samples.Bridge(Samples.TwelveHeads, 2.4),
        "one" => Samples.Bridge(["1/4"]),
        "flat" => Samples.Flat(),
        "flat-bare" => Samples.Flat(["1/8", "1/4"], grass: 0),
        "deep" => Samples.Deep(),
        "long-names" => LongNames(),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Unknown case."),
    };

    public static List<Figure> Draw(string name, FigureOptions options)
    {
        Scenario scenario = Scenario(name);
        List<Candidate> candidates = Samples.Candidates(scenario, scenario.Presentations[^1]);
        Candidate first = Samples.Best(candidates);
        return
        [
            SideView.Create(scenario, candidates, first, Samples.Current(scenario), options),
            PlanView.Create(scenario, candidates, first, options),
            DepthTime.Create(scenario, candidates, first, options),
            FallCurves.Create(scenario, Samples.Fall(scenario), first.Rig.Head, options),
            CoverageMap.Create(Samples.Grid(scenario), null, options),
            CoverageBars.Create(scenario, candidates, first, options),
            ColourSwatches.Create(Samples.Plate(scenario), scenario.Spot.StrikeZone, SwatchView.Eye, options),
            ColourSwatches.Create(Samples.Plate(scenario), scenario.Spot.StrikeZone, SwatchView.Camera, options),
            SpectrumCurves.Create(Samples.Spectrum(scenario), options),
            .. LessonWriter.Figures(Lessons.Of(scenario, name, options.Units), options.Units, options.Width).Take(5),
            .. Studies.Figures(scenario, options),
        ];
    }

    private static Scenario LongNames()
    {
        Scenario scenario = Samples.Flat();
        JigHead[] heads = [.. scenario.Tackle.JigHeads.Select((h, i) => h with { Label = $"{h.Label} wide-gap weedless no. {i + 1}" })];
        return scenario with
        {
            Tackle = scenario.Tackle with { JigHeads = heads },
            Presentations = [scenario.Presentations[0] with { Name = "very slow swim, rod high, over the deeper lanes between the grass beds, with a stop at every bare patch of sand" }],
        };
    }
}
