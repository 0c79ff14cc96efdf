using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using OxyPlot;
using SkiaSharp;

namespace LureSim.Tests.Report;

public class FigureTests
{
    private static readonly FigureOptions Wide = new(UnitSystem.Us);
    private static readonly FigureOptions Phone = new(UnitSystem.Metric, FigureWidth.Narrow);

    // A stroke behind two words that overlap, beside one, and wholly behind one.
    [Fact]
    public void A_stroke_leaves_out_what_lies_behind_words()
    {
        OxyRect[] words = [new(10, -5, 10, 10), new(15, -5, 15, 10), new(50, 1, 20, 10)];
        Assert.Equal([(0, 10), (30, 100)], Shapes.Outside(new ScreenPoint(0, 0), new ScreenPoint(100, 0), words).Select(piece => (piece.From.X, piece.To.X)));
        Assert.Equal([(0, 10), (30, 50), (70, 100)], Shapes.Outside(new ScreenPoint(0, 0), new ScreenPoint(100, 10), [new(10, -5, 20, 20), new(50, -5, 20, 20)]).Select(piece => (piece.From.X, piece.To.X)));
        Assert.Empty(Shapes.Outside(new ScreenPoint(0, 5), new ScreenPoint(0, 8), [new(-1, 0, 2, 20)]));
        Assert.Equal([(new ScreenPoint(3, 9), new ScreenPoint(3, 1))], Shapes.Outside(new ScreenPoint(3, 9), new ScreenPoint(3, 1), [new(5, 0, 9, 20)]));
    }

    public static TheoryData<string> Cases => [.. AllFigures.Cases];

