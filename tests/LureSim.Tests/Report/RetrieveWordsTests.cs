using LureSim.Model;
using LureSim.Report.Sheets;
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
    [InlineData("    style: steady\n", "Reel steadily at 0.45 m/s (about one turn of the handle every 1.9 s).")]
    [InlineData("    style: swing\n", "Let the current sweep it round on a tight line until it hangs below the rod, 90 s at the longest, without reeling.")]
    [InlineData("    style: slow lift\n", "Lift the rod tip 1 m in 3 s while you reel at 0.2 m/s (about one turn of the handle every 4.4 s), lower it again in 1.5 s while you reel at 0.5 m/s, wait 1 s, and again.")]
    [InlineData(
        "    style: \"twitch, twitch, pause\"\n",
        "Reel for 1.2 s at 0.6 m/s (about one turn of the handle every 1.5 s), twitch the rod tip twice, 0.25 m each, wait 1.5 s, and again.")]
    [InlineData(
        "    moves:\n      - sweep: {to: left, distance: 1 m, time: 2 s}\n      - return: {time: 1 s, reel: 1 m/s}\n      - feed: {speed: 0.3 m/s, for: 2 s}\n      - twitch: {height: 0.2 m, to: right}\n    time_limit: 60 s\n",
        "Sweep the rod tip 1 m to your left in 2 s, bring the rod tip back in 1 s while you reel at 1 m/s (about 1.1 turns of the handle a second), let out line for 2 s at 0.3 m/s, twitch the rod tip once to your right, 0.2 m, and again. Stop after 60 s.")]
    [InlineData(
        "    moves:\n      - swing: 40 s\n      - reel: {speed: 0.5 m/s}\n    drift: {speed: 0.2 m/s, direction: away}\n",
        "Let the current sweep it round on a tight line until it hangs below the rod, 40 s at the longest, without reeling, reel steadily at 0.5 m/s (about one turn of the handle every 1.8 s). The rod drifts at 0.2 m/s meanwhile.")]
    public void Moves_are_put_in_plain_words(string presentation, string words) =>
        Assert.Equal(words, RetrieveWords.Retrieve(Read(presentation), TestScenario.Read(TestScenario.Text).Tackle.Reel, new UnitFormat(UnitSystem.Metric)).Replace('\u00a0', ' '));

    [Theory]
    [InlineData("", "Cast 20 m")]
    [InlineData("    aim: 30 deg\n", "Cast 20 m, 30° to the left of the reference direction")]
    [InlineData("    aim: right\n", "Cast 20 m, 90° to the right of the reference direction")]
    [InlineData("    aim: towards\n", "Cast 20 m, opposite to the reference direction")]
    public void The_aim_is_said(string aim, string words) =>
        Assert.Equal(words, RetrieveWords.Cast(Read("    style: steady\n" + aim), new UnitFormat(UnitSystem.Metric)).Replace('\u00a0', ' '));
}
