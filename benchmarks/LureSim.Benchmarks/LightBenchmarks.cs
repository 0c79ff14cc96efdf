using BenchmarkDotNet.Attributes;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Benchmarks;

/// <summary>Speed of the optics. The chart (24 colours x 60 depths at 5 nm) is to take at most 1 ms on one core and allocate nothing.</summary>
[MemoryDiagnoser]
[MinColumn]
[ShortRunJob]
public class LightBenchmarks
{
    private readonly double[] depths = [.. Enumerable.Range(0, 60).Select(i => 0.25 * i)];
    private readonly ColourCell[] cells = new ColourCell[24 * 60];
    private readonly double[] illuminance = new double[60];
    private OpticalWater water = null!;
    private SurfaceLight surface = null!;
    private LightField field = null!;
    private ColourKernel kernel = null!;
    private LureColour[] colours = null!;
    private FishEye eye = null!;
    private SightScene scene = null!;

    [GlobalSetup]
    public void SetUp()
    {
        water = OpticalWater.FromSecchi(WaterKind.CoastalGreen, 3.0);
        surface = Atmosphere.Illuminate(45.0, 0.3);
        field = new LightField(water, surface);
        _ = field.Angular;
        colours = [.. LureColours.All, LureColour.FromHex("one", "#AA3366"), LureColour.FromHex("two", "#33AA66")];
        kernel = new ColourKernel(field, colours);
        eye = FishEyes.All[0];
        scene = new SightScene(field, eye, ViewDirection.Level, 2.0);
    }

    [Benchmark]
    public void Chart_of_24_colours_and_60_depths() => kernel.Compute(depths, cells, illuminance);

    [Benchmark]
    public OpticalWater Water_from_Secchi_depth() => OpticalWater.FromSecchi(WaterKind.CoastalGreen, 3.0);

    [Benchmark]
    public RadianceField Radiative_transfer_at_81_wavelengths() => new(water.Optics, surface, null);

    [Benchmark]
    public IReadOnlyList<Sighting> Ranking_of_24_colours() => scene.Rank(colours);
}
