using System.Text;

namespace LureSim.Scenarios.Interview;

/// <summary>A scenario made of answers.</summary>
/// <param name="FileName">The name of its file, from the name of the spot.</param>
/// <param name="Text">The scenario, with remarks.</param>
/// <param name="Reading">What the reader says of it.</param>
/// <param name="Answered">Each part that was said, with the answer as understood.</param>
/// <param name="Assumed">Each part that was assumed, with what was taken.</param>
internal sealed record InterviewResult(string FileName, string Text, ScenarioReading Reading, IReadOnlyList<(Part Part, Given Given)> Answered, IReadOnlyList<(Part Part, Given Given)> Assumed)
{
    private const int LongestName = 40;

    /// <summary>Writes the scenario of a sheet of answers and checks it.</summary>
    /// <param name="sheet">The answers; what is not answered is assumed.</param>
    /// <param name="file">Name of the file; null for one made of the spot's name.</param>
    public static InterviewResult Of(AnswerSheet sheet, string? file = null)
    {
        string name = file ?? FileOf(sheet.Word("name"));
        var draft = new ScenarioDraft(sheet);
        var answered = new List<(Part, Given)>();
        var assumed = new List<(Part, Given)>();
        foreach (Part part in Questions.Parts.Where(part => part.IsAsked(sheet)))
        {
            Given given = sheet[part.Id];
            part.Write(draft, given);
            if (given.Source == GivenSource.NotSure)
                part.WhenUnsure?.Invoke(draft);
            (given.Source == GivenSource.Said ? answered : assumed).Add((part, given));
        }

        string text = draft.ToYaml(Path.GetFileName(name));
        return new(name, text, ScenarioReader.ReadText(text, name), answered, assumed);
    }

    /// <summary>A file name of the letters and digits of a spot's name.</summary>
    public static string FileOf(string spot)
    {
        var name = new StringBuilder();
        foreach (char character in spot.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(character))
                name.Append(character);
            else if (name.Length > 0 && name[^1] != '-' && character != '\'')
                name.Append('-');
            if (name.Length == LongestName)
                break;
        }

        string slug = name.ToString().Trim('-');
        return (slug.Length > 0 ? slug : "my-spot") + ".yaml";
    }
}
