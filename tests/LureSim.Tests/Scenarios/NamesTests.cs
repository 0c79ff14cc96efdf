using LureSim.Data;
using LureSim.Light;
using LureSim.Lures;
using LureSim.Scenarios;
using LureSim.Sight;

namespace LureSim.Tests.Scenarios;

/// <summary>What the reader lets through, the model must know.</summary>
public class NamesTests
{
    [Fact]
    public void Every_colour_name_is_a_ready_made_colour() =>
        Assert.All(ColourNames.All, name => Assert.True(LureColours.TryFind(name, out _), name));

    [Fact]
    public void Every_target_fish_has_eyes() =>
        Assert.All(TargetFishNames.All, name => Assert.True(FishEyes.TryFind(name, out _), name));

    [Fact]
    public void Scenarios_and_tables_have_the_same_words()
    {
        foreach (GrammarWord word in (GrammarWord[])[.. ScenarioGrammar.SeasonWord.Words, .. ScenarioGrammar.ForageKindWord.Words, .. ScenarioGrammar.ForageSeenWord.Words, .. ScenarioGrammar.ProfileWord.Words, .. MoveGrammar.Fall.Words])
        {
            string expected = word.Meaning switch
            {
                Model.Season season => ReferenceWords.Of(season),
                Model.ForageKind kind => ReferenceWords.Of(kind),
                Model.ForageSeen seen => ReferenceWords.Of(seen),
                Model.BodyProfile profile => LureKinds.Of(profile).Word,
                Model.FallMode fall => ReferenceWords.Of(fall),
                _ => throw new InvalidOperationException($"No word is known for {word.Meaning}."),
            };
            Assert.Equal(expected, word.Text);
        }
    }

    [Fact]
    public void A_table_with_an_unknown_word_is_refused_with_the_words_it_may_hold()
    {
        Assert.Equal(Model.Season.EarlySpring, ReferenceWords.Parse<Model.Season>("early spring"));
        Assert.Contains("early spring", Assert.Throws<FormatException>(() => ReferenceWords.Parse<Model.Season>("monsoon")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => ReferenceWords.Of((Model.Season)99));
    }
}
