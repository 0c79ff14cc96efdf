using CsCheck;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>Whatever the text: no exception, and either a scenario inside its documented ranges or usable problems.</summary>
public class ScenarioPropertyTests
{
    // Pieces that mean something to YAML or to the grammar hit more branches than random letters do.
    private static readonly Gen<string> Piece = Gen.OneOf(
        Gen.OneOf("", " ", "  ", "\n", "\n\n", "\t", ":", ": ", "- ", "#", "[", "]", "{", "}", ",", "&a ", "*a", "!!str ", "!", "|", ">", "|2\n", "'", "\"", "\\", "?", "? ", "%", "---\n", "...\n", "~", "null", ".nan", "1e999", "-1 m", "0", "8 ft", "1/4 oz", "99999 kg", "<<: ", "title", "spot", "depth", "true", "\u0000", "\u001b", "\ud800", "\u2028", "\ufeff", "\u202e"),
        Gen.String[0, 6]);

    // Where (as shares of the text), how much to cut, what to put in.
    private static readonly Gen<(double At, int Cut, string Put)> Edit = Gen.Select(Gen.Double.Unit, Gen.Int[0, 12], Piece);

    [Fact]
    public void Any_text_gives_a_scenario_or_problems() =>
        Piece.Array[0, 40].Select(string.Concat).HoldsFor(Check, iterations: 1_500);

    [Fact]
    public void A_mutated_scenario_gives_a_scenario_or_problems() =>
        Edit.Array[1, 4].HoldsFor(edits =>
        {
            string text = TestScenario.Text;
            foreach ((double share, int length, string put) in edits)
            {
                int at = (int)(share * text.Length);
                text = text.Remove(at, Math.Min(length, text.Length - at)).Insert(at, put);
            }

            Check(text);
        }, iterations: 1_500);

    [Fact]
    public void A_scenario_with_lines_moved_or_doubled_gives_a_scenario_or_problems() =>
        Gen.Select(Gen.Int[0, 44], Gen.Int[0, 44], Gen.Bool).HoldsFor((from, to, keep) =>
        {
            List<string> lines = [.. TestScenario.Text.Split('\n')];
            string line = lines[from % lines.Count];
            if (!keep)
                lines.RemoveAt(from % lines.Count);
            lines.Insert(to % lines.Count, line);
            Check(string.Join('\n', lines));
        }, iterations: 500);

    [Fact]
    public void A_value_of_any_size_gives_a_scenario_in_range_or_one_problem() =>
        Gen.Select(Gen.OneOf(
            ("depth: 12 ft", "depth: {0} ft"),
            ("grass_height: 1 ft", "grass_height: {0} ft"),
            ("speed: 1 kn", "speed: {0} kn"),
            ("direction: left", "direction: {0} deg"),
            ("salinity: 24 ppt", "salinity: {0} ppt"),
            ("temperature: 68 degF", "temperature: {0} degF"),
            ("secchi: 6 ft", "secchi: {0} ft"),
            ("sun_elevation: 40 deg", "sun_elevation: {0} deg"),
            ("cloud: 30 %", "cloud: {0} %"),
            ("sun_elevation: 40 deg", "date: 2026-06-14, time: '06:20', utc_offset: {0} h, latitude: 27.5 deg, longitude: -82.6 deg"),
            ("sun_elevation: 40 deg", "date: 2026-06-14, time: '06:20', utc_offset: -4 h, latitude: {0} deg, longitude: -82.6 deg"),
            ("sun_elevation: 40 deg", "date: 2026-06-14, time: '06:20', utc_offset: -4 h, latitude: 27.5 deg, longitude: {0} deg"),
            ("secchi: 6 ft, water: coastal green", "chlorophyll: {0} mg/m3, dissolved_440: 0.8 1/m, mineral: 3 g/m3"),
            ("secchi: 6 ft, water: coastal green", "chlorophyll: 5 mg/m3, dissolved_440: {0} 1/m, mineral: 3 g/m3"),
            ("secchi: 6 ft, water: coastal green", "chlorophyll: 5 mg/m3, dissolved_440: 0.8 1/m, mineral: {0} g/m3"),
            ("above_bottom: [1 ft, 4 ft]", "depth: [1 ft, {0} ft]"),
            ("above_bottom: [1 ft, 4 ft]", "above_bottom: [1 ft, {0} ft]"),
            ("spool_diameter: 45 mm", "spool_diameter: {0} mm"),
            ("cast: 20 m", "cast: {0} m"),
            ("handle_turns: 0.5 turns/s", "handle_turns: {0} turns/s"),
            ("line_left: 4 m", "line_left: {0} m"),
            ("- 1/8 oz", "- {0} g")),
            Gen.Double[-2.0, 3.0].Select(exponent => Math.Pow(10.0, exponent)), Gen.Frequency((9, Gen.Const("")), (1, Gen.Const("-")))).HoldsFor((edit, size, sign) =>
        {
            string number = sign + size.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
            Check(TestScenario.With(edit.Item1, edit.Item2.Replace("{0}", number, StringComparison.Ordinal)));
        }, iterations: 1_500);

    private static void Check(string text)
    {
        ScenarioReading reading = ScenarioReader.ReadText(text, "random.yaml");
        if (reading.Scenario is { } scenario)
        {
            Assert.Empty(reading.Problems);
            ScenarioRanges.Assert(scenario);
            return;
        }

        Assert.NotEmpty(reading.Problems);
        int lines = text.Split(["\r\n", "\n", "\r", "\u2028", "\u2029", "\u0085"], StringSplitOptions.None).Length;
        int before = 0;
        foreach (ScenarioProblem problem in reading.Problems)
        {
            Assert.Equal("random.yaml", problem.File);
            Assert.InRange(problem.Line, Math.Max(before, 1), lines + 1);
            Assert.True(problem.Column >= 1);
            Assert.NotEmpty(problem.Key);
            Assert.NotEmpty(problem.Message);
            Assert.NotEmpty(problem.Fix);
            Assert.DoesNotContain(problem.ToString(), char.IsControl);
            before = problem.Line;
        }
    }
}
