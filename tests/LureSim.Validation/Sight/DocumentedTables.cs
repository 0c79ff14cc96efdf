using System.Globalization;
using System.Text;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Validation.Sight;

/// <summary>
/// The tables of docs/light.md are computed, and this test holds them to what the model says today. Set
/// LURESIM_UPDATE_DOCS=1 to write them anew after a change that is meant.
/// </summary>
public class DocumentedTables
{
    private const double FeetAMetre = 1.0 / 0.3048;

    private static readonly (string Name, WaterKind Kind, double Secchi)[] Waters =
    [
        ("clear ocean", WaterKind.ClearOcean, 30.0),
        ("clear ocean", WaterKind.ClearOcean, 15.0),
        ("coastal green", WaterKind.CoastalGreen, 6.0),
        ("coastal green", WaterKind.CoastalGreen, 2.5),
        ("tannin-stained", WaterKind.TanninStained, 3.0),
        ("tannin-stained", WaterKind.TanninStained, 1.0),
        ("silty", WaterKind.Silty, 2.0),
        ("silty", WaterKind.Silty, 0.6),
    ];

    private static readonly LureColour DeepRed = LureColour.FromHex("pure red", "#C00000");

    [Theory]
    [InlineData("red")]
    [InlineData("last-to-go")]
    [InlineData("ranking")]
    [InlineData("fish")]
    public void Table_in_the_document_is_the_one_computed(string table)
    {
        string path = Repository.File("docs", "light.md");
        string text = File.ReadAllText(path);
        string begin = $"<!-- begin computed: {table} -->\n", end = $"<!-- end computed: {table} -->";
        int from = text.IndexOf(begin, StringComparison.Ordinal) + begin.Length, to = text.IndexOf(end, StringComparison.Ordinal);
        Assert.True(from >= begin.Length && to >= from, $"docs/light.md has no place for the table '{table}'.");
        string computed = table switch
        {
            "red" => RedTable(),
            "last-to-go" => LastToGoTable(),
            "ranking" => RankingTable(),
            _ => FishTable(),
        };
        if (Environment.GetEnvironmentVariable("LURESIM_UPDATE_DOCS") == "1")
            File.WriteAllText(path, text[..from] + computed + text[to..]);
        else
            Assert.Equal(computed, text[from..to]);
    }

    private static LightField Field(WaterKind kind, double secchi) => new(OpticalWater.FromSecchi(kind, secchi), Atmosphere.Illuminate(60.0));

    private static FishEye Fish(string name) => FishEyes.TryFind(name, out var eye) ? eye : throw new InvalidOperationException(name);

    private static string RedTable()
    {
        var rows = new StringBuilder();
        _ = rows.AppendLine("| Water | Secchi ft | Lure | Luminance against white | Chroma | Contrast to the water | Cones, red drum (stand-in) | Cones, striped bass |");
        _ = rows.AppendLine("|---|---|---|---|---|---|---|---|");
        foreach (var (name, kind, secchi) in Waters)
        {
            var field = Field(kind, secchi);
            foreach (var colour in new[] { LureColours.Red, DeepRed })
            {
                var drum = Darkening.Of(field, colour, Fish("red drum"));
                var bass = Darkening.Of(field, colour, Fish("striped bass"));
                _ = rows.AppendLine(CultureInfo.InvariantCulture, $"| {name} | {secchi * FeetAMetre:0} | {(colour == DeepRed ? "pure red" : "red paint")} | {Feet(drum[0])} | {Feet(drum[1])} | {Feet(drum[2])} | {Feet(drum[3])} | {Feet(bass[3])} |");
            }
        }

        return rows.Replace("\r", "").ToString();
    }

    private static string Feet(DarkDepth dark) => dark.Depth switch
    {
        null => "never",
        0.0 => "0",
        _ => string.Create(CultureInfo.InvariantCulture, $"{dark.Depth.Value * FeetAMetre:0}"),
    };

