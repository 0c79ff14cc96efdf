using System.Net.WebSockets;
using System.Text.Json;
using LureSim.Workbench.Server;

namespace LureSim.Workbench.Tests;

/// <summary>The head that is looked at goes first: the order of the work while a knob moves. Told by order and number, not by time.</summary>
public class OtherHeadsTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task Work_that_is_overtaken_is_given_up()
    {
        OtherHeads others = new(TimeSpan.MaxValue, TimeSpan.Zero);
        Piece first = new(), second = new();
        others.Propose(first.RunAsync);
        others.Begin(stopped: false);
        await first.Begun.Task.WaitAsync(Patience);
        others.Overtake();
        await others.WhenDoneAsync().WaitAsync(Patience);
        others.Propose(second.RunAsync);
        others.Begin(stopped: false);
        second.Go.SetResult();
        await others.WhenDoneAsync().WaitAsync(Patience);
        Assert.Equal((2, 1, 1), others.Count);
    }

    [Fact]
    public async Task Work_that_is_due_is_finished_and_the_newest_follows()
    {
        OtherHeads others = new(TimeSpan.Zero, TimeSpan.Zero);
        Piece first = new(), second = new(), third = new();
        others.Propose(first.RunAsync);
        others.Begin(stopped: false);
        await first.Begun.Task.WaitAsync(Patience);
        foreach (Piece newer in (Piece[])[second, third])
        {
            others.Overtake();
            others.Propose(newer.RunAsync);
            others.Begin(stopped: false);
        }

        Assert.Equal((1, 0, 0), others.Count);
        first.Go.SetResult();
        await third.Begun.Task.WaitAsync(Patience);
        third.Go.SetResult();
        await others.WhenDoneAsync().WaitAsync(Patience);
        Assert.Equal((2, 0, 2), others.Count);
        Assert.False(second.Begun.Task.IsCompleted);
    }

    [Fact]
    public async Task A_hand_that_has_stopped_gets_the_newest_at_once()
    {
        OtherHeads others = new(TimeSpan.Zero, TimeSpan.Zero);
        Piece first = new(), second = new();
        others.Propose(first.RunAsync);
        others.Begin(stopped: false);
        await first.Begun.Task.WaitAsync(Patience);
        others.Propose(second.RunAsync);
        others.Begin(stopped: true);
        await second.Begun.Task.WaitAsync(Patience);
        second.Go.SetResult();
        await others.WhenDoneAsync().WaitAsync(Patience);
        Assert.Equal((2, 1, 1), others.Count);
    }

    [Fact]
    public async Task What_lies_ready_is_overtaken_too_and_begun_once()
    {
        OtherHeads others = new(TimeSpan.MaxValue, TimeSpan.Zero);
        others.Propose(new Piece().RunAsync);
        others.Overtake();
        others.Begin(stopped: true);
        Piece last = new();
        others.Propose(last.RunAsync);
        last.Go.SetResult();
        others.Begin(stopped: false);
        others.Begin(stopped: true);
        await others.WhenDoneAsync().WaitAsync(Patience);
        Assert.Equal((1, 0, 1), others.Count);
    }

    [Fact]
    public async Task Whatever_the_hand_does_there_is_one_at_a_time_and_the_last_is_done()
    {
        OtherHeads others = new(TimeSpan.FromMilliseconds(5), TimeSpan.FromMilliseconds(2));
        int now = 0, most = 0, newest = -1;
        for (int i = 0; i < 300; i++)
        {
            int number = i;
            others.Overtake();
            others.Propose(async token =>
            {
                most = Math.Max(most, Interlocked.Increment(ref now));
                try
                {
                    await Task.Delay(3, token);
                    newest = number;
                    return true;
                }
                finally
                {
                    Interlocked.Decrement(ref now);
                }
            });
            if (i % 3 == 0) others.Begin(stopped: i % 2 == 0);
            if (i % 7 == 0) await Task.Delay(1);
        }

        others.Begin(stopped: true);
        await others.WhenDoneAsync().WaitAsync(Patience);
        Assert.Equal(1, most);
        Assert.Equal(299, newest);
        Assert.Equal(others.Count.Begun, others.Count.GivenUp + others.Count.Finished);
    }

    // Work on the others that never ends does not keep the head that is looked at from its answer.
    [Fact]
    public async Task The_head_that_is_looked_at_does_not_wait_for_the_others()
    {
        TaskCompletionSource gate = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await using LivePage page = await LivePage.StartAsync(change: options => options with { BeforeOthers = cancellation => gate.Task.WaitAsync(cancellation) });
        using ClientWebSocket socket = await page.HelloAsync();
        string[] currents = ["0.5 kn", "0.6 kn", "0.7 kn", "0.8 kn", "0.9 kn", "1 kn"];
        for (int i = 0; i < currents.Length; i++)
        {
            await LivePage.SendAsync(socket, JsonSerializer.Serialize(new { kind = "look", seq = i + 1, state = new Dictionary<string, string> { ["cur"] = currents[i] } }));
            JsonElement answer = (await LivePage.ReceiveAsync(socket))!.Value;
            Assert.Equal("look", answer.GetProperty("kind").GetString());
            Assert.Equal(i + 1, answer.GetProperty("seq").GetInt32());
            Assert.Single(answer.GetProperty("lines").EnumerateArray());
        }

        gate.SetResult();
        JsonElement? box;
        int before = 0;
        do
        {
            box = await LivePage.ReceiveAsync(socket);
            Assert.Equal("box", box!.Value.GetProperty("kind").GetString());
            Assert.True(box.Value.GetProperty("seq").GetInt32() > before, "The others go on, never back.");
            before = box.Value.GetProperty("seq").GetInt32();
        }
        while (before < currents.Length);
        Assert.Equal(3, box.Value.GetProperty("lines").GetArrayLength());
        Assert.Equal("1 kn", box.Value.GetProperty("state").GetProperty("cur").GetString());
    }

    // A lesson in the same water has the same heads at the same counts: a late answer about the others of before could not be told from its own.
    [Theory]
    [InlineData("red-at-ten-feet")]
    [InlineData("off-the-grass")]
    [InlineData(null)]
    public async Task A_lesson_gives_up_what_was_begun_before_it(string? lesson)
    {
        TaskCompletionSource gate = new(TaskCreationOptions.RunContinuationsAsynchronously), begun = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await using LivePage page = await LivePage.StartAsync(change: options => options with
        {
            BeforeOthers = cancellation =>
            {
                begun.TrySetResult();
                return gate.Task.WaitAsync(cancellation);
            },
        });
        using ClientWebSocket socket = await page.HelloAsync();
        await LivePage.SendAsync(socket, "{\"kind\":\"look\",\"seq\":1,\"state\":{\"cur\":\"0.5 kn\"}}");
        Assert.Equal(0, (await LivePage.ReceiveAsync(socket, "look"))!.Value.GetProperty("water").GetInt32());
        await begun.Task.WaitAsync(Patience);
        await LivePage.SendAsync(socket, JsonSerializer.Serialize(new { kind = "lesson", seq = 2, id = lesson }));
        JsonElement opened = (await LivePage.ReceiveAsync(socket))!.Value;
        Assert.Equal("lesson", opened.GetProperty("kind").GetString());
        Assert.Equal(1, opened.GetProperty("water").GetInt32());
        gate.SetResult();
        await LivePage.SendAsync(socket, "{\"kind\":\"look\",\"seq\":3,\"state\":{\"cur\":\"0.9 kn\"}}");
        List<string> told = [];
        JsonElement answer;
        do
        {
            answer = (await LivePage.ReceiveAsync(socket))!.Value;
            told.Add($"{answer.GetProperty("kind").GetString()} {answer.GetProperty("seq").GetInt32()} of water {answer.GetProperty("water").GetInt32()}");
            if (told.Count == 1) Assert.True(answer.TryGetProperty("knobs", out _), "Other water has knobs of its own.");
        }
        while (answer.GetProperty("kind").GetString() != "box");
        Assert.Equal(["look 3 of water 1", "box 3 of water 1"], told);
    }

    // Long work of the same page does not keep it either.
    [Fact]
    public async Task A_turned_knob_is_answered_before_the_tries_end()
    {
        await using LivePage page = await LivePage.StartAsync();
        using ClientWebSocket socket = await page.HelloAsync();
        await LivePage.SendAsync(socket, """{"kind":"tries","seq":1,"state":{}}""");
        await LivePage.SendAsync(socket, """{"kind":"look","seq":2,"state":{"cur":"0.9 kn"}}""");
        while (true)
        {
            JsonElement answer = (await LivePage.ReceiveAsync(socket))!.Value;
            if (answer.GetProperty("kind").GetString() == "look") break;
            Assert.False(answer.TryGetProperty("tries", out JsonElement tries) && tries.GetProperty("ended").GetBoolean(), "The tries ended first.");
        }
    }

    private sealed class Piece
    {
        public TaskCompletionSource Begun { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public TaskCompletionSource Go { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public async Task<bool> RunAsync(CancellationToken cancellation)
        {
            Begun.TrySetResult();
            await Go.Task.WaitAsync(cancellation);
            return true;
        }
    }
}
