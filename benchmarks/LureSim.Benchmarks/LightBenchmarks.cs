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
    private readonly double[] _depths = [.. Enumerable.Range(0, 60).Select(i => 0.25 * i)];
    private readonly ColourCell[] _cells = new ColourCell[24 * 60];
    private readonly double[] _illuminance = new double[60];
    private OpticalWater _water = null!;
    private SurfaceLight _surface = null!;
    private LightField _field = null!;
    private ColourKernel _kernel = null!;
    private LureColour[] _colours = null!;
    private FishEye _eye = null!;
    private SightScene _scene = null!;

    [GlobalSetup]
    public void SetUp()
    {
        _water = OpticalWater.FromSecchi(WaterKind.CoastalGreen, 3.0);
        _surface = Atmosphere.Illuminate(45.0, 0.3);
        _field = new LightField(_water, _surface);
        _ = _field.Angular;
        _colours = [.. LureColours.All, LureColour.FromHex("one", "#AA3366"), LureColour.FromHex("two", "#33AA66")];
        _kernel = new ColourKernel(_field, _colours);
        _eye = FishEyes.All[0];
        _scene = new SightScene(_field, _eye, ViewDirection.Level, 2.0);
    }

    [Benchmark]
    public void Chart_of_24_colours_and_60_depths() => _kernel.Compute(_depths, _cells, _illuminance);

    [Benchmark]
    public OpticalWater Water_from_Secchi_depth() => OpticalWater.FromSecchi(WaterKind.CoastalGreen, 3.0);

    [Benchmark]
    public RadianceField Radiative_transfer_at_81_wavelengths() => new LightField(_water, _surface).Angular;

    [Benchmark]
    public IReadOnlyList<Sighting> Ranking_of_24_colours() => _scene.Rank(_colours);
}
