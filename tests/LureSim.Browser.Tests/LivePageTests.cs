using System.Text.Json;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace LureSim.Browser.Tests;

/// <summary>The live page in a browser.</summary>
[Collection("browser")]
public class LivePageTests(BrowserFixture fixture)
{
    private static readonly string Creek = Path.Combine(AppContext.BaseDirectory, "creek.yaml");

    private static readonly PageWaitForFunctionOptions Patient = new() { Timeout = 90_000 };

    // 2. A fast hand: one wish under way, what is drawn at last is what was asked last, the head that is looked at comes before the others, and no part of the picture goes back.
    [BrowserTheory]
    [InlineData("creek", "steady")]
    [InlineData("bridge-channel", "lift and drop")]
    public async Task The_last_drawn_is_the_last_asked(string scenario, string retrieve)
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario(scenario));
        await using Opened page = await OpenAsync(live);
        await page.Page.AddInitScriptAsync("""
            window.wire = [];
            window.WebSocket = class extends WebSocket {
              constructor(address) { super(address); this.addEventListener("message", event => { const { kind, seq } = JSON.parse(event.data); wire.push({ kind, seq, to: "page" }); }); }
              send(text) { const { kind, seq } = JSON.parse(text); wire.push({ kind, seq, to: "server" }); super.send(text); }
            };
            """);
        await page.Page.EvaluateAsync("way => { location.hash = 'way=' + encodeURIComponent(way); }", retrieve);
        await page.Page.ReloadAsync();
        await FineSentence(page.Page);
        JsonElement found = (await page.Page.EvaluateAsync("""
            async () => {
              const whole = [], boxes = [];
              document.addEventListener("drawn", event => { const { kind, seq, late } = event.detail; if (!late) whole.push(seq); if (kind !== "look") boxes.push(seq); });
              const input = document.getElementById("k-cur");
              for (let i = 0; i < 200; i++) {
                input.value = String(i % (Number(input.max) + 1));
                input.dispatchEvent(new Event("input", { bubbles: true }));
                await new Promise(done => setTimeout(done, 10));
              }
              const asked = luresim.state.cur;
              for (let i = 0; i < 900 && !(luresim.fine && !luresim.flying); i++) await new Promise(done => setTimeout(done, 100));
              const looks = wire.filter(({ kind }) => kind === "look");
              const one = looks.every(({ to, seq }, i) => to === "page" ? looks[i - 1].to === "server" && looks[i - 1].seq === seq : i === 0 || looks[i - 1].to === "page");
              const ahead = wire.every(({ kind, seq }, i) => kind !== "box" || wire.slice(0, i).some(({ kind, seq: other, to }) => kind === "look" && to === "page" && other === seq));
              const sorted = list => list.every((s, i) => i === 0 || s >= list[i - 1]);
              return { asked, drawn: luresim.picture.state.cur, whole: sorted(whole), boxes: sorted(boxes), ahead, one, count: whole.length, box: wire.filter(({ kind }) => kind === "box").length };
            }
            """))!.Value;
        Assert.Equal(found.GetProperty("asked").GetString(), found.GetProperty("drawn").GetString());
        Assert.True(found.GetProperty("whole").GetBoolean(), "Nothing older is drawn after something newer.");
        Assert.True(found.GetProperty("boxes").GetBoolean(), "Nor are the other heads.");
        Assert.True(found.GetProperty("ahead").GetBoolean(), "The head that is looked at comes first.");
        Assert.True(found.GetProperty("one").GetBoolean(), "One wish is under way, never two.");
        Assert.True(found.GetProperty("count").GetInt32() > 3);
        Assert.True(found.GetProperty("box").GetInt32() > 0);
        page.Silent();
    }

    // 3. A slow machine: the thumb is the hand's.
    [BrowserFact]
    public async Task The_thumb_never_jumps_back()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek, options => options with { Delay = TimeSpan.FromMilliseconds(300) });
        await using Opened page = await OpenAsync(live);
        ILocator thumb = page.Page.Locator("#k-dep");
        await thumb.ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult box = (await thumb.BoundingBoxAsync())!;
        await page.Page.Mouse.MoveAsync(box.X + (box.Width * 0.3f), box.Y + (box.Height / 2));
        await page.Page.Mouse.DownAsync();
        List<int> values = [];
        for (int i = 0; i <= 30; i++)
        {
            await page.Page.Mouse.MoveAsync(box.X + (box.Width * (0.3f + (0.015f * i))), box.Y + (box.Height / 2));
            values.Add(await thumb.EvaluateAsync<int>("input => Number(input.value)"));
            await page.Page.WaitForTimeoutAsync(30);
            values.Add(await thumb.EvaluateAsync<int>("input => Number(input.value)"));
        }

        await page.Page.Mouse.UpAsync();
        Assert.Equal(values.Order(), values);
        Assert.True(values[^1] > values[0]);
        page.Silent();
    }

    // 4. Coarse, then fine: the lines do not jump.
    [BrowserTheory]
    [InlineData("creek")]
    [InlineData("grass-flat")]
    [InlineData("bridge-channel")]
    public async Task A_fine_picture_moves_a_line_by_two_pixels_at_the_most(string scenario)
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario(scenario));
        await using Opened page = await OpenAsync(live);
        JsonElement found = (await page.Page.EvaluateAsync("""
            async () => {
              const wait = async test => { for (let i = 0; i < 900 && !test(); i++) await new Promise(done => setTimeout(done, 100)); };
              const off = [], shares = [];
              for (const step of [1, 3, -2]) {
                await wait(() => luresim.fine);
                const input = document.getElementById("k-cur");
                let box = null;
                const hear = event => { if (event.detail.kind === "box") box = { lines: new Map(luresim.lines), rows: luresim.rows }; };
                document.addEventListener("drawn", hear);
                input.value = String(Number(input.value) + step);
                input.dispatchEvent(new Event("input", { bubbles: true }));
                await wait(() => box);
                document.removeEventListener("drawn", hear);
                await wait(() => luresim.fine);
                const view = luresim.view;
                for (const [id, fine] of luresim.lines) {
                  const coarse = box.lines.get(id);
                  // Distance of the points of one path from the other as drawn.
                  for (let i = 0; i < coarse.x.length; i++) {
                    let best = 1e9;
                    const px = coarse.x[i] * view.scale, py = coarse.z[i] * view.scale * view.stretch;
                    for (let k = 1; k < fine.x.length; k++) {
                      const ax = fine.x[k - 1] * view.scale, ay = fine.z[k - 1] * view.scale * view.stretch, bx = fine.x[k] * view.scale, by = fine.z[k] * view.scale * view.stretch;
                      const dx = bx - ax, dy = by - ay, n = dx * dx + dy * dy, t = n ? Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / n)) : 0;
                      best = Math.min(best, Math.hypot(px - ax - t * dx, py - ay - t * dy));
                    }
                    off.push(best);
                  }
                }
                luresim.rows.forEach((row, i) => shares.push(Math.abs(row.zone - box.rows[i].zone)));
              }
              off.sort((a, b) => a - b);
              return { p95: off[Math.floor(off.length * 0.95)], most: off[off.length - 1], share: Math.max(...shares) };
            }
            """))!.Value;
        double p95 = found.GetProperty("p95").GetDouble(), most = found.GetProperty("most").GetDouble(), share = found.GetProperty("share").GetDouble();
        Budgets.Note($"coarse to fine, {scenario}: line p95 / most (px); share (points)", $"{p95:0.0} / {most:0.0}; {share:0}");
        Assert.True(p95 <= 2, $"95 % of the points moved by up to {p95:0.0} px, the worst by {most:0.0} px.");
        Assert.True(share <= 2, $"A share moved by {share} points.");
        page.Silent();
    }

    // 5. Back is undo; the address keeps the state; a saved file gives the same sentence.
    [BrowserFact]
    public async Task Back_undoes_reload_keeps_and_a_saved_file_shows_the_same()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live);
        IPage p = page.Page;
        string first = await FineSentence(p);
        await p.FocusAsync("#k-cur");
        await p.Keyboard.PressAsync("Shift+ArrowRight");
        await p.WaitForFunctionAsync("() => location.hash.includes('cur=')", null, Patient);
        string second = await FineSentence(p);
        Assert.NotEqual(first, second);
        await p.ClickAsync("#undo");
        await p.WaitForFunctionAsync("() => !location.hash.includes('cur=')", null, Patient);
        Assert.Equal(first, await FineSentence(p));
        await p.ClickAsync("#redo");
        await p.WaitForFunctionAsync("() => location.hash.includes('cur=')", null, Patient);
        Assert.Equal(second, await FineSentence(p));
        await p.ReloadAsync();
        Assert.Equal(second, await FineSentence(p));
        await p.ClickAsync("#save");
        await p.WaitForSelectorAsync("#note a");
        await p.ClickAsync("#note a");
        await p.WaitForURLAsync("**/spot/1");
        Assert.Equal(second, await FineSentence(p));
        string saved = Directory.GetFiles(live.Folder).Single(file => Path.GetFileName(file) != "creek.yaml");
        Assert.True(Scenarios.ScenarioReader.Read(saved).IsValid);
        await p.GoBackAsync();
        page.Silent();
    }

    // 6. Every knob by keyboard alone, and every grip of the picture.
    [BrowserFact]
    public async Task Every_knob_turns_by_keyboard()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live);
        IPage p = page.Page;
        await p.EvaluateAsync("() => { document.getElementById('more').open = true; }");
        int knobs = await p.Locator("input[type=range][id^='k-']").CountAsync();
        Assert.True(knobs >= 10);
        for (int i = 0; i < knobs; i++)
        {
            ILocator knob = p.Locator("input[type=range][id^='k-']").Nth(i);
            string before = await knob.InputValueAsync(), words = (await knob.GetAttributeAsync("aria-valuetext"))!;
            Assert.NotEmpty(words);
            await knob.FocusAsync();
            await p.Keyboard.PressAsync("Home");
            string least = await knob.InputValueAsync();
            await p.Keyboard.PressAsync("ArrowRight");
            Assert.NotEqual(least, await knob.InputValueAsync());
            await p.Keyboard.PressAsync("End");
            Assert.Equal(await knob.GetAttributeAsync("max"), await knob.InputValueAsync());
            for (int k = int.Parse(await knob.InputValueAsync(), System.Globalization.CultureInfo.InvariantCulture); k > int.Parse(before, System.Globalization.CultureInfo.InvariantCulture); k--) await p.Keyboard.PressAsync("ArrowLeft");
        }

        foreach (string grip in (string[])["cur", "dep", "clr", "cst", "zt", "zb", "cnt"])
        {
            // What stands there before is what was asked for last, not a step of the way.
            await FineSentence(p);
            ILocator handle = p.Locator($"[data-grip={grip}]");
            string before = (await handle.GetAttributeAsync("aria-valuetext"))!;
            await handle.FocusAsync();
            await p.Keyboard.PressAsync("PageUp");
            await p.WaitForFunctionAsync("pair => document.querySelector(`[data-grip=${pair[0]}]`).getAttribute('aria-valuetext') !== pair[1]", new[] { grip, before }, Patient);
        }

        page.Silent();
    }

    // 7. For everybody.
    [BrowserTheory]
    [InlineData(ColorScheme.Light, false)]
    [InlineData(ColorScheme.Dark, false)]
    [InlineData(ColorScheme.Light, true)]
    public async Task Axe_finds_nothing(ColorScheme scheme, bool inClass)
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live, scheme: scheme);
        await FineSentence(page.Page);
        await page.Page.WaitForFunctionAsync("() => document.querySelector('#swim-words').textContent && document.querySelector('#seen').children.length", null, Patient);
        if (inClass)
        {
            await page.Page.ClickAsync("#class");
            await page.Page.WaitForSelectorAsync(".class-question", new PageWaitForSelectorOptions { Timeout = 90_000 });

            // What is looked at is not to be drawn anew meanwhile.
            await page.Page.WaitForTimeoutAsync(300);
            await FineSentence(page.Page);
        }

        AxeResult result = await page.Page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] } });
        Assert.True(result.Violations.Length == 0, string.Join("\n", result.Violations.Select(v => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(4).Select(n => n.Html))}")));
        page.Silent();
    }

    // 8. On every screen.
    [BrowserTheory]
    [InlineData(320, 640)]
    [InlineData(360, 640)]
    [InlineData(390, 844)]
    [InlineData(1280, 720)]
    [InlineData(1920, 1080)]
    public async Task Nothing_scrolls_sideways_and_every_target_is_large_enough(int width, int height)
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live, width, height);
        await FineSentence(page.Page);
        await page.Page.EvaluateAsync("() => { document.getElementById('more').open = true; }");
        JsonElement found = (await page.Page.EvaluateAsync("""
            () => ({
              wide: document.documentElement.scrollWidth - innerWidth,
              small: [...document.querySelectorAll("button, select, summary, input, a")].filter(e => e.offsetParent && !e.classList.contains("skip")).map(e => [e.id || e.className || e.textContent.slice(0, 20), e.getBoundingClientRect()]).filter(([, r]) => r.height < 43.5 || r.width < 43.5).map(([n, r]) => n + " " + Math.round(r.width) + "x" + Math.round(r.height)),
              clipped: [...document.querySelectorAll("p, h1, h2, button, label, output, .head, .share, .when, .word")].filter(e => e.offsetParent && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline" && !e.classList.contains("hidden")).map(e => e.id || e.className || e.textContent.slice(0, 30)),
            })
            """))!.Value;
        Assert.True(found.GetProperty("wide").GetInt32() <= 0, $"{found.GetProperty("wide")} px too wide at {width}");
        Assert.Equal("[]", found.GetProperty("small").ToString());
        Assert.Equal("[]", found.GetProperty("clipped").ToString());
        page.Silent();
    }

    // 9. Without script the page says so.
    [BrowserFact]
    public async Task Without_script_it_says_what_to_do()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using IBrowserContext context = await fixture.Browser.NewContextAsync(new BrowserNewContextOptions { JavaScriptEnabled = false });
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(live.Server.NewLink());
        Assert.Contains("luresim plan", await page.InnerTextAsync("noscript"), StringComparison.Ordinal);
    }

    // 10. The what-if tries: counted as counted, with a dot for one cast in twenty, and stopped when asked.
    [BrowserFact]
    public async Task The_tries_are_counted_as_they_come()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live);
        IPage p = page.Page;
        await FineSentence(p);
        await p.EvaluateAsync("() => { window.told = []; new MutationObserver(() => told.push(document.getElementById('try-counts').textContent)).observe(document.getElementById('try-counts'), { childList: true, characterData: true, subtree: true }); }");
        await p.ClickAsync("#try");
        await p.WaitForFunctionAsync("() => luresim.tries && luresim.tries.ended", null, Patient);
        JsonElement found = (await p.EvaluateAsync("""
            () => ({
              done: luresim.tries.done, total: luresim.tries.total, told,
              marks: document.querySelectorAll("#try-marks li").length,
              wins: luresim.tries.heads.map(head => head.best), even: luresim.tries.winners.filter(name => name === "").length,
              dots: [...document.querySelectorAll("#try-dots svg")].map(svg => svg.querySelectorAll(".dot").length),
              medians: [...document.querySelectorAll("#try-dots .median")].length,
              lines: document.querySelectorAll("#picture .try").length,
            })
            """))!.Value;
        int total = found.GetProperty("total").GetInt32();
        Assert.Equal(total, found.GetProperty("done").GetInt32());
        Assert.Equal(total, found.GetProperty("marks").GetInt32());
        Assert.Equal(total, found.GetProperty("lines").GetInt32());
        Assert.Equal(total, found.GetProperty("wins").EnumerateArray().Sum(win => win.GetInt32()) + found.GetProperty("even").GetInt32());
        Assert.All(found.GetProperty("dots").EnumerateArray(), dots => Assert.Equal(20, dots.GetInt32()));
        Assert.Equal(found.GetProperty("dots").GetArrayLength(), found.GetProperty("medians").GetInt32());
        Assert.Contains(found.GetProperty("told").EnumerateArray(), words => words.GetString()!.StartsWith($"8 of {total}: ", StringComparison.Ordinal));

        // One by one, and a turned knob throws the tries away.
        await p.ClickAsync("#try-walk");
        await p.WaitForFunctionAsync("() => document.querySelectorAll('#picture .try').length === 1", null, Patient);
        await p.FocusAsync("#k-cur");
        await p.Keyboard.PressAsync("ArrowRight");
        await p.WaitForFunctionAsync("() => !luresim.tries && document.querySelectorAll('#picture .try').length === 0 && document.getElementById('try-counts').textContent === ''", null, Patient);
        page.Silent();
    }

    // What the angler noted stands in the address, can be undone, and is in the saved file.
    [BrowserFact]
    public async Task What_was_seen_is_kept_undone_and_saved()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live);
        IPage p = page.Page;
        await FineSentence(p);
        await p.ClickAsync("#seen-what [data-what='bottom at']");
        await p.ClickAsync("#seen-count button:nth-child(6)");
        await p.WaitForFunctionAsync("() => document.querySelectorAll('#seen-noted li').length === 1 && location.hash.includes('seen=')", null, Patient);
        string line = await p.InnerTextAsync("#seen-noted li");
        Assert.Contains("on bottom at a 7-count", line, StringComparison.Ordinal);
        Assert.StartsWith(line, await p.InnerTextAsync("#seen-words"), StringComparison.Ordinal);
        Assert.True(await p.IsVisibleAsync("#seen-forget"));
        await p.ReloadAsync();
        await FineSentence(p);
        Assert.Equal(line, await p.InnerTextAsync("#seen-noted li"));
        await p.ClickAsync("#undo");
        await p.WaitForFunctionAsync("() => document.querySelectorAll('#seen-noted li').length === 0 && luresim.fine", null, Patient);
        await p.ClickAsync("#redo");
        await p.WaitForFunctionAsync("() => document.querySelectorAll('#seen-noted li').length === 1 && luresim.fine", null, Patient);
        string sentence = await FineSentence(p);
        await p.ClickAsync("#save");
        await p.WaitForSelectorAsync("#note a");
        await p.ClickAsync("#note a");
        await p.WaitForURLAsync("**/spot/1");
        Assert.Equal(sentence, await FineSentence(p));
        Assert.Equal(line, await p.InnerTextAsync("#seen-noted li"));
        Assert.False(await p.IsVisibleAsync("#seen-forget"));
        string saved = Directory.GetFiles(live.Folder).Single(file => Path.GetFileName(file) != "creek.yaml");
        Assert.Single(Scenarios.ScenarioReader.Read(saved).Scenario!.Seen);
        page.Silent();
    }

    // 11. In forced colors the bars still tell above, in and below apart, and what is pressed has an edge.
    [BrowserFact]
    public async Task In_forced_colors_the_marks_stay()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario("grass-flat"));
        await using Opened page = await OpenAsync(live, change: options => options.ForcedColors = ForcedColors.Active);
        IPage p = page.Page;
        await FineSentence(p);
        Assert.True(await p.EvaluateAsync<bool>("() => matchMedia('(forced-colors: active)').matches"));
        string[] bars = await p.EvaluateAsync<string[]>("() => ['above', 'in', 'below'].map(kind => getComputedStyle(document.querySelector('#rows .bars .' + kind)).backgroundColor)");
        Assert.Equal(3, bars.Distinct().Count());
        string[] lines = await p.EvaluateAsync<string[]>("() => [...document.querySelectorAll('#picture .track .work')].map(path => getComputedStyle(path).stroke)");
        Assert.True(lines.Distinct().Count() >= 3, string.Join(" ", lines));
        string edge = await p.EvaluateAsync<string>("() => getComputedStyle(document.querySelector('#rows button[aria-pressed=true]')).outlineStyle");
        Assert.Equal("solid", edge);
        if (Environment.GetEnvironmentVariable("LURESIM_SHOTS") is { Length: > 0 } folder)
            await p.ScreenshotAsync(new PageScreenshotOptions { FullPage = true, Path = Path.Combine(folder, "forced-colors.png") });
        page.Silent();
    }

    // Nothing is laid over the picture that hides a word: the labels keep clear of each other.
    [BrowserTheory]
    [InlineData("grass-flat", 1920)]
    [InlineData("bridge-channel", 1280)]
    [InlineData("creek", 1280)]
    public async Task Words_in_the_picture_keep_clear_of_each_other(string scenario, int width)
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario(scenario));
        await using Opened page = await OpenAsync(live, width, 1080);
        await FineSentence(page.Page);
        string[] over = await page.Page.EvaluateAsync<string[]>("""
            () => {
              const all = [...document.querySelectorAll("#picture text")].filter(t => t.textContent).map(t => [t.textContent, t.getBoundingClientRect()]);
              const found = [];
              all.forEach(([a, r], i) => all.slice(i + 1).forEach(([b, s]) => {
                const across = Math.min(r.right, s.right) - Math.max(r.left, s.left), down = Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top);
                if (across > 2 && down > 5) found.push(`${a} / ${b}`);
              }));
              return found;
            }
            """);
        Assert.Empty(over);
        Assert.True(await page.Page.EvaluateAsync<double>("() => document.querySelector('.frame').getBoundingClientRect().top - document.getElementById('h-water').getBoundingClientRect().bottom") < 30 || await page.Page.IsVisibleAsync("#above"));
    }

    // 11. Nothing moves for those who do not want it.
    [BrowserFact]
    public async Task With_reduced_motion_nothing_moves()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live, change: options => options.ReducedMotion = ReducedMotion.Reduce);
        await page.Page.WaitForFunctionAsync("() => document.querySelector('#swim-words').textContent.length > 0", null, Patient);
        string one = await page.Page.InnerHTMLAsync("#swim-above");
        await page.Page.WaitForTimeoutAsync(700);
        Assert.Equal(one, await page.Page.InnerHTMLAsync("#swim-above"));
        Assert.Equal(0, await page.Page.EvaluateAsync<int>("() => document.getAnimations().length"));
        page.Silent();
    }

    // 12. A class step by its keys.
    [BrowserFact]
    public async Task A_step_of_a_class_runs_by_its_keys()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live, 1280, 720);
        IPage p = page.Page;
        await FineSentence(p);
        string before = await p.EvaluateAsync<string>("() => JSON.stringify(luresim.state)");
        await p.EvaluateAsync("() => document.activeElement.blur()");
        await p.Keyboard.PressAsync("c");
        await p.WaitForFunctionAsync("() => document.querySelector('.class-answers li')", null, Patient);
        Assert.True(await p.EvaluateAsync<bool>("() => document.body.classList.contains('covered') && getComputedStyle(document.querySelector('.frame')).visibility === 'hidden'"));
        await p.ClickAsync(".class-answers li:nth-child(2) button");
        Assert.Equal("1", await p.InnerTextAsync(".class-answers li:nth-child(2) output"));
        await p.EvaluateAsync("() => document.activeElement.blur()");
        await p.WaitForFunctionAsync("() => luresim.fine", null, Patient);
        await p.Keyboard.PressAsync("Space");
        await p.WaitForFunctionAsync("() => !document.body.classList.contains('covered') && luresim.pin && document.querySelector('#picture .ghost')", null, Patient);
        string stand = await p.EvaluateAsync<string>("() => luresim.state.cur");
        await p.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(stand, await p.EvaluateAsync<string>("() => luresim.state.cur"));
        await p.Keyboard.PressAsync("g");
        Assert.Equal(0, await p.Locator("#picture .ghost").CountAsync());
        await p.Keyboard.PressAsync("b");
        Assert.True(await p.EvaluateAsync<bool>("() => document.body.classList.contains('blank')"));
        await p.Keyboard.PressAsync("b");
        await p.Keyboard.PressAsync("r");
        Assert.True(await p.EvaluateAsync<bool>("() => document.body.classList.contains('covered')"));
        await p.Keyboard.PressAsync("3");
        await p.WaitForFunctionAsync("() => /grass/.test(document.querySelector('.class-question').textContent)", null, Patient);
        double size = await p.EvaluateAsync<double>("() => Math.min(...[...document.querySelectorAll('.class-answers li, .class-why p, .knob output')].filter(e => e.offsetParent).map(e => parseFloat(getComputedStyle(e).fontSize)))");
        Assert.True(size >= 720.0 / 38, $"{size} px");
        await p.Keyboard.PressAsync("Escape");
        await p.WaitForFunctionAsync("state => !document.body.classList.contains('class') && JSON.stringify(luresim.state) === state", before, Patient);
        page.Silent();
    }

    // The two minutes for a first class of docs/workbench.md, step by step as they are written there.
    [BrowserFact]
    public async Task A_first_class_goes_as_it_is_written()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario("bridge-channel"));
        await using Opened page = await OpenAsync(live, 1280, 720);
        IPage p = page.Page;
        string first = await FineSentence(p);

        // 2. The flow arrow, or the slider under the picture.
        LocatorBoundingBoxResult arrow = (await p.Locator("[data-grip=cur]").BoundingBoxAsync())!;
        await p.Mouse.MoveAsync(arrow.X + (arrow.Width / 2), arrow.Y + (arrow.Height / 2));
        await p.Mouse.DownAsync();
        for (int i = 1; i <= 8; i++) await p.Mouse.MoveAsync(arrow.X + (arrow.Width / 2) + (5 * i), arrow.Y + (arrow.Height / 2));
        await p.Mouse.UpAsync();
        await p.WaitForFunctionAsync("() => location.hash.includes('cur=')", null, Patient);
        Assert.NotEqual(first, await FineSentence(p));

        // 3. The bottom, or its slider, and another head.
        await p.Locator("[data-grip=dep]").ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult bottom = (await p.Locator("[data-grip=dep]").BoundingBoxAsync())!;
        await p.Mouse.MoveAsync(bottom.X + (bottom.Width / 2), bottom.Y + (bottom.Height / 2));
        await p.Mouse.DownAsync();
        for (int i = 1; i <= 4; i++) await p.Mouse.MoveAsync(bottom.X + (bottom.Width / 2), bottom.Y + (bottom.Height / 2) - (10 * i));
        await p.Mouse.UpAsync();
        await p.WaitForFunctionAsync("() => location.hash.includes('dep=')", null, Patient);
        await p.FocusAsync("#k-dep");
        for (int i = 0; i < 60 && await p.EvaluateAsync<string?>("() => luresim.state.dep ?? null") != "30 ft"; i++) await p.Keyboard.PressAsync("ArrowRight");
        Assert.Equal("30 ft", await p.EvaluateAsync<string>("() => luresim.state.dep"));
        await FineSentence(p);
        await p.ClickAsync("#rows li:nth-child(3) button");
        await p.WaitForFunctionAsync("() => luresim.focus === luresim.rows[2].id", null, Patient);
        string name = await p.InnerTextAsync("#rows li:nth-child(3) .head");
        Assert.StartsWith(name, await FineSentence(p), StringComparison.Ordinal);

        // 4. The gray line, and what the change was worth.
        await p.ClickAsync("#keep");
        await p.ClickAsync("[data-id=cnt] .turn button:last-child");
        await p.ClickAsync("[data-id=cnt] .turn button:last-child");
        await FineSentence(p);
        Assert.Equal(1, await p.Locator("#picture .ghost").CountAsync());
        Assert.Contains("the one you kept", await p.InnerTextAsync("#difference"), StringComparison.Ordinal);

        // 5. Undo, Back, Start again, Save.
        await p.ClickAsync("#undo");
        await p.WaitForFunctionAsync("() => luresim.state.dep === '30 ft' && !luresim.state.cnt && luresim.fine", null, Patient);
        string head = await p.EvaluateAsync<string>("() => luresim.state.w");
        await p.GoBackAsync();
        await p.WaitForFunctionAsync("head => luresim.state.dep === '30 ft' && luresim.state.w !== head && luresim.fine", head, Patient);
        await p.ClickAsync("#save");
        await p.WaitForSelectorAsync("#note a", new PageWaitForSelectorOptions { Timeout = 90_000 });
        Assert.True(Scenarios.ScenarioReader.Read(Directory.GetFiles(live.Folder).Single(file => Path.GetFileName(file) != "bridge-channel.yaml")).IsValid);
        await p.ClickAsync("#again");
        await p.WaitForFunctionAsync("() => luresim.fine && !location.hash.includes('dep=')", null, Patient);
        Assert.Equal(first, await FineSentence(p));

        // 6. C; hands, the space bar, the arrows, why; the lessons by number, B, R, G, Esc; the handout.
        await p.Keyboard.PressAsync("c");
        await p.WaitForSelectorAsync(".class-answers li", new PageWaitForSelectorOptions { Timeout = 90_000 });
        Assert.Equal(6, await p.Locator(".class-bar button[title]").CountAsync());
        await p.WaitForFunctionAsync("() => luresim.fine", null, Patient);
        await p.ClickAsync(".class-answers li:nth-child(1) button");
        await p.ClickAsync(".class-answers li:nth-child(1) button");
        await p.Keyboard.PressAsync("Space");
        await p.WaitForFunctionAsync("() => !document.body.classList.contains('covered') && document.querySelector('#picture .ghost')", null, Patient);
        Assert.Equal("2", await p.InnerTextAsync(".class-answers li:nth-child(1) output"));
        string stand = await p.EvaluateAsync<string>("() => JSON.stringify(luresim.state)");
        await p.Keyboard.PressAsync("ArrowLeft");
        Assert.NotEqual(stand, await p.EvaluateAsync<string>("() => JSON.stringify(luresim.state)"));
        await p.GetByText("Why?").ClickAsync();
        Assert.Equal(1, await p.Locator(".class-answers li.right").CountAsync());
        for (int step = 2; step <= 6; step++)
        {
            string before = await p.InnerTextAsync(".class-question");
            await p.Keyboard.PressAsync(step.ToString(System.Globalization.CultureInfo.InvariantCulture));
            await p.WaitForFunctionAsync("before => document.querySelector('.class-question').textContent !== before", before, Patient);
            Assert.Equal(0, await p.Locator(".class-note").CountAsync());
        }

        Assert.EndsWith("/handout.pdf", await p.GetAttributeAsync(".class-link", "href"), StringComparison.Ordinal);
        await p.Keyboard.PressAsync("Escape");
        await p.WaitForFunctionAsync("() => !document.body.classList.contains('class') && luresim.fine", null, Patient);
        Assert.Equal(first, await FineSentence(p));
        page.Silent();
    }

    // 13. The end of the program.
    [BrowserFact]
    public async Task When_the_program_ends_the_page_says_so()
    {
        LiveServer live = await BrowserFixture.ServeAsync(Creek);
        await using Opened page = await OpenAsync(live);
        await FineSentence(page.Page);
        var watch = System.Diagnostics.Stopwatch.StartNew();
        await live.DisposeAsync();
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(4), $"{watch.Elapsed}");
        await page.Page.WaitForFunctionAsync("() => document.querySelector('#note').textContent === 'LureSim has stopped. Your settings are in the address bar.'", null, Patient);
    }

    // 14. Not by color alone: a picture for an eye without green, to be looked at.
    [BrowserFact]
    public async Task Every_head_has_a_mark_of_its_own()
    {
        await using LiveServer live = await BrowserFixture.ServeAsync(Scenario("grass-flat"));
        await using Opened page = await OpenAsync(live);
        await FineSentence(page.Page);
        string[] marks = await page.Page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('#rows .mark path')].map(path => path.getAttribute('d'))");
        Assert.True(marks.Distinct().Count() >= Math.Min(5, marks.Length));
        string[] names = await page.Page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('#picture text.name')].map(text => text.textContent)");
        Assert.Equal(marks.Length, names.Distinct().Count());
        if (Environment.GetEnvironmentVariable("LURESIM_SHOTS") is { Length: > 0 } folder)
        {
            ICDPSession session = await page.Page.Context.NewCDPSessionAsync(page.Page);
            await session.SendAsync("Emulation.setEmulatedVisionDeficiency", new Dictionary<string, object> { ["type"] = "deuteranopia" });
            await page.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, "without-green.png") });
        }
    }

    internal static string Scenario(string name) => name == "creek" ? Creek : BrowserFixture.File_("scenarios", name + ".yaml");

    internal static async Task<string> FineSentence(IPage page)
    {
        await page.WaitForFunctionAsync("() => window.luresim && luresim.fine && !luresim.flying && !luresim.waiting", null, Patient);
        return await page.InnerTextAsync("#sentence");
    }

    internal Task<Opened> OpenAsync(LiveServer live, int width = 1280, int height = 900, ColorScheme scheme = ColorScheme.Light, Action<BrowserNewContextOptions>? change = null) =>
        Opened.Of(fixture, live, width, height, scheme, change);
}

