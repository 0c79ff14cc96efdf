using System.Text;
using System.Xml.Linq;
using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Sight;

namespace LureSim.Tests.Report;

public class LessonTests
{
    private static readonly Lesson Us = Lessons.Of(Samples.Bridge(), "bridge");
    private static readonly Lesson Metric = Lessons.Of(Samples.Bridge(), "bridge", UnitSystem.Metric);

    [Fact]
    public void Red_is_shown_at_round_depths_of_the_chosen_units()
    {
        Assert.Equal([0, 3, 6, 10, 20, 30], Us.Clear.Plate.Rows.Select(r => Math.Round(r.Depth / 0.3048, 9)));
        Assert.Equal([0, 1, 2, 3, 6, 9], Metric.Stained.Plate.Rows.Select(r => r.Depth));
    }

    [Fact]
    public void Red_loses_against_white_in_clear_water_and_holds_its_own_in_stained_water()
    {
        PlateRow clear = Us.Clear.Plate.Rows[^1], stained = Us.Stained.Plate.Rows[^1], top = Us.Clear.Plate.Rows[0];
        Assert.True(clear.RelativeLuminance < 0.6 * top.RelativeLuminance);
        Assert.True(stained.RelativeLuminance > 1.3 * clear.RelativeLuminance, $"{stained.RelativeLuminance / clear.RelativeLuminance}");
        Assert.True(stained.RelativeLuminance > 0.5 * top.RelativeLuminance, $"{stained.RelativeLuminance / top.RelativeLuminance}");
        Assert.True(stained.LightLeft < clear.LightLeft);
        DarkDepth dark = Us.Clear.Dark.Single(d => d.Criterion == DarkCriterion.LuminanceAgainstWhite);
        Assert.True(dark.Depth < clear.Depth);
        Assert.Equal(ColourWord.NearBlack, clear.Cell.Word);

        // Documented for this water and sun: 98 ft, where hardly any light is left.
        Assert.Equal(98 * 0.3048, Us.Stained.Dark.Single(d => d.Criterion == DarkCriterion.LuminanceAgainstWhite).Depth!.Value, 0.16);
    }

    [Fact]
    public void The_teaching_plate_is_of_the_spots_own_water_and_names_both_views()
    {
        Figure figure = LessonWriter.Figures(Us, UnitSystem.Us)[0];
        List<string> texts = Texts(figure);
        Assert.Contains(SpotWords.Water(Us.Scenario.Spot.Clarity, new UnitFormat(UnitSystem.Us)), texts);
        foreach (string text in (string[])["red", "white", "chartreuse", "camera"])
            Assert.Contains(text, texts);
        Assert.InRange(Us.Spot.Chart.Depths.Count, 4, 6);
        Assert.Equal(0, Us.Spot.Chart.Depths[0]);
        Assert.Equal(Us.Scenario.Spot.Depth, Us.Spot.Chart.Depths[^1], 9);
        Assert.All(Us.Spot.Plate.Rows, row => Assert.Contains(UnitFormat.PercentText(row.LightLeft), texts));

        Scenario flat = Samples.Flat();
        Lesson other = Lessons.Of(flat, "flat");
        Assert.NotEqual(FigureWriter.Svg(figure), FigureWriter.Svg(LessonWriter.Figures(other, UnitSystem.Us)[0]));
    }

    [Fact]
    public void Every_plate_asks_a_question_and_its_picture_does_not_answer_it()
    {
        foreach ((Lesson lesson, UnitSystem units) in new[] { (Us, UnitSystem.Us), (Metric, UnitSystem.Metric) })
        {
            Assert.All(LessonWriter.Plates(lesson, units), plate =>
            {
                Assert.EndsWith("?", plate.Question, StringComparison.Ordinal);
                Assert.NotEmpty(plate.Answer);
                Assert.All(plate.Answer, answer => Assert.EndsWith(".", answer, StringComparison.Ordinal));
                Assert.InRange(plate.Figure.AltText.Split(' ').Length, 5, 60);
            });
        }
    }

    [Fact]
    public void Each_way_to_be_black_has_its_sentence_and_depth()
    {
        List<string> texts = Texts(LessonWriter.Figures(Us, UnitSystem.Us)[1]);
        Assert.Equal(4, Us.Spot.Ways.Count);
        var format = new UnitFormat(UnitSystem.Us);
        Assert.All(Us.Spot.Ways, way => Assert.Contains(LessonWords.WayDepth(way.Dark, Us.Scenario.Spot.Depth, format), texts));
        Assert.All(Us.Spot.Ways, way => Assert.InRange(way.ShownDepth, 0, Us.Scenario.Spot.Depth));
        Assert.All(Us.Spot.Ways.Single(way => way.Dark.Criterion == DarkCriterion.FishCones).ConeShares, share => Assert.InRange(share, 0, 1));
    }

