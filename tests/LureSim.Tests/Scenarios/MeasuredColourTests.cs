using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Sight;

namespace LureSim.Tests.Scenarios;

/// <summary>Colours by a measured reflectance and lures of several colours, from the scenario to the answer.</summary>
public sealed class MeasuredColourTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("luresim-colours-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private ScenarioReading Read(string tackle, string? csv)
    {
        if (csv is not null)
            File.WriteAllText(Path.Combine(folder, "mine.csv"), csv);
        string text = File.ReadAllText(Repository("scenarios", "bridge-channel.yaml"));
        string[] lines = text.Split('\n');
        int at = Array.FindIndex(lines, line => line.StartsWith("  colours:", StringComparison.Ordinal));
        string path = Path.Combine(folder, "scenario.yaml");
        File.WriteAllText(path, string.Join('\n', [.. lines[..(at + 1)], .. tackle.Split('\n'), .. lines[(at + 1)..]]));
        return ScenarioReader.Read(path);
    }

    private static string Repository(params string[] parts)
    {
        string at = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(at, "LureSim.sln")))
            at = Path.GetDirectoryName(at) ?? throw new InvalidOperationException("No repository around the tests.");
        return Path.Combine([at, .. parts]);
    }

    [Fact]
    public void A_measured_reflectance_beside_the_scenario_stands_among_the_colours()
    {
        ScenarioReading reading = Read("  measured_colours:\n    - {name: my lure, reflectance: mine.csv}", "# mine\nwavelength_nm,reflectance\n400,0.1\n600,0.6\n");
        Assert.Empty(reading.Problems);
        LureColour mine = SpotColours.Chart(reading.Scenario!, LengthScale.Metres).Colours[^1];
        Assert.Equal("my lure", mine.Name);
        Assert.Equal(ColourBasis.Measured, mine.Basis);
        Assert.Equal(0.35, mine.Reflectance.At(500.0), 12);
    }

    [Theory]
    [InlineData(null, "there is no file")]
    [InlineData("wavelength_nm,reflectance\n400,1.2\n600,0.6\n", "does not hold a reflectance")]
    [InlineData("wavelength_nm,reflectance\n600,0.2\n400,0.6\n", "does not hold a reflectance")]
    [InlineData("wavelength_nm,share\n400,0.2\n600,0.6\n", "does not hold a reflectance")]
    [InlineData("wavelength_nm,reflectance\n400,x\n600,0.6\n", "does not hold a reflectance")]
    [InlineData("", "does not hold a reflectance")]
    public void A_bad_table_is_a_problem_at_its_line_and_key_with_a_way_out(string? csv, string message)
    {
        ScenarioProblem problem = Assert.Single(Read("  measured_colours:\n    - {name: my lure, reflectance: mine.csv}", csv).Problems);
        Assert.Equal("tackle.measured_colours[0].reflectance", problem.Key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Fix);
    }

    [Fact]
    public void Parts_of_a_pattern_run_together_where_the_light_has_one_colour_and_never_for_one_part()
    {
        var field = new LightField(OpticalWater.FromSecchi(WaterKind.TanninStained, 0.6), Atmosphere.Illuminate(50.0));
        FishEye drum = FishEyes.All.Single(eye => eye.CommonName == "red drum");
        PatternParts Of(LurePattern pattern) => PatternParts.Of(field, pattern, drum, 20.0);

        PatternParts plain = Of(LurePattern.Plain(LureColours.Red));
        Assert.Equal((PartsApart.OneColour, PartsApart.OneColour), (plain.ToPerson, plain.ToFish));

        // Two greys differ in brightness only: to the fish's colour channels they are alike at once, to a person they are not.
        PatternParts greys = Of(new LurePattern("greys", LureColours.Smoke, LureColours.White, LureColours.White));
        Assert.NotEqual(0.0, greys.Person);
        Assert.True(greys.Fish < 3.0, $"{greys.Fish}");

        PatternParts bait = Of(LurePatterns.NaturalBaitFish with { Eye = LureColours.Yellow });
        Assert.True(greys.Fish < (bait.Fish ?? double.PositiveInfinity));
        Assert.Contains(LureColours.Yellow, bait.Pattern.Face(ViewDirection.Level).Select(part => part.Colour));
        Assert.Equal(1.0, bait.Pattern.Face(ViewDirection.Level).Sum(part => part.Share), 12);
    }

    [Fact]
    public void The_parts_of_a_pattern_may_be_measured_colours_and_an_unknown_one_is_a_problem()
    {
        const string Table = "# mine\nwavelength_nm,reflectance\n400,0.1\n600,0.6\n";
        static string Lines(string side) => $"  measured_colours:\n    - {{name: my lure, reflectance: mine.csv}}\n  patterns:\n    - {{name: shiner, back: black, side: {side}, belly: white}}";
        ScenarioReading reading = Read(Lines("my lure"), Table);
        Assert.Empty(reading.Problems);
        Assert.Equal("my lure", Assert.Single(reading.Scenario!.Tackle.Patterns).Side);
        Assert.NotEmpty(SpotColours.Patterns(reading.Scenario!, SpotColours.Chart(reading.Scenario!, LengthScale.Metres).Field));
        ScenarioProblem problem = Assert.Single(Read(Lines("my lur"), Table).Problems);
        Assert.Equal("tackle.patterns[0].side", problem.Key);
        Assert.Contains("my lure", problem.Fix, StringComparison.Ordinal);
    }
}
