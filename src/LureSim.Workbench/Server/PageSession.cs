using System.Buffers;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json;
using System.Threading.Channels;
using LureSim.Workbench.Bench;
using LureSim.Workbench.Classroom;
using LureSim.Workbench.Pictures;

namespace LureSim.Workbench.Server;

/// <summary>
/// One open page. The page has one wish under way and the newest waits in one place, so that a fast hand builds up no queue; what is drawn while a knob moves is not
/// stopped, what is drawn at rest is stopped by the next wish.
/// </summary>
internal sealed class PageSession : IDisposable
{
    private const int LargestMessage = 64 * 1024;

    // While a hand drags without a stop, the other heads are worked on at least this often, and nothing is gained by giving up what takes no more than a frame or two.
    private static readonly TimeSpan OthersAtLeast = TimeSpan.FromMilliseconds(150);
    private static readonly TimeSpan Light = TimeSpan.FromMilliseconds(30);

    // A hand that has sent nothing for so long after an answer has stopped, for the time being.
    private static readonly TimeSpan Stopped = TimeSpan.FromMilliseconds(40);

    // How long the hand rests before the colors are worked out.
    private static readonly TimeSpan BeforeColors = TimeSpan.FromMilliseconds(250);

    // How long a page has to say goodbye.
    private static readonly TimeSpan Goodbye = TimeSpan.FromMilliseconds(400);

    // No stage of a computation goes on for longer.
    private static readonly TimeSpan LongestStage = TimeSpan.FromSeconds(10);

