using System.Text;

namespace LureSim.Scenarios.Interview;

/// <summary>The answers of one interview, from whatever face. Not thread-safe.</summary>
/// <param name="today">The day, for the season that is assumed.</param>
internal sealed class AnswerSheet(DateOnly today)
{
    private readonly Dictionary<string, Given> answers = new(StringComparer.Ordinal);

    /// <summary>The day.</summary>
    public DateOnly Today => today;

    /// <summary>Number of answers.</summary>
    public int Count => answers.Count;

    /// <summary>The answer to a part: given, or assumed.</summary>
    public Given this[string id] => answers.TryGetValue(id, out Given? given) ? given : Assume(Questions.Part(id), GivenSource.Assumed);

    /// <summary>The word of an answer that is a word.</summary>
    public string Word(string id) => this[id].First.Shown;

    /// <summary>The number of an answer (SI), NaN for none.</summary>
    public double Number(string id) => this[id].First.Number;

    /// <summary>True if the part has an answer of its own.</summary>
    public bool Has(string id) => answers.ContainsKey(id);

    /// <summary>Takes an answer; an empty one is the default.</summary>
    /// <param name="part">The part.</param>
    /// <param name="text">What was typed.</param>
    /// <returns>What is wrong with it; null if it was taken.</returns>
    public string? Answer(Part part, string text)
    {
        if (text.Trim().Length == 0 || AnswerReader.IsUnsure(text))
        {
            answers[part.Id] = Assume(part, text.Trim().Length == 0 ? GivenSource.Assumed : GivenSource.NotSure);
            return null;
        }

        AnswerOutcome outcome = AnswerReader.Read(part, Others(part), text);
        foreach ((Part told, IReadOnlyList<Piece> pieces) in outcome.Pieces)
            answers[told.Id] = new Given(pieces, GivenSource.Said, text.Trim());
        return outcome.Problem;
    }

    /// <summary>Forgets the answers to a question.</summary>
    public void Forget(Question question)
    {
        foreach (Part part in question.Parts)
            answers.Remove(part.Id);
    }

    /// <summary>The answers as a file that can be read again.</summary>
    public string ToYaml()
    {
        var text = new StringBuilder("# Answers for luresim new. Run it again in this folder to go on, or: luresim new --answers FILE\n");
        foreach (Part part in Questions.Parts.Where(part => answers.ContainsKey(part.Id)))
        {
            Given given = answers[part.Id];
            text.Append(part.Id).Append(": ").Append(ScenarioDraft.Quoted(given.Source == GivenSource.NotSure ? "not sure" : given.Shown)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Takes the answers of a file; what is wrong with it becomes problems, and the rest is taken.</summary>
    /// <param name="text">YAML of ids and answers.</param>
    /// <param name="file">Name for problems.</param>
    public IReadOnlyList<ScenarioProblem> Read(string text, string file)
    {
        var problems = new ProblemList(file);
        if (YamlTreeBuilder.Read(text, problems) is not { } tree)
            return problems.Sorted();
        if (tree is not YamlMap map)
        {
            problems.Add(tree.Line, tree.Column, ScenarioProblem.WholeFile, "", "answers are expected here", "an id and an answer a line", "write for example \"depth: 6 ft\"");
            return problems.Sorted();
        }

        string[] ids = [.. Questions.Parts.Select(part => part.Id)];
        foreach ((YamlText key, YamlNode value) in map.Entries)
        {
            string? answer = value switch
            {
                YamlText one => one.Value,
                YamlList list when list.Items.All(item => item is YamlText) => string.Join(", ", list.Items.Select(item => ((YamlText)item).Value)),
                _ => null,
            };
            if (!ids.Contains(key.Value))
            {
                string? nearest = GrammarReader.Nearest(key.Value, ids);
                problems.Add(key.Line, key.Column, key.Value, "", "there is no question of this id", string.Join(", ", ids), nearest is null ? "remove it, or write one of the ids" : $"write \"{nearest}\"");
            }
            else if (answer is null)
            {
                problems.Add(value.Line, value.Column, key.Value, "", "an answer in words is expected here", Questions.Part(key.Value).Form.Allowed, "write the answer on the same line");
            }
            else if (Answer(Questions.Part(key.Value), answer) is { } problem)
            {
                problems.Add(value.Line, value.Column, key.Value, answer, problem, Questions.Part(key.Value).Form.Allowed, $"write for example \"{Questions.Part(key.Value).DefaultFor(this)}\"");
            }
        }

        return problems.Sorted();
    }

    // Parts that come later in the same question, and those that belong to it.
    private static IReadOnlyList<Part> Others(Part part)
    {
        Question question = Questions.Of(part);
        return [.. question.Parts.SkipWhile(other => other != part).Skip(1), .. part.Also.Select(Questions.Part)];
    }

    private Given Assume(Part part, GivenSource source)
    {
        AnswerOutcome outcome = AnswerReader.Read(part, [], part.DefaultFor(this));
        return new Given(outcome.Pieces[part], source, "");
    }
}
