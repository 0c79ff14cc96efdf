using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Report;

/// <summary>Every kind of move has words.</summary>
public class RetrieveWordsTests
{
    private static Presentation Read(string presentation)
    {
        string text = TestScenario.Text[..TestScenario.Text.IndexOf("presentations:", StringComparison.Ordinal)];
        return TestScenario.Read(text + "presentations:\n  - name: test\n    cast: 20 m\n    count_down: 2 s\n" + presentation).Presentations[0];
    }

    [Theory]
    [InlineData("    style: steady\n", "Reel steadily: one turn of the handle every 2 seconds (0.45 m/s).")]
    [InlineData("    style: swing\n", "Let the current swing it around on a tight line until it hangs straight downcurrent, no reeling.")]
    [InlineData("    style: slow lift\n", "Lift the rod tip 1 m over 3 seconds while you reel (¾ turn), lower it over 1½ seconds while you reel (¾ turn), rest 1 second, repeat.")]
    [InlineData(
        "    style: \"twitch, twitch, pause\"\n",
        "Reel for 1 second at one turn of the handle every 1½ seconds (0.6 m/s), two 25 cm twitches, rest 1½ seconds, repeat.")]
    [InlineData(
        "    moves:\n      - sweep: {to: left, distance: 1 m, time: 2 s}\n      - return: {time: 1 s, reel: 1 m/s}\n      - feed: {speed: 0.3 m/s, for: 2 s}\n      - twitch: {height: 0.2 m, to: right}\n    time_limit: 60 s\n",
        "Sweep the rod tip 1 m to your left over 2 seconds, bring the rod tip back while you reel (1¼ turns), let out line for 2 seconds, one 20 cm twitch to your right, repeat. Stop after 60 seconds.")]
    [InlineData(
        "    moves:\n      - swing: 40 s\n      - reel: {speed: 0.5 m/s}\n    drift: {speed: 0.2 m/s, direction: away}\n",
        "Let the current swing it around on a tight line until it hangs straight downcurrent, no reeling, reel steadily: one turn of the handle every 2 seconds (0.5 m/s). Meanwhile the rod drifts at 0.2 m/s.")]
    public void Moves_are_put_in_plain_words(string presentation, string words) =>
        Assert.Equal(words, RetrieveWords.Retrieve(Read(presentation), TestScenario.Read(TestScenario.Text).Tackle.Reel, new UnitFormat(UnitSystem.Metric)).Replace('\u00a0', ' '));

    [Theory]
    [InlineData("", "Cast 20 m")]
    [InlineData("    aim: 30 deg\n", "Cast 20 m, 30° left of straight out")]
    [InlineData("    aim: right\n", "Cast 20 m, 90° right of straight out")]
    [InlineData("    aim: towards\n", "Cast 20 m, straight back")]
    public void The_aim_is_said(string aim, string words) =>
        Assert.Equal(words, RetrieveWords.Cast(Read("    style: steady\n" + aim), new UnitFormat(UnitSystem.Metric)).Replace('\u00a0', ' '));

    // Where the water goes, from the cast to the left.
    [Theory]
    [InlineData(90, "straight across the current")]
    [InlineData(-82, "straight across the current")]
    [InlineData(70, "across, a little downcurrent")]
    [InlineData(-110, "across, a little upcurrent")]
    [InlineData(45, "across and downcurrent")]
    [InlineData(130, "across and upcurrent")]
    [InlineData(10, "downcurrent")]
    [InlineData(180, "upcurrent")]
    public void A_cast_is_told_as_the_current_meets_it(double degrees, string words) => Assert.Equal(words, RetrieveWords.AcrossOrAlong(degrees * Math.PI / 180));
}
