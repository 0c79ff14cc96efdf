using System.Text;
using LureSim.Report.Units;
using LureSim.Workbench.Classroom;

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
