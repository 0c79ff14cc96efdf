using CsCheck;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Scenarios.Interview;

namespace LureSim.Tests.Scenarios;

/// <summary>Whatever is answered, the scenario is one that the reader takes.</summary>
public class InterviewTests
{
    private static readonly DateOnly Day = new(2026, 6, 14);

    [Fact]
    public void The_defaults_alone_make_a_scenario_that_says_what_it_assumes()
    {
        var result = InterviewResult.Of(new AnswerSheet(Day));
        Assert.True(result.Reading.IsValid, string.Join('\n', result.Reading.Problems));
        Assert.Equal("my-spot.yaml", result.FileName);
        Assert.Empty(result.Answered);
        Assert.Contains(result.Assumed, item => item.Part.Id == "depth");
        Scenario scenario = result.Reading.Scenario!;
        Assert.Equal(6 * 0.3048, scenario.Spot.Depth, 1e-9);
        Assert.Equal(Season.Summer, scenario.Season);
        Assert.Equal("red drum", scenario.Spot.TargetFish);
        Assert.InRange(result.Text.Split('\n').Length, 20, 60);
        Assert.All(result.Text.Split('\n').Where(line => line.Contains("depth:", StringComparison.Ordinal)), line => Assert.Contains("# assumed", line, StringComparison.Ordinal));
    }

    [Fact]
    public void There_are_seventeen_questions_and_a_short_route_of_eight()
    {
        Assert.Equal(Enumerable.Range(1, 17), Questions.All.Select(question => question.Number));
        Assert.Equal([1, 3, 5, 6, 7, 10, 11, 15], Questions.All.Where(question => question.IsShort).Select(question => question.Number));
        Assert.Equal(Questions.Parts.Count, Questions.Parts.Select(part => part.Id).Distinct().Count());
        Assert.All(Questions.All, question => Assert.True(question.Text.EndsWith('?') && question.Why.EndsWith('.')));
    }

    [Fact]
    public void The_guide_names_every_id()
    {
        string guide = File.ReadAllText(Repository.File("docs", "guide.md"));
        Assert.All(Questions.Parts, part => Assert.Contains($"`{part.Id}`", guide, StringComparison.Ordinal));
    }