/// <summary>A page that is open, with what it said.</summary>
internal sealed class Opened : IAsyncDisposable
{
    private readonly List<string> said = [];

    private Opened(IPage page) => Page = page;

    public IPage Page { get; }

    public static async Task<Opened> Of(BrowserFixture fixture, LiveServer live, int width, int height, ColorScheme scheme, Action<BrowserNewContextOptions>? change = null)
    {
        BrowserNewContextOptions options = new() { ViewportSize = new ViewportSize { Width = width, Height = height }, ColorScheme = scheme };
        change?.Invoke(options);
        IBrowserContext context = await fixture.Browser.NewContextAsync(options);
        Opened opened = new(await context.NewPageAsync());
        opened.Page.SetDefaultTimeout(90_000);
        opened.Page.Console += (_, message) => opened.said.Add(message.Text);
        opened.Page.PageError += (_, error) => opened.said.Add(error);
        await opened.Page.GotoAsync(live.Server.NewLink());
        await opened.Page.WaitForFunctionAsync("() => window.luresim && luresim.picture", null, new PageWaitForFunctionOptions { Timeout = 90_000 });
        return opened;
    }

    /// <summary>Nothing was said to the console.</summary>
    public void Silent() => Assert.True(said.Count == 0, string.Join("\n", said));

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
}