    private static string LastToGoTable()
    {
        // A person adapted at the surface: the depth at which a colour is no brighter than the black lure at the surface.
        LureColour[] colours = [LureColours.White, LureColours.Chartreuse, LureColours.Yellow, LureColours.Orange, LureColours.Red, LureColours.Green, LureColours.Blue];
        var rows = new StringBuilder();
        _ = rows.AppendLine("| Water | Secchi ft | Colours by the depth (ft) at which they get as dark as a black lure at the surface, last to go first | Red beside white there, against the surface |");
        _ = rows.AppendLine("|---|---|---|---|");
        foreach (var (name, kind, secchi) in Waters)
        {
            var field = Field(kind, secchi);
            double black = ColourChart.Of(field, [LureColours.Black], [0.0])[0, 0].Stimulus.Y;
            double[] depths = [.. Enumerable.Range(0, 1500).Select(i => i * 0.1)];
            var chart = ColourChart.Of(field, colours, depths);
            var gone = Enumerable.Range(0, colours.Length)
                .Select(c => (colours[c].Name, Depth: depths[Enumerable.Range(0, depths.Length).First(d => chart[d, c].Stimulus.Y <= black)]))
                .OrderByDescending(p => p.Depth).ToArray();
            int at = Array.IndexOf(depths, gone[0].Depth);
            int red = Array.IndexOf(colours, LureColours.Red);
            _ = rows.AppendLine(CultureInfo.InvariantCulture, $"| {name} | {secchi * FeetAMetre:0} | {string.Join(", ", gone.Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Name} {g.Depth * FeetAMetre:0}")))} | {chart[at, red].RelativeLuminance / chart[0, red].RelativeLuminance:0.0} x |");
        }

        return rows.Replace("\r", "").ToString();
    }

    private static string RankingTable()
    {
        LureColour[] colours = [LureColours.White, LureColours.Chartreuse, LureColours.Yellow, LureColours.Red, LureColours.DarkPurple, LureColours.Black, LureColours.NaturalSilverSide];
        var rows = new StringBuilder();
        _ = rows.AppendLine("| Water | Secchi ft | Eye looks | Farthest made out first (ft) |");
        _ = rows.AppendLine("|---|---|---|---|");
        foreach (var (name, kind, secchi) in Waters)
        {
            var field = Field(kind, secchi);
            foreach (var direction in new[] { ViewDirection.Level, ViewDirection.Up })
            {
                var scene = new SightScene(field, Fish("red drum"), direction, Math.Min(2.0, secchi));
                var list = scene.Rank(colours).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Name} {s.Distance * FeetAMetre:0.0}"));
                _ = rows.AppendLine(CultureInfo.InvariantCulture, $"| {name} | {secchi * FeetAMetre:0} | {(direction == ViewDirection.Up ? "up" : "level")} | {string.Join(", ", list)} |");
            }
        }

        return rows.Replace("\r", "").ToString();
    }

    private static string FishTable()
    {
        var rows = new StringBuilder();
        _ = rows.AppendLine("| Fish | Cones nm | Rod nm | Pigment | Basis | Share of white that red returns, at the surface |");
        _ = rows.AppendLine("|---|---|---|---|---|---|");
        foreach (var eye in FishEyes.All)
        {
            double best = eye.Cones.Max(c => c.Catch(LureColours.Red.Exitance(Colorimetry.D65)) / c.Catch(Colorimetry.D65));
            _ = rows.AppendLine(CultureInfo.InvariantCulture, $"| {eye.CommonName} | {string.Join("/", eye.Cones.Select(c => c.PeakNm))} | {eye.Rod.PeakNm} | {eye.Cones[^1].Chromophore} | {(eye.Basis == EyeBasis.Measured ? "measured" : "stand-in")} | {best:0.00} |");
        }

        return rows.Replace("\r", "").ToString();
    }
}
