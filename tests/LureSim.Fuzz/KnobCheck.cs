using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Bench;

namespace LureSim.Fuzz;

/// <summary>
/// What must hold of the live page for every scenario that the reader takes: it opens, every knob answers at both its ends, what is wrong with a setting is said, and the file that
/// it saves is read again, or refused, as the page said. The work of a cast is not done.
/// </summary>
internal static class KnobCheck
{
    /// <summary>Turns the knobs of a scenario and says what is wrong; nothing where all is well.</summary>
    /// <param name="text">A text that the reader takes.</param>
    /// <param name="units">Units of the page.</param>
    /// <param name="draws">Which knobs are turned together before the file is saved.</param>
    public static IReadOnlyList<string> Complaints(string text, UnitSystem units, Draws draws)
    {
        string at = "opened";
        try
        {
            List<string> wrong = [];
            var bench = new WorkBench(text, "fuzz.yaml", ScenarioReader.ReadText(text, "fuzz.yaml").Scenario!, units);
            IReadOnlyList<Knob> knobs = Asked(BenchSettings.None).Knobs;
            foreach (Knob knob in knobs)
            {
                foreach (KnobStop stop in (KnobStop[])[knob.Stops[0], knob.Stops[^1]])
                {
                    at = $"{knob.Id} at {stop.Value}";
                    if (stop.Label.Length == 0)
                        wrong.Add($"{at} has no label");
                    Asked(BenchSettings.None.With(knob.Id, stop.Value));
                }
            }

            BenchSettings turned = knobs.Where(_ => draws.Chance(0.3)).Aggregate(BenchSettings.None, (settings, knob) => settings.With(knob.Id, knob.Stops[draws.Below(knob.Stops.Count)].Value));
            at = $"saved with {turned}";
            BenchQuestion question = Asked(turned);
            ScenarioReading again = ScenarioReader.ReadText(bench.FileOf(question, "saved"), "fuzz.yaml");
            if (again.IsValid != (question.Problems.Count == 0))
                wrong.Add($"{at}: the page has {question.Problems.Count} problems, its file {again.Problems.Count}: {again.Problems.Concat(question.Problems).First().ToString().ReplaceLineEndings(" ")}");
            return wrong;

            BenchQuestion Asked(BenchSettings settings)
            {
                BenchQuestion asked = bench.Ask(settings);
                wrong.AddRange(asked.Problems.Where(problem => problem.Message.Length == 0).Select(_ => $"{at}: a problem without words"));
                return asked;
            }
        }
        catch (Exception exception)
        {
            return [$"{at}: exception {exception.GetType().Name}: {exception.Message.ReplaceLineEndings(" ")} {exception.StackTrace?.Split('\n').FirstOrDefault()?.Trim()}"];
        }
    }
}