    private readonly WebSocket socket;
    private readonly WorkbenchOptions options;
    private readonly Keys keys;
    private volatile Water water;
    private readonly CancellationTokenSource ending;
    private readonly SemaphoreSlim sending = new(1, 1);
    private readonly TaskCompletionSource gone = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly WorkBench yours;
    private readonly Channel<PageMessage> looks = Channel.CreateBounded<PageMessage>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true });
    private CancellationTokenSource resting = new();
    private CancellationTokenSource trying = new();
    private readonly OtherHeads others = new(OthersAtLeast, Light);
    private (int? Water, string Retrieve)? knobsSent;
    private readonly Lock switching = new();
    private long lesson;

    /// <summary>Takes a socket.</summary>
    public PageSession(WebSocket socket, WorkbenchOptions options, WorkBench bench, Keys keys, CancellationToken stopping)
    {
        this.socket = socket;
        this.options = options;
        this.keys = keys;
        yours = bench;
        water = new Water(new PicturePart(bench), 0, null);
        ending = CancellationTokenSource.CreateLinkedTokenSource(stopping);
    }

    /// <summary>Runs until the page is closed.</summary>
    public async Task RunAsync()
    {
        Task looking = Task.Run(LookAsync);
        try
        {
            bool known = false;
            while (await ReceiveAsync().ConfigureAwait(false) is { } message)
            {
                if (!known)
                {
                    // The cookie is not enough: every port of this machine shares it. The page knows a key of its own.
                    if (message.Kind != "hello" || !keys.Knows(message.Nonce))
                    {
                        await CloseAsync(WebSocketCloseStatus.PolicyViolation, "This page was not served by this program.").ConfigureAwait(false);
                        return;
                    }

                    known = true;
                    if (message.Version != options.Version) await SendAsync(new ServerMessage("reload", message.Seq) { Note = "LureSim was updated: reload this page." }).ConfigureAwait(false);
                    continue;
                }

                Take(message);
            }
        }
        catch (Exception exception) when (exception is WebSocketException or OperationCanceledException)
        {
            // The page is gone.
        }
        finally
        {
            gone.TrySetResult();
            looks.Writer.TryComplete();
            await ending.CancelAsync().ConfigureAwait(false);
            await resting.CancelAsync().ConfigureAwait(false);
            await trying.CancelAsync().ConfigureAwait(false);
            await looking.ConfigureAwait(false);
            await others.WhenDoneAsync().ConfigureAwait(false);
        }
    }

    /// <summary>Tells the page why it is left, and leaves it.</summary>
    /// <param name="words">Why; at most 120 bytes.</param>
    public async Task LeaveAsync(string words)
    {
        await CloseAsync(WebSocketCloseStatus.NormalClosure, words).ConfigureAwait(false);

        // The page says goodbye too; one that does not is left all the same.
        await Task.WhenAny(gone.Task, Task.Delay(Goodbye)).ConfigureAwait(false);
        try
        {
            await ending.CancelAsync().ConfigureAwait(false);
        }
        catch (ObjectDisposedException)
        {
            // It was gone first.
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        ending.Dispose();
        resting.Dispose();
        trying.Dispose();
        sending.Dispose();
    }

    private void Take(PageMessage message)
    {
        switch (message.Kind)
        {
            case "look":
                Renew(ref resting);
                trying.Cancel();
                others.Overtake();
                looks.Writer.TryWrite(message);
                break;
            case "fine":
                CancellationToken rest = Renew(ref resting);
                _ = Task.Run(() => SafelyAsync(message.Seq, () => FineAsync(message, rest)));
                break;
            case "save":
                _ = Task.Run(() => SafelyAsync(message.Seq, () => SaveAsync(message)));
                break;
            case "tries":
                CancellationToken tries = Renew(ref trying);
                _ = Task.Run(() => SafelyAsync(message.Seq, () => TriesAsync(message, tries)));
                break;
            case "choice":
                CancellationToken choice = Renew(ref trying);
                _ = Task.Run(() => SafelyAsync(message.Seq, () => ChoiceAsync(message, choice)));
                break;
            case "seen":
                CancellationToken learning = Renew(ref trying);
                _ = Task.Run(() => SafelyAsync(message.Seq, () => SeenAsync(message, learning)));
                break;
            case "lessons":
                _ = Task.Run(() => SafelyAsync(message.Seq, () => LessonsAsync(message)));
                break;
            case "lesson":
                Renew(ref resting);
                trying.Cancel();
                others.Overtake();
                lock (switching) lesson = message.Seq;
                _ = Task.Run(() => SafelyAsync(message.Seq, () => LessonAsync(message)));
                break;
            case "stop":
                trying.Cancel();
                break;
            default:
                break;
        }
    }

    private CancellationToken Renew(ref CancellationTokenSource source)
    {
        CancellationTokenSource old = source;
        source = CancellationTokenSource.CreateLinkedTokenSource(ending.Token);
        CancellationToken token = source.Token;
        old.Cancel();
        return token;
    }

    private async Task LookAsync()
    {
        await foreach (PageMessage message in looks.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            await SafelyAsync(message.Seq, async () =>
            {
                Water here = water;
                if (options.Delay > TimeSpan.Zero) await Task.Delay(options.Delay, ending.Token).ConfigureAwait(false);
                BenchQuestion question = here.Pictures.Bench.Ask(BenchSettings.Of(message.State));
                if (await StageAsync(message.Seq, stage => Of(here, here.Pictures.Focus(message.Seq, question, Pin(message), stage)), ending.Token).ConfigureAwait(false) is { } focus)
                    others.Propose(overtaken => OthersAsync(here, focus, question, overtaken));
            }).ConfigureAwait(false);
            if (others.IsDue) others.Begin(stopped: false);
            else if (!await GoesOnAsync().ConfigureAwait(false)) others.Begin(stopped: true);
        }
    }

    private async Task<bool> GoesOnAsync()
    {
        using var patience = new CancellationTokenSource(Stopped);
        try
        {
            return await looks.Reader.WaitToReadAsync(patience.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    private async Task<bool> OthersAsync(Water here, ServerMessage focus, BenchQuestion question, CancellationToken overtaken)
    {
        bool shown = false;
        await SafelyAsync(focus.Seq, async () =>
        {
            using CancellationTokenSource stage = Stage(ending.Token);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(stage.Token, overtaken);
            if (options.BeforeOthers is { } before) await before(either.Token).ConfigureAwait(false);
            ServerMessage rest = here.Pictures.Rest(focus, question, either.Token);
            await SendAsync(rest with { Knobs = null, Kind = "box" }).ConfigureAwait(false);
            shown = true;
        }).ConfigureAwait(false);
        return shown;
    }

    private async Task FineAsync(PageMessage message, CancellationToken cancellation)
    {
        Water here = water;
        BenchQuestion question = here.Pictures.Bench.Ask(BenchSettings.Of(message.State));

        // The quick picture of the other heads is nearer than the fine one.
        others.Begin(stopped: true);
        await others.WhenDoneAsync().WaitAsync(cancellation).ConfigureAwait(false);
        await StageAsync(message.Seq, stage => Of(here, here.Pictures.Fine(message.Seq, question, Pin(message), stage)), cancellation).ConfigureAwait(false);

        // Colors take about as long as all paths together and cannot be stopped half-way: a hand that goes on at once is not made to wait for them.
        await Task.Delay(BeforeColors, cancellation).ConfigureAwait(false);
        await StageAsync(message.Seq, stage => Of(here, new ServerMessage("colors", message.Seq) { Colors = here.Pictures.Colors(question, here.Lesson?.AskedColor, stage) }), cancellation).ConfigureAwait(false);
        await StageAsync(message.Seq, stage => Of(here, new ServerMessage("swim", message.Seq) { Swim = here.Pictures.Swim(question, stage) }), cancellation).ConfigureAwait(false);
    }

    // One stage of the work: given up where it goes on for too long, which the page is told. What it made, or null.
    private async Task<ServerMessage?> StageAsync(long seq, Func<CancellationToken, ServerMessage> work, CancellationToken cancellation)
    {
        using CancellationTokenSource stage = Stage(cancellation);
        ServerMessage? made = null;
        ServerMessage answer;
        try
        {
            made = work(stage.Token);
            answer = WithoutKnownKnobs(made);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            answer = new ServerMessage("error", seq) { Note = "That takes this machine longer than ten seconds and was stopped: what is shown is the quick picture." };
        }

        cancellation.ThrowIfCancellationRequested();
        await SendAsync(answer).ConfigureAwait(false);
        return made;
    }

    private async Task SaveAsync(PageMessage message)
    {
        WorkBench here = water.Pictures.Bench;
        (string words, ShelfFile? file) = options.Shelf.Save(here, here.Ask(BenchSettings.Of(message.State)), message.Overwrite);
        await SendAsync(new ServerMessage("saved", message.Seq) { Note = words, Focus = file?.Id.ToString(System.Globalization.CultureInfo.InvariantCulture) }).ConfigureAwait(false);
    }

    private async Task TriesAsync(PageMessage message, CancellationToken cancellation)
    {
        Water here = water;
        BenchQuestion question = here.Pictures.Bench.Ask(BenchSettings.Of(message.State));
        await TryPicture.RunAsync(here.Pictures, question, view => SendAsync(Of(here, new ServerMessage("tries", message.Seq) { Tries = view })), cancellation).ConfigureAwait(false);
    }

    private async Task ChoiceAsync(PageMessage message, CancellationToken cancellation)
    {
        Water here = water;
        BenchQuestion question = here.Pictures.Bench.Ask(BenchSettings.Of(message.State));
        ChoiceView choice = ChoicePicture.Of(here.Pictures, question, cancellation);
        knobsSent = null;
        await SendAsync(Of(here, new ServerMessage("choice", message.Seq) { Choice = choice })).ConfigureAwait(false);
    }

    private async Task SeenAsync(PageMessage message, CancellationToken cancellation)
    {
        Water here = water;
        SeenView view = SeenPicture.Of(here.Pictures, BenchSettings.Of(message.State), message.Id ?? "", cancellation);
        cancellation.ThrowIfCancellationRequested();
        await SendAsync(Of(here, new ServerMessage("seen", message.Seq) { Seen = view })).ConfigureAwait(false);
    }

    private Task LessonsAsync(PageMessage message) => SendAsync(new ServerMessage("lessons", message.Seq)
    {
        Lessons = [.. options.Lessons.Lessons.Select(lesson => new LessonTitle(lesson.Id, lesson.Title))],
        Note = options.Lessons.Problem.Length > 0 ? options.Lessons.Problem : null,
    });

    // The water of a lesson takes the place of the page's own until the class is over.
    private async Task LessonAsync(PageMessage message)
    {
        Lesson? asked = options.Lessons.Lessons.FirstOrDefault(item => item.Id == message.Id);
        var there = new PicturePart(asked is null ? yours : options.Lessons.Water(asked, yours));
        there.Begin(ending.Token);
        LessonCheck? check = asked is null ? null : options.Lessons.Check(asked, yours, ending.Token);

        Water here;
        lock (switching)
        {
            // A teacher who goes on at once wants the next step, not this one.
            if (lesson != message.Seq) return;
            water = here = new Water(there, water.Number + 1, asked);
        }

        others.Leave();
        await SendAsync(Of(here, new ServerMessage("lesson", message.Seq) { Lesson = check is null ? null : LessonBook.View(check) })).ConfigureAwait(false);
    }

    private async Task SafelyAsync(long seq, Func<Task> work)
    {
        try
        {
            await work().ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is OperationCanceledException or WebSocketException or ObjectDisposedException)
        {
            // Stopped by the next wish, or the page is gone.
        }
        catch (Exception exception) when (exception is not OutOfMemoryException)
        {
            await SendAsync(new ServerMessage("error", seq) { Note = "This could not be computed; the last picture stays." }).ConfigureAwait(false);
        }
    }

    private static ServerMessage Of(Water here, ServerMessage message) => message with { Water = here.Number };

    // The knobs change with the retrieve and the water alone.
    private ServerMessage WithoutKnownKnobs(ServerMessage message)
    {
        if (message.Knobs is null) return message;
        (int? Water, string Retrieve) now = (message.Water, message.State?.GetValueOrDefault(KnobIds.Retrieve) ?? "");
        if (now == knobsSent) return message with { Knobs = null };
        knobsSent = now;
        return message;
    }

    private static BenchSettings? Pin(PageMessage message) => message.Pin is null ? null : BenchSettings.Of(message.Pin);

    private static CancellationTokenSource Stage(CancellationToken cancellation)
    {
        CancellationTokenSource stage = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        stage.CancelAfter(LongestStage);
        return stage;
    }

    private async Task<PageMessage?> ReceiveAsync()
    {
        byte[] buffer = ArrayPool<byte>.Shared.Rent(LargestMessage);
        try
        {
            int count = 0;
            while (true)
            {
                if (count == LargestMessage)
                {
                    await CloseAsync(WebSocketCloseStatus.MessageTooBig, "Too long.").ConfigureAwait(false);
                    return null;
                }

                ValueWebSocketReceiveResult got = await socket.ReceiveAsync(buffer.AsMemory(count, LargestMessage - count), ending.Token).ConfigureAwait(false);
                if (got.MessageType == WebSocketMessageType.Close) return null;
                count += got.Count;
                if (!got.EndOfMessage) continue;
                return Parse(buffer.AsSpan(0, count)) ?? new PageMessage();
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    private static PageMessage? Parse(ReadOnlySpan<byte> text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, MessageJson.Default.PageMessage);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private async Task SendAsync(ServerMessage message)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(MessageJson.Write(message));
        await sending.WaitAsync(ending.Token).ConfigureAwait(false);
        try
        {
            if (socket.State == WebSocketState.Open) await socket.SendAsync(bytes, WebSocketMessageType.Text, endOfMessage: true, ending.Token).ConfigureAwait(false);
        }
        finally
        {
            sending.Release();
        }
    }

    private async Task CloseAsync(WebSocketCloseStatus status, string words)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMilliseconds(500));
        try
        {
            if (socket.State is WebSocketState.Open or WebSocketState.CloseReceived) await socket.CloseOutputAsync(status, words, patience.Token).ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is WebSocketException or OperationCanceledException or ObjectDisposedException)
        {
            // It is gone already.
        }
    }

    /// <summary>The water that the page shows: its own, or a lesson's.</summary>
    /// <param name="Pictures">Its pictures.</param>
    /// <param name="Number">How often the water was changed before; a picture of an earlier one is not drawn.</param>
    /// <param name="Lesson">The lesson that is open in it; null for none.</param>
    private sealed record Water(PicturePart Pictures, int Number, Lesson? Lesson);
}