    [Fact]
    public void Sighting_distance_names_every_colour_the_fish_and_the_marks()
    {
        Figure figure = LessonWriter.Figures(Us, UnitSystem.Us)[3];
        string texts = string.Join(' ', Texts(figure));
        Assert.All(Us.Sight.Lures, lure => Assert.Contains(lure.Name, texts, StringComparison.Ordinal));
        Assert.Contains("redfish", texts, StringComparison.Ordinal);
        Assert.Contains("borrowed from a similar fish", texts, StringComparison.Ordinal);
        Assert.Contains($"lure at {new UnitFormat(UnitSystem.Us).HandText(Us.Sight.Rows[0].Depth)}", texts, StringComparison.Ordinal);
        Assert.Contains($"lure at {new UnitFormat(UnitSystem.Us).HandText(Us.Sight.Rows[^1].Depth)}", texts, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FigureWidth.Wide)]
    [InlineData(FigureWidth.Narrow)]
    public void Every_colour_has_its_row_in_the_plot_of_distances(FigureWidth width)
    {
        Lesson lesson = Lessons.Of(Samples.Flat(), "flat");
        Figure figure = SightingDistance.Create(lesson.Sight, new FigureOptions(UnitSystem.Us, width));
        List<string> texts = Texts(figure);
        Assert.Equal(LureColours.All.Count, lesson.Sight.Lures.Count);
        Assert.All(lesson.Sight.Lures, lure => Assert.Contains(texts, text => text.Length > 2 && lure.Name.StartsWith(text.TrimEnd('-'), StringComparison.Ordinal)));
    }

    [Fact]
    public void Silhouettes_fade_with_distance_seen_level_and_from_below()
    {
        Assert.Equal([ViewDirection.Level, ViewDirection.Up], Us.Sight.Strips.Select(s => s.Direction));
        foreach (SilhouetteStrip strip in Us.Sight.Strips.Concat(Metric.Sight.Strips))
        {
            Assert.Equal(5, strip.Distances.Count);

            // Under a fiftieth nobody tells the lure from the water.
            double[] contrast = [.. strip.Swatches.Select(s => Math.Max(0.02, Math.Abs(s.LuminanceContrast)))];
            Assert.Equal(contrast.OrderDescending(), contrast);
        }

        List<string> texts = Texts(LessonWriter.Figures(Us, UnitSystem.Us)[4]);
        Assert.Contains("close up", texts);
        Assert.All(Us.Sight.Strips[0].Distances.Skip(1), d => Assert.Contains(new UnitFormat(UnitSystem.Us).SeenText(d), texts));
        Assert.Contains(texts, t => t.StartsWith("Seen level, lure at", StringComparison.Ordinal));
        Assert.Contains(texts, t => t.StartsWith("Seen from below, lure at", StringComparison.Ordinal));
    }

    [Fact]
    public void In_the_dark_there_are_still_plates()
    {
        Scenario night = Samples.Bridge() with { Spot = Samples.Bridge().Spot with { Sky = new SkyByElevation(0) }, Tackle = Samples.Bridge().Tackle with { Colours = ["white", "black"] } };
        foreach (Figure figure in LessonWriter.Figures(Lesson.Compute(night, LengthScale.Metres), UnitSystem.Metric, FigureWidth.Narrow))
            Assert.DoesNotContain("NaN", Encoding.UTF8.GetString(FigureWriter.Svg(figure)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_stopped_lesson_ends() =>
        Assert.Throws<OperationCanceledException>(() => Lesson.Compute(Samples.Bridge(), LengthScale.Metres, null, new CancellationToken(true)));

    [Fact]
    public void Nothing_to_draw_is_refused()
    {
        FigureOptions options = new(UnitSystem.Us);
        Assert.Throws<ArgumentException>(() => SilhouetteFigure.Create([], options));
        Assert.Throws<ArgumentException>(() => SightingDistance.Create(Us.Sight with { Rows = [] }, options));
    }

    [Fact]
    public void Files_are_the_plates_in_each_kind()
    {
        string[] names = ["red-turns-black", "four-ways-to-black", "grey-card", "sighting-distance", "silhouette", "colours-eye", "colours-camera"];
        IEnumerable<string> expected = names.SelectMany(n => (string[])[$"{n}.png", $"{n}.svg"]).Append("plates.pdf");
        Assert.Equal(expected, LessonWriter.Files(Us, UnitSystem.Us, SheetOutputs.Png | SheetOutputs.Svg | SheetOutputs.Pdf).Select(f => f.Name));
    }

    private static List<string> Texts(Figure figure) =>
        [.. XDocument.Parse(Encoding.UTF8.GetString(FigureWriter.Svg(figure))).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
}
