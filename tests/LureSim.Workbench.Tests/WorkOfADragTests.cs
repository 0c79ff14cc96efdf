using System.Net.WebSockets;
using System.Text.Json;
using LureSim.Workbench.Bench;
using LureSim.Workbench.Pictures;

namespace LureSim.Workbench.Tests;

/// <summary>How much work a moved knob is, counted and not timed: runs, evaluations of the engine, messages. The same on every machine and whatever else it does.</summary>
public class WorkOfADragTests
{
    // A picture of the head that is looked at is one run, a picture of the box one of each other head, and what was made is not made again.
    [Fact]
    public void A_picture_makes_each_run_once_and_none_that_it_does_not_need()
    {
        WorkBench bench = BenchTests.Read("grass-flat.yaml");
        var pictures = new PicturePart(bench);
        pictures.Begin(CancellationToken.None);
        BenchSettings there = BenchSettings.None.With(KnobIds.Current, "0.9 kn");
        BenchQuestion question = bench.Ask(there);
        int heads = question.Lures.Count;
        Assert.True(heads > 2);
        Assert.Equal(1, Runs(() => Focus(question)));
        Assert.Equal(0, Runs(() => Focus(question)));
        Assert.Equal(heads - 1, Runs(() => pictures.Rest(Focus(question), question, CancellationToken.None)));

        // Clarity and sun move no lure; another head is there already.
        Assert.Equal(0, Runs(() => Focus(bench.Ask(there.With(KnobIds.Clarity, "2 ft")))));
        Assert.Equal(0, Runs(() => Focus(bench.Ask(there.With(KnobIds.Head, question.Lures[^1].Name)))));
        Assert.Equal(heads, Runs(() => pictures.Fine(1, question, null, CancellationToken.None)));

        // Once the fine picture is there, nothing is made for a quick one, its colors or the same settings again.
        Assert.Equal(0, Runs(() =>
        {
            Focus(question);
            pictures.Colors(question, null, CancellationToken.None);
            pictures.Fine(2, question, null, CancellationToken.None);
        }));

        int Runs(Action work)
        {
            int before = pictures.Made.Runs;
            work();
            return pictures.Made.Runs - before;
        }

        ServerMessage Focus(BenchQuestion asked) => pictures.Focus(1, asked, null, CancellationToken.None);
    }

    // Evaluations of the engine for one picture while a knob moves, over the whole reach of the current; the bound is about twice what was counted.
    [Theory]
    [InlineData("bridge-channel.yaml", "counted down, steady", 1600)]
    [InlineData("bridge-channel.yaml", "lift and drop", 20_000)]
    [InlineData("grass-flat.yaml", "steady and slow", 3000)]
    public void A_picture_while_a_knob_moves_is_little_work(string scenario, string retrieve, int most)
    {
        WorkBench bench = BenchTests.Read(scenario);
        var pictures = new PicturePart(bench);
        pictures.Begin(CancellationToken.None);
        BenchSettings way = BenchSettings.None.With(KnobIds.Retrieve, retrieve);
        IReadOnlyList<KnobStop> stops = bench.Ask(way).Knobs.First(knob => knob.Id == KnobIds.Current).Stops;
        (int Runs, long Evaluations) before = pictures.Made;
        int looks = 0;
        for (int i = 1; i < stops.Count; i += Math.Max(1, stops.Count / 8), looks++) pictures.Focus(1, bench.Ask(way.With(KnobIds.Current, stops[i].Value)), null, CancellationToken.None);
        (int Runs, long Evaluations) after = pictures.Made;
        Assert.True(after.Runs - before.Runs <= looks);
        double each = (after.Evaluations - before.Evaluations) / (double)looks;
        Assert.True(each <= most, $"{each:0} evaluations a picture, {most} at the most.");
    }

    // A change is answered by one picture of the head that is looked at and one of the box at the most; a hand at rest by one each of the fine picture, colors and swimming.
    [Fact]
    public async Task A_change_has_a_few_messages_and_no_more()
    {
        await using LivePage page = await LivePage.StartAsync();
        using ClientWebSocket socket = await page.HelloAsync();
        Dictionary<string, int> told = [];
        const int Changes = 12;
        for (int seq = 1; seq <= Changes; seq++)
        {
            await LivePage.SendAsync(socket, JsonSerializer.Serialize(new { kind = "look", seq, state = new Dictionary<string, string> { ["cur"] = $"0.{seq % 9} kn" } }));
            while (await NextAsync() != $"look {seq}") { }
        }

        await LivePage.SendAsync(socket, JsonSerializer.Serialize(new { kind = "fine", seq = Changes + 1, state = new Dictionary<string, string> { ["cur"] = "0.3 kn" } }));
        while (await NextAsync() != $"swim {Changes + 1}") { }
        Assert.Equal(Changes, told["look"]);
        Assert.InRange(told.GetValueOrDefault("box"), 1, Changes);
        Assert.Equal((1, 1, 1), (told["fine"], told["colors"], told["swim"]));
        Assert.Equal(["box", "colors", "fine", "look", "swim"], told.Keys.Order(StringComparer.Ordinal));

        async Task<string> NextAsync()
        {
            JsonElement answer = (await LivePage.ReceiveAsync(socket))!.Value;
            string kind = answer.GetProperty("kind").GetString()!;
            told[kind] = told.GetValueOrDefault(kind) + 1;
            return $"{kind} {answer.GetProperty("seq").GetInt32()}";
        }
    }
}
