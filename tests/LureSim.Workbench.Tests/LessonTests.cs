using System.Text;
using LureSim.Report.Units;
using LureSim.Workbench.Bench;
using LureSim.Workbench.Classroom;
using LureSim.Workbench.Pictures;

namespace LureSim.Workbench.Tests;

/// <summary>Lessons, each held against the engine.</summary>
public class LessonTests
{
    public static TheoryData<string> Lessons => [.. new LessonBook(null, UnitSystem.Us).Lessons.Select(lesson => lesson.Id)];

    [Theory]
    [MemberData(nameof(Lessons))]
    public void The_engine_gives_the_answer_that_is_marked(string id)
    {
        var book = new LessonBook(null, UnitSystem.Us);
        LessonCheck check = book.Check(book.Lessons.Single(lesson => lesson.Id == id), BenchTests.Read("bridge-channel.yaml"), CancellationToken.None);
        Assert.True(check.Holds, LessonBook.Refusal(check));
    }

    // What is uncovered must show what is marked, in its own words.
    [Theory]
    [InlineData("crooked-or-straight", "pins")]
    public void The_picture_shows_the_answer_that_is_marked(string id, string word)
    {
        var book = new LessonBook(null, UnitSystem.Us);
        Lesson lesson = book.Lessons.Single(item => item.Id == id);
        var pictures = new PicturePart(book.Water(lesson, BenchTests.Read("bridge-channel.yaml")));
        SwimView before = pictures.Swim(pictures.Bench.Ask(BenchSettings.Of(lesson.Before)), CancellationToken.None), after = pictures.Swim(pictures.Bench.Ask(BenchSettings.Of(lesson.After)), CancellationToken.None);
        Assert.DoesNotContain(word, before.Words, StringComparison.Ordinal);
        Assert.True(after.Words.Contains(word, StringComparison.Ordinal), $"{before.Words} {before.Speed}; {after.Words} {after.Speed}");
    }

    // A lesson about a color shows that color beside white, whatever is in the box.
    [Fact]
    public void A_lesson_about_a_color_shows_the_color()
    {
        var book = new LessonBook(null, UnitSystem.Us);
        Lesson lesson = book.Lessons.Single(item => item.Color is not null);
        WorkBench bench = BenchTests.Read("bridge-channel.yaml");
        var pictures = new PicturePart(bench);
        pictures.Begin(CancellationToken.None);
        ColorsView view = pictures.Colors(bench.Ask(BenchSettings.Of(lesson.Before)), lesson.AskedColor, CancellationToken.None);
        Assert.Equal([lesson.Color!, "white", "chartreuse"], view.Depths[view.Running].Swatches.Select(swatch => swatch.Name));
        Assert.Equal("10 ft", view.Depths[view.Running].Depth);
        string share = UnitFormat.PercentText(book.Check(lesson, bench, CancellationToken.None).Figure);
        Assert.Equal($"{share} as light as white", view.Depths[view.Running].Swatches[0].Word);
    }

    [Fact]
    public void There_are_six() => Assert.Equal(6, new LessonBook(null, UnitSystem.Us).Lessons.Count);

    [Fact]
    public void A_lesson_with_a_wrong_answer_is_refused_with_the_figure()
    {
        var book = new LessonBook(null, UnitSystem.Us);
        Lesson right = book.Lessons.Single(lesson => lesson.Id == "off-the-grass");
        LessonCheck check = book.Check(right with { Id = "wrong", Right = 1 }, BenchTests.Read("bridge-channel.yaml"), CancellationToken.None);
        Assert.False(check.Holds);
        string words = LessonBook.Refusal(check);
        Assert.Contains("Slower", words, StringComparison.Ordinal);
        Assert.Contains("Faster", words, StringComparison.Ordinal);
        Assert.Contains(UnitFormat.Number(check.Figure, 2), words, StringComparison.Ordinal);
        Assert.NotNull(LessonBook.View(check).Refused);
    }

    [Theory]
    [InlineData("- id: x")]
    [InlineData("nonsense: 1")]
    [InlineData("- {id: x, title: x, water: nowhere, question: x, knob: cur, measure: zone, answers: [{says: a}, {says: b}], right: 1, because: x, leaves_out: x}")]
    [InlineData("- {id: x, title: x, water: yours, question: x, knob: cur, measure: zone, answers: [{says: a}], right: 1, because: x, leaves_out: x}")]
    [InlineData("- {id: x, title: x, water: yours, question: x, knob: cur, measure: zone, answers: [{says: a}, {says: b}], right: 3, because: x, leaves_out: x}")]
    public void A_file_that_is_no_list_of_lessons_is_told_and_the_own_ones_stay(string text)
    {
        string folder = Directory.CreateTempSubdirectory("luresim-lessons-").FullName;
        File.WriteAllText(Path.Combine(folder, LessonBook.FileName), text);
        var book = new LessonBook(folder, UnitSystem.Us);
        Assert.Equal(6, book.Lessons.Count);
        Assert.Contains(LessonBook.FileName, book.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void The_handout_is_a_page_to_print()
    {
        byte[] pdf = Handout.Pdf(new LessonBook(null, UnitSystem.Us), BenchTests.Read("bridge-channel.yaml"), CancellationToken.None);
        Assert.StartsWith("%PDF", Encoding.ASCII.GetString(pdf, 0, 8), StringComparison.Ordinal);
        Assert.True(pdf.Length > 5000);
    }
}
