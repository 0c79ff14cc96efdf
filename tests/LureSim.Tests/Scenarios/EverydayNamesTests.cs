using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>Names that people use are read as the word they stand for, and reported.</summary>
public class EverydayNamesTests
{
    /// <summary>The test scenario as an angler of the US would write it.</summary>
    public static string Everyday { get; } = TestScenario.Text
        .Replace("depth: 12 ft", "depth: 12 feet", StringComparison.Ordinal)
        .Replace("bottom: shell", "bottom: oyster", StringComparison.Ordinal)
        .Replace("{speed: 1 kn, direction: left,", "{speed: 1 knot, direction: to your left,", StringComparison.Ordinal)
        .Replace("direction: 225 deg", "direction: toward", StringComparison.Ordinal)
        .Replace("temperature: 68 degF", "temperature: 68 F", StringComparison.Ordinal)
        .Replace("water: coastal green", "water: green", StringComparison.Ordinal)
        .Replace("target: red drum", "target: redfish", StringComparison.Ordinal)
        .Replace("kind: fluorocarbon", "kind: fluoro", StringComparison.Ordinal)
        .Replace("- 1/8 oz", "- 1/8 ounce", StringComparison.Ordinal)
        .Replace("colours: [white, dark purple,", "colors: [white, gray,", StringComparison.Ordinal)
        .Replace("count_down: to bottom", "count_down: to the bottom", StringComparison.Ordinal);

    [Fact]
    public void A_scenario_in_an_anglers_words_is_the_same_scenario()
    {
        Model.Scenario expected = TestScenario.Read(TestScenario.With("direction: 225 deg", "direction: towards").Replace("dark purple", "smoke grey", StringComparison.Ordinal));
        Model.Scenario scenario = TestScenario.Read(Everyday);
        Assert.Equal(expected.Spot, scenario.Spot);
        Assert.Equal(expected.Tackle.JigHeads, scenario.Tackle.JigHeads);
        Assert.Equal(expected.Tackle.Colours, scenario.Tackle.Colours);
        Assert.Equal(expected.Tackle.Leader, scenario.Tackle.Leader);
        Assert.Null(scenario.Presentations[0].CountDown);
    }

    [Fact]
    public void What_was_read_as_another_word_is_told_with_its_place()
    {
        IReadOnlyList<ScenarioRemark> remarks = ScenarioReader.ReadText(Everyday, "test.yaml").Remarks;
        Assert.Equal(
            ["oyster: taken as shell", "to your left: taken as left", "toward: taken as towards", "green: taken as coastal green", "redfish: taken as red drum", "fluoro: taken as fluorocarbon", "gray: taken as smoke grey", "to the bottom: taken as to bottom"],
            remarks.Select(remark => $"{remark.Written}: taken as {remark.Meaning}"));
        Assert.Equal("test.yaml:17:11: spot.target: redfish: taken as red drum", remarks[4].ToString());
        Assert.Empty(ScenarioReader.ReadText(TestScenario.Text, "test.yaml").Remarks);
    }

    [Fact]
    public void A_key_in_both_spellings_is_given_twice()
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(TestScenario.With("  colours:", "  colors: [white]\n  colours:")));
        Assert.Contains("given twice", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_name_stands_for_a_word_of_its_key_and_is_none_itself()
    {
        int lists = 0;
        foreach ((_, GrammarValue value) in ScenarioGrammar.Root.WithParts())
        {
            if (value is WordValue word) Check(word.Words, word.Names);
            if (value is QuantityValue quantity) Check(quantity.Words, quantity.Names);
        }

        Assert.True(lists > 15);
        Assert.All(EverydayNames.Colour.Words, word => Assert.Contains(word, ColourNames.All));
        Assert.All(EverydayNames.Colour.All, name => Assert.DoesNotContain(name, ColourNames.All));

        void Check(IReadOnlyList<GrammarWord> words, EverydayNames names)
        {
            lists += names.All.Any() ? 1 : 0;
            Assert.All(names.All, name => Assert.DoesNotContain(words, word => word.Text == name));

            // The words of a rod's moves are some of the directions.
            if (names != EverydayNames.Direction || words.Any(word => word.Meaning is double))
                Assert.All(names.Words, meant => Assert.Contains(words, word => word.Text == meant));
        }
    }

    [Fact]
    public void A_slip_of_yaml_does_not_hide_the_other_problems()
    {
        string text = TestScenario.With("title: Test channel", "title: Rock: the big one").Replace("depth: 12 ft", "depth: 12", StringComparison.Ordinal).Replace("\"#7FFF00\"]", "#7FFF00]", StringComparison.Ordinal).Replace("  bottom: shell", "\tbottom: clay", StringComparison.Ordinal);
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(text);
        Assert.Equal(
            [(1, "a colon in a value that is not in quotes"), (6, "the number has no unit"), (7, "a tab in the indentation"), (7, "unknown word"), (30, "an unquoted # starts a remark, and the bracket is not closed before it")],
            problems.Select(problem => (problem.Line, problem.Message)));
    }

    [Fact]
    public void A_bracket_that_is_not_closed_is_named_at_its_line_with_the_rest()
    {
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(TestScenario.With("spool_diameter: 45 mm}", "spool_diameter: 45 mm").Replace("cast: 60 ft", "cast: 60", StringComparison.Ordinal));
        Assert.Equal([20, 33], problems.Select(problem => problem.Line));
        Assert.Contains("bracket is not closed", problems[0].Message, StringComparison.Ordinal);
    }
}