    [Theory]
    [MemberData(nameof(Cases))]
    public void No_two_labels_overlap_and_none_leaves_the_picture(string name)
    {
        foreach (FigureOptions options in (FigureOptions[])[Wide, Phone])
        {
            foreach (Figure figure in AllFigures.Draw(name, options))
            {
                _ = FigureWriter.Svg(figure);
                IReadOnlyList<PlacedText> placed = figure.Placed;
                for (int i = 0; i < placed.Count; i++)
                {
                    OxyRect a = placed[i].Box;
                    Assert.True(a.Left >= 0 && a.Right <= figure.Width && a.Top >= 0 && a.Bottom <= figure.Height, $"{figure.Name}: '{placed[i].Text}' leaves the picture");
                    for (int j = i + 1; j < placed.Count; j++)
                    {
                        OxyRect b = placed[j].Box;
                        bool overlap = a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;
                        Assert.False(overlap, $"{figure.Name}, {options.Width}: '{placed[i].Text}' and '{placed[j].Text}' overlap");
                    }
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_jig_head_is_named_in_every_figure_that_compares_them(string name)
    {
        string[] comparing = ["side-view", "plan-view", "depth-time", "count-down", "coverage-map", "coverage-bars", "chance-bars"];
        foreach (FigureOptions options in (FigureOptions[])[Wide, Phone])
        {
            foreach (Figure figure in AllFigures.Draw(name, options).Where(f => comparing.Contains(f.Name)))
            {
                string text = string.Join(' ', Texts(figure));
                foreach (JigHead head in AllFigures.Scenario(name).Tackle.JigHeads)
                    Assert.Contains(new UnitFormat(options.Units).HeadText(head), text, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [InlineData(UnitSystem.Us, "(ft)", "(ft/s)")]
    [InlineData(UnitSystem.Metric, "(m)", "(m/s)")]
    public void Axes_are_labelled_in_the_chosen_units(UnitSystem units, string length, string speed)
    {
        List<Figure> figures = AllFigures.Draw("bridge", new FigureOptions(units));
        Assert.Contains($"depth {length}", Texts(figures[0]));
        Assert.Contains($"distance from the rod tip {length}", Texts(figures[0]));
        Assert.Contains($"reel speed {speed}", Texts(figures[4]));
    }

    [Fact]
    public void Side_view_names_zone_grass_bottom_and_current()
    {
        List<string> flat = Texts(AllFigures.Draw("flat", Wide)[0]);
        Assert.Contains("strike zone, 1 to 2 ft", flat);
        Assert.Contains("grass, 0.8 ft high", flat);
        Assert.Contains("sand bottom at 3 ft", flat);
        Assert.DoesNotContain("current", flat);
        List<string> bridge = Texts(AllFigures.Draw("bridge", Wide)[0]);
        Assert.Contains("current", bridge);
        Assert.Contains("2 ft/s", bridge);
        Assert.DoesNotContain(bridge, t => t.StartsWith("grass", StringComparison.Ordinal));
    }

    [Fact]
    public void The_map_prints_the_share_in_every_cell()
    {
        CoverageGrid grid = Samples.Grid(Samples.Flat());
        List<string> texts = Texts(CoverageMap.Create(grid, null, Wide));
        foreach (double share in grid.ZoneShare)
            Assert.Contains(UnitFormat.PercentNumber(share), texts);
        int numbers = texts.Count(t => t.All(c => char.IsDigit(c) || c is '<' or '>'));
        Assert.True(numbers >= grid.ZoneShare.Length);
    }

    [Fact]
    public void The_map_frames_the_first_choice_or_the_most_time_in_the_zone()
    {
        Scenario scenario = Samples.Bridge();
        CoverageGrid grid = Samples.Grid(scenario);
        Candidate candidate = Samples.Candidates(scenario, scenario.Presentations[0] with { RetrieveSpeed = grid.Speeds[2] })[1];
        Assert.Equal((1, 2), CoverageMap.Find(grid, candidate));
        Assert.Equal((-1, -1), CoverageMap.Find(grid with { PresentationName = "another" }, candidate));
        (int row, int column) = CoverageMap.Best(grid);
        Assert.Equal(grid.ZoneShare.Cast<double>().Max(), grid.ZoneShare[row, column]);
        Assert.Contains("choice", Texts(CoverageMap.Create(grid, candidate, Wide)));
        Assert.Contains("most in the zone", Texts(CoverageMap.Create(grid, null, Wide)));
    }

    [Fact]
    public void The_same_figure_gives_the_same_bytes()
    {
        List<Figure> once = AllFigures.Draw("twelve", Wide);
        List<Figure> again = AllFigures.Draw("twelve", Wide);
        for (int i = 0; i < once.Count; i++)
        {
            Assert.Equal(Hash(FigureWriter.Png(once[i])), Hash(FigureWriter.Png(again[i])));
            Assert.Equal(Hash(FigureWriter.Svg(once[i])), Hash(FigureWriter.Svg(again[i])));
            // A figure that was drawn before draws the same once more.
            Assert.Equal(Hash(FigureWriter.Svg(once[i])), Hash(FigureWriter.Svg(once[i])));
        }

        Assert.Equal(Hash(FigureWriter.Pdf(once, "x")), Hash(FigureWriter.Pdf(again, "x")));
    }

    [Fact]
    public void Png_has_the_size_asked_for_and_ink_where_the_title_stands()
    {
        Figure figure = AllFigures.Draw("one", Wide)[0];
        using SKBitmap bitmap = SKBitmap.Decode(FigureWriter.Png(figure, 2));
        Assert.Equal((int)(2 * figure.Width), bitmap.Width);
        Assert.Equal((int)(2 * figure.Height), bitmap.Height);
        int dark = 0;
        for (int y = 24; y < 70; y++)
        {
            for (int x = 24; x < 600; x++)
                dark += bitmap.GetPixel(x, y).Red < 100 ? 1 : 0;
        }

        // The title covers a tenth of its line or so; boxes in place of letters, or nothing, would not.
        Assert.InRange(dark / (46.0 * 576), 0.04, 0.3);
    }

    [Fact]
    public void Text_is_drawn_and_measured_with_the_bundled_font()
    {
        Assert.Equal("DejaVu Sans", BundledFont.Face(400).FamilyName);
        Assert.True(BundledFont.Face(700).IsBold);
        // DejaVu Sans: 'M' is 1767 of 2048 units wide.
        Assert.Equal(1767.0 / 2048 * 100, BundledFont.Measure("M", 100, 400).Width, 0.1);
        Assert.True(BundledFont.Measure("one\ntwo", 10, 400).Height > BundledFont.Measure("one", 10, 400).Height);
    }

    [Fact]
    public void Svg_has_title_and_description_and_ids_of_its_own()
    {
        foreach (Figure figure in AllFigures.Draw("bridge-cross", Phone))
        {
            XElement root = XDocument.Parse(Encoding.UTF8.GetString(FigureWriter.Svg(figure))).Root!;
            XNamespace svg = "http://www.w3.org/2000/svg";
            Assert.Equal(figure.Title, root.Element(svg + "title")!.Value);
            Assert.Equal(figure.AltText, root.Element(svg + "desc")!.Value);
            Assert.Equal("img", root.Attribute("role")!.Value);
            List<string> ids = [.. root.Descendants().Attributes("id").Select(a => a.Value)];
            Assert.Equal(ids.Count, ids.Distinct().Count());
            Assert.All(ids, id => Assert.StartsWith(figure.Name + "-", id, StringComparison.Ordinal));
            HashSet<string> clips = [.. root.Descendants().Attributes("clip-path").Select(a => a.Value)];
            Assert.All(clips, c => Assert.Contains(c[5..^1], ids));
        }
    }

    [Fact]
    public void Pdf_has_a_page_for_each_figure()
    {
        List<Figure> figures = AllFigures.Draw("bridge", Wide);
        string pdf = Encoding.Latin1.GetString(FigureWriter.Pdf(figures, "Bridge"));
        Assert.StartsWith("%PDF-", pdf, StringComparison.Ordinal);
        Assert.Contains($"/Count {figures.Count}", pdf, StringComparison.Ordinal);
        Assert.DoesNotContain("CreationDate", pdf, StringComparison.Ordinal);
    }

    [Fact]
    public void Tracks_that_failed_or_are_empty_still_give_a_figure()
    {
        Scenario scenario = Samples.Bridge();
        List<Candidate> candidates = Samples.Candidates(scenario, scenario.Presentations[0]);
        double[] z = [.. candidates[0].Track.Z.Select((v, i) => i > 20 ? double.NaN : v)];
        candidates[0] = candidates[0] with { Track = candidates[0].Track with { Z = z } };
        candidates[1] = candidates[1] with { Track = candidates[1].Track with { Time = [], X = [], Y = [], Z = [], State = [], Shapes = [] } };
        foreach (Figure figure in (Figure[])[
            SideView.Create(scenario, candidates, candidates[1], Samples.Current(scenario), Wide),
            PlanView.Create(scenario, candidates, candidates[0], Wide),
            DepthTime.Create(scenario, candidates, null, Phone),
            SideView.Create(scenario, [], null, [], Wide),
            PlanView.Create(scenario, [], null, Wide),
            DepthTime.Create(scenario, [], null, Wide),
            CoverageBars.Create(scenario, [], null, Wide)])
        {
            Assert.DoesNotContain("NaN", Encoding.UTF8.GetString(FigureWriter.Svg(figure)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Weights_grow_darker_and_stand_out_from_the_water()
    {
        double last = 1;
        for (int i = 0; i <= 20; i++)
        {
            double luminance = Palette.Luminance(Palette.Weight(i / 20.0));
            Assert.True(luminance < last);
            last = luminance;
            // WCAG 2.1 asks 3:1 of graphics (criterion 1.4.11).
            Assert.True((Palette.Luminance(Palette.Water) + 0.05) / (luminance + 0.05) >= 3);
        }
    }

    [Fact]
    public void Numbers_on_the_map_keep_a_contrast_of_four_and_a_half()
    {
        for (int i = 0; i <= 100; i++)
        {
            OxyColor fill = Palette.Share(i / 100.0);
            double a = Palette.Luminance(fill) + 0.05;
            double b = Palette.Luminance(Palette.TextOn(fill)) + 0.05;
            Assert.True(Math.Max(a, b) / Math.Min(a, b) >= 4.5, $"{i} %");
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    [InlineData(double.NaN)]
    public void A_scale_out_of_range_is_refused(double scale)
    {
        Figure figure = AllFigures.Draw("one", Wide)[0];
        Assert.Throws<ArgumentOutOfRangeException>(() => FigureWriter.Png(figure, scale));
    }

    private static string Hash(byte[] bytes) => Convert.ToHexString(SHA256.HashData(bytes));

    private static List<string> Texts(Figure figure) =>
        [.. XDocument.Parse(Encoding.UTF8.GetString(FigureWriter.Svg(figure))).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
}
