using Microsoft.Playwright;

namespace LureSim.Browser.Tests;

/// <summary>The live page whatever comes first: answers that are late, a class that is left while an answer is on its way, frames that began before the picture they draw.</summary>
[Collection("browser")]
public class OrderTests(BrowserFixture fixture)
{
    private static readonly string Creek = LivePageTests.Scenario("creek");

    private static readonly PageWaitForFunctionOptions Patient = new() { Timeout = 90_000 };

    // The clock of a frame stands where the frame began, which may be before the lure was shown.
    [BrowserFact]
    public async Task A_lure_that_is_shown_within_a_frame_swims()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await Opened.Of(fixture, live, 1280, 900, ColorScheme.Light);
        IPage p = page.Page;
        await p.WaitForFunctionAsync("() => document.querySelector('#swim-above .lure')", null, Patient);
        await p.EvaluateAsync("""
            async () => {
              const native = window.requestAnimationFrame.bind(window), press = document.getElementById("swim-pause");
              // A frame that is late: its clock is behind.
              window.requestAnimationFrame = work => native(now => work(now - 40));
              for (let i = 0; i < 6; i++) { press.click(); await new Promise(done => setTimeout(done, 150)); }
              window.requestAnimationFrame = native;
              if (press.getAttribute("aria-pressed") === "true") press.click();
            }
            """);
        string before = await p.InnerHTMLAsync("#swim-above");
        await p.WaitForFunctionAsync("before => document.querySelector('#swim-above').innerHTML !== before", before, Patient);
        page.Silent();
    }
    // Answers come late by up to half a second, and the class presses whatever it likes: nothing throws, and in the end the page stands as before the class.
    [BrowserTheory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public async Task A_class_in_any_order_ends_where_it_began(int seed)
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await Opened.Of(fixture, live, 1280, 900, ColorScheme.Light);
        IPage p = page.Page;
        await p.AddInitScriptAsync("""
            window.late = 0;
            window.WebSocket = class extends WebSocket {
              addEventListener(kind, hear, ...more) {
                if (kind !== "message") { super.addEventListener(kind, hear, ...more); return; }
                let last = Promise.resolve();
                super.addEventListener(kind, event => { const wait = Math.random() * window.late; last = last.then(() => new Promise(done => setTimeout(done, wait))).then(() => hear(event)); });
              }
            };
            """);
        await p.EvaluateAsync("() => { location.hash = 'cur=' + encodeURIComponent('0.6 kn'); }");
        await p.ReloadAsync();
        string before = await LivePageTests.FineSentence(p);
        string state = await p.EvaluateAsync<string>("() => JSON.stringify(luresim.state)");

        // All waters are there: what follows is about the order of messages.
        await p.EvaluateAsync("() => { addEventListener('error', event => (window.thrown ??= []).push(event.message)); addEventListener('unhandledrejection', event => (window.thrown ??= []).push(String(event.reason && event.reason.stack || event.reason))); }");
        await p.EvaluateAsync("""
            async seed => {
              const random = () => { seed = (seed * 1103515245 + 12345) % 2147483648; return seed / 2147483648; };
              window.late = 400;
              const press = key => dispatch(document.activeElement ?? document.body, key);
              const dispatch = (at, key) => at.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
              const slide = () => { const all = [...document.querySelectorAll("input[type=range]")], input = all[Math.floor(random() * all.length)]; input.value = String(Math.floor(random() * (Number(input.max) + 1))); input.dispatchEvent(new Event("input", { bubbles: true })); input.dispatchEvent(new Event("change", { bubbles: true })); };
              const click = all => { if (all.length) all[Math.floor(random() * all.length)].click(); };
              const todo = [
                () => press("c"), () => press("Escape"), () => press(" "), () => press("r"), () => press("g"), () => press("b"), () => press("ArrowRight"), () => press("ArrowLeft"),
                () => press(String(1 + Math.floor(random() * 6))), () => press(String(1 + Math.floor(random() * 6))), () => { if (document.body.classList.contains("class")) slide(); },
                () => click([...document.querySelectorAll("#class-room button")]), () => click([...document.querySelectorAll("#swim-pause")]),
              ];
              press("c");
              for (let i = 0; i < 160; i++) {
                todo[Math.floor(random() * todo.length)]();
                await new Promise(done => setTimeout(done, random() < 0.15 ? 600 : random() * 60));
              }
              window.late = 0;
              if (document.body.classList.contains("class")) press("Escape");
              if (document.body.classList.contains("blank")) press("b");
            }
            """, seed);
        await p.WaitForTimeoutAsync(1000);
        await LivePageTests.FineSentence(p);
        Assert.Equal("null", await p.EvaluateAsync<string>("() => JSON.stringify(window.thrown ?? null)"));
        Assert.Equal(state, await p.EvaluateAsync<string>("() => JSON.stringify(luresim.state)"));
        Assert.Equal(before, await LivePageTests.FineSentence(p));
        Assert.Equal("#cur=0.6%20kn", await p.EvaluateAsync<string>("() => location.hash"));
        await p.WaitForFunctionAsync("() => document.body.className === ''", null, Patient);
        Assert.Equal(3, await p.Locator("#rows li").CountAsync());
        page.Silent();
    }
}