    // One answer at a time, over the defaults.
    [Fact]
    public void Every_word_of_every_question_gives_a_valid_scenario()
    {
        int walked = 0;
        foreach (Part part in Questions.Parts)
        {
            foreach (string word in part.Form.Words.Append(part.Default).Append("not sure").Append(""))
            {
                AnswerSheet sheet = Sheet(part);
                string? problem = sheet.Answer(part, word);
                Assert.True(problem is null, $"{part.Id}: {word}: {problem}");
                Assert.True(sheet.Has(part.Id), $"{part.Id}: {word}");
                var result = InterviewResult.Of(sheet);
                Assert.True(result.Reading.IsValid, $"{part.Id}: {word}: {string.Join('\n', result.Reading.Problems)}\n{result.Text}");
                Assert.Empty(result.Reading.Remarks);
                walked++;
            }
        }

        Assert.True(walked > 250, walked.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void The_ends_of_every_range_give_a_valid_scenario()
    {
        foreach (Part part in Questions.Parts)
        {
            if (part.Form is not MeasureForm form)
                continue;
            foreach (double end in (double[])[form.Least, form.Largest])
            {
                AnswerSheet sheet = Sheet(part);
                string text = FormattableString.Invariant($"{UnitTable.Of(form.Kind).Named(form.Unit)!.FromSi(end):0.####}");
                Assert.Null(sheet.Answer(part, text));
                var result = InterviewResult.Of(sheet);
                Assert.True(result.Reading.IsValid, $"{part.Id}: {text}: {string.Join('\n', result.Reading.Problems)}\n{result.Text}");
            }
        }
    }

    [Fact]
    public void Any_answers_together_give_a_valid_scenario() =>
        Gen.Int[0, int.MaxValue].Array[Questions.Parts.Count].HoldsFor(picks =>
        {
            var sheet = new AnswerSheet(Day);
            for (int i = 0; i < picks.Length; i++)
            {
                Part part = Questions.Parts[i];
                string[] words = [.. part.Form.Words, "", "not sure", part.Default];
                string text = words[picks[i] % words.Length];
                if (part.Form is MeasureForm form && picks[i] % 3 == 0)
                    text = FormattableString.Invariant($"{UnitTable.Of(form.Kind).Named(form.Unit)!.FromSi(form.Least + ((form.Largest - form.Least) * (picks[i] % 1009 / 1008.0))):0.###}");
                if (part.Form is CountForm && picks[i] % 3 == 0)
                    text = FormattableString.Invariant($"{1 + (picks[i] % 25)}");
                if (part.Form is ChoiceForm { Most: > 1 } && picks[i] % 2 == 0)
                    text = $"{text}, {words[picks[i] / 7 % words.Length]}".Trim(',', ' ').Replace("not sure", "", StringComparison.Ordinal).Trim(',', ' ');
                string? problem = sheet.Answer(part, text);
                Assert.True(problem is null || IsMeasure(part), $"{part.Id}: {text}: {problem}");
            }

            var result = InterviewResult.Of(sheet);
            Assert.True(result.Reading.IsValid, $"{string.Join('\n', result.Reading.Problems)}\n{result.Text}");

            // The answers kept for another time say the same.
            var again = new AnswerSheet(Day);
            Assert.Empty(again.Read(sheet.ToYaml(), "state.yaml"));
            Assert.Equal(result.Reading.Scenario!.Spot, InterviewResult.Of(again).Reading.Scenario!.Spot);

            static bool IsMeasure(Part part) => part.Form is MeasureForm;
        }, iterations: 300);

    [Theory]
    [InlineData("depth", "about 6 feet", "6 ft")]
    [InlineData("depth", "4'", "4 ft")]
    [InlineData("depth", "knee deep", "knee")]
    [InlineData("depth", "6", "6 ft")]
    [InlineData("depth", "it's six feet deep or so", "6 ft")]
    [InlineData("depth", "4 and a half feet", "4 1/2 ft")]
    [InlineData("depth", "about six and a half", "6 1/2 ft")]
    [InlineData("depth", "a foot and a half", "1 1/2 ft")]
    [InlineData("current", "a knot and a half", "1 1/2 kn")]
    [InlineData("heads", "1/4 and half ounce", "1/4 oz, 1/2 oz")]
    [InlineData("depth", "2 m", "2 m")]
    [InlineData("depth", "4-6 ft", "5 ft")]
    [InlineData("depth", "1\u00bd feet", "1 1/2 ft")]
    [InlineData("current", "a knot", "1 kn")]
    [InlineData("current", "half a knot", "1/2 kn")]
    [InlineData("current", "10 ft in 6 s", "1.67 ft/s")]
    [InlineData("current", "10 feet in 6 seconds", "1.67 ft/s")]
    [InlineData("current", "hardly moving", "hardly")]
    [InlineData("direction", "to my right", "right")]
    [InlineData("water", "tea colored", "tea")]
    [InlineData("fish", "Redfish", "redfish")]
    [InlineData("fish", "specks", "speckled trout")]
    [InlineData("bottom", "oysters and mud", "oyster, mud")]
    [InlineData("bottom", "Oyster shell", "oyster")]
    [InlineData("temperature", "72 F", "72 degF")]
    [InlineData("temperature", "72", "72 degF")]
    [InlineData("line_strength", "10-20 lb", "15 lb")]
    [InlineData("heads", "1/8, 1/4 and 3/8 oz", "1/8 oz, 1/4 oz, 3/8 oz")]
    [InlineData("heads", "1-1/4 oz", "1 1/4 oz")]
    [InlineData("heads", "1/8 1/4 1/2 ounce", "1/8 oz, 1/4 oz, 1/2 oz")]
    [InlineData("baits", "4 inch paddle tails, jerk shad", "4 in paddle tail, 5 in soft jerkbait")]
    [InlineData("colors", "white, gray and rootbeer", "white, smoke gray, shrimp brown")]
    [InlineData("work", "hop, steady retrieve", "lift and drop, steady")]
    [InlineData("month", "Oct", "october")]
    [InlineData("turns", "8 turns", "8")]
    public void Answers_are_read_as_people_write_them(string id, string text, string shown)
    {
        var sheet = new AnswerSheet(Day);
        Assert.Null(sheet.Answer(Questions.Part(id), text));
        Assert.Equal(shown, sheet[id].Shown);
    }

    [Fact]
    public void One_breath_may_answer_several_parts()
    {
        var sheet = new AnswerSheet(Day);
        Assert.Null(sheet.Answer(Questions.Part("current"), "1 knot to the right"));
        Assert.Equal(("1 kn", "right"), (sheet["current"].Shown, sheet["direction"].Shown));
        Assert.Null(sheet.Answer(Questions.Part("line"), "10 lb braid, 20 lb fluoro 24 inches"));
        Assert.Equal("braid, 10 lb, 20 lb, fluoro, 24 in", string.Join(", ", ((string[])["line", "line_strength", "leader", "leader_kind", "leader_length"]).Select(sheet.Word)));
        Assert.Null(sheet.Answer(Questions.Part("eating"), "busting shrimp"));
        Assert.Equal(("shrimp", "busting"), (sheet.Word("eating"), sheet.Word("seen")));
        Assert.Null(sheet.Answer(Questions.Part("visibility"), "tea colored"));
        Assert.False(sheet.Has("visibility"));
        Assert.Equal("tea", sheet.Word("water"));
    }

    [Theory]
    [InlineData("water", "grean", "did you mean green?")]
    [InlineData("fish", "snok", "did you mean snook?")]
    [InlineData("fish", "whale", "redfish, ")]
    [InlineData("direction", "outgoing", "left, right, away, toward")]
    [InlineData("colors", "chartruse", "did you mean chartreuse?")]
    [InlineData("depth", "600 ft", "too much")]
    [InlineData("depth", "banana", "a number like 6 ft")]
    [InlineData("heads", "1/0 oz", "a number like 1/8")]
    [InlineData("baits", "9 in paddle tail", "too much")]
    public void What_is_not_understood_gets_the_nearest_words(string id, string text, string problem)
    {
        var sheet = new AnswerSheet(Day);
        Assert.Contains(problem, sheet.Answer(Questions.Part(id), text), StringComparison.Ordinal);
        Assert.False(sheet.Has(id));
    }

    [Fact]
    public void Not_sure_takes_the_usual_value_and_widens_what_is_tried()
    {
        var sheet = new AnswerSheet(Day);
        foreach (string id in (string[])["depth", "current", "visibility"])
            Assert.Null(sheet.Answer(Questions.Part(id), "not sure"));
        Scenario scenario = InterviewResult.Of(sheet).Reading.Scenario!;
        Assert.Equal(Spread.OfShare(0.3), scenario.Uncertainty.Depth);
        Assert.Equal(Spread.OfShare(0.5), scenario.Uncertainty.Clarity);
        Assert.Equal(Spread.OfBand(0.2 * 1852.0 / 3600.0, 1852.0 / 3600.0), scenario.Uncertainty.Current);
    }

    [Fact]
    public void Any_text_is_taken_or_refused_with_a_way_out() =>
        Gen.Select(Gen.Int[0, Questions.Parts.Count - 1].Select(i => Questions.Parts[i]), Gen.Frequency((1, Gen.String[0, 60]), (4, Gen.OneOf("1", "1/4", " ", " ", " ", "ft", "in", "lb", "oz", "a", "half", "knot", "-", ",", "and", "to", "the", "left", "red", "4'", "\"", "#", "{", "]", "\n", "green", "not sure").Array[1, 9].Select(string.Concat)))).HoldsFor((part, text) =>
        {
            var sheet = new AnswerSheet(Day);
            string? problem = sheet.Answer(part, text);
            Assert.True(problem is null || problem.Length > 5);
            var result = InterviewResult.Of(sheet);
            Assert.True(result.Reading.IsValid, $"{part.Id}: {text}: {string.Join('\n', result.Reading.Problems)}");
        }, iterations: 1_500);

    [Fact]
    public void A_file_of_answers_is_read_with_its_problems()
    {
        var sheet = new AnswerSheet(Day);
        IReadOnlyList<ScenarioProblem> problems = sheet.Read("dpth: 6 ft\nfish: whale\ncurrent: 1 knot to the right\nheads: [1/8 oz, 1/4 oz]\ncolors: {a: b}\n", "a.yaml");
        Assert.Equal([1, 2, 5], problems.Select(problem => problem.Line));
        Assert.Equal("write \"depth\"", problems[0].Fix);
        Assert.Equal("right", sheet.Word("direction"));
        Assert.Equal(2, sheet["heads"].Pieces.Count);
    }

    [Theory]
    [InlineData("My spot", "my-spot.yaml")]
    [InlineData("../../etc/passwd", "etc-passwd.yaml")]
    [InlineData("Bob's Rock #2", "bobs-rock-2.yaml")]
    [InlineData("\u4e2d", "my-spot.yaml")]
    public void A_file_is_named_after_the_spot(string spot, string file) => Assert.Equal(file, InterviewResult.FileOf(spot));

    // A part that is asked only after an answer gets that answer.
    private static AnswerSheet Sheet(Part part)
    {
        var sheet = new AnswerSheet(Day);
        if (part.Id is "rod_height")
            Assert.Null(sheet.Answer(Questions.Part("stand"), "bridge"));
        if (part.Id is "seen" or "bait_size")
            Assert.Null(sheet.Answer(Questions.Part("eating"), "shrimp"));
        return sheet;
    }
}
