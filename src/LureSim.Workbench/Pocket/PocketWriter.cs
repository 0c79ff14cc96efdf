using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Workbench.Bench;
using LureSim.Workbench.Pictures;
using LureSim.Workbench.Server;

namespace LureSim.Workbench.Pocket;

/// <summary>Writes the pocket page: one file that asks nobody for anything.</summary>
internal static class PocketWriter
{
    /// <summary>Size that mail and messengers take (bytes).</summary>
    public const int MostBytes = 300_000;

    // Stops of a slider for each interval between computed steps.
    private const int Between = 4;

    private static readonly JsonSerializerOptions Json = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase, TypeInfoResolver = new System.Text.Json.Serialization.Metadata.DefaultJsonTypeInfoResolver() };

    /// <summary>The page.</summary>
    /// <param name="spots">Its spots.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="computed">Day of the computation.</param>
    public static byte[] Page(IReadOnlyList<PocketSpot> spots, UnitSystem units, string version, DateOnly computed)
    {
        ArgumentNullException.ThrowIfNull(spots);
        var format = new UnitFormat(units);
        string script = Script();
        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        HtmlEncoder encoder = HtmlEncoder.Default;
        var body = new StringBuilder();
        var rules = new StringBuilder();
        string day = computed.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
        if (spots.Count > 1)
        {
            body.Append("<nav aria-label=\"Spots\"><ul>");
            for (int i = 0; i < spots.Count; i++) body.Append(CultureInfo.InvariantCulture, $"<li><a href=\"#spot{i}\">{encoder.Encode(spots[i].Scenario.Title)}</a></li>");
            body.Append("</ul></nav>");
        }

        List<object> data = [];
        for (int i = 0; i < spots.Count; i++)
        {
            Section(body, rules, spots[i], i, spots.Count == 1, format, encoder);
            data.Add(Data(spots[i], format));
        }

        string title = spots.Count == 1 ? spots[0].Scenario.Title : $"{spots.Count} spots";
        string page = Assets.Text("pocket.html")
            .Replace("{{title}}", encoder.Encode($"{title}, computed {day}"), StringComparison.Ordinal)
            .Replace("{{heading}}", encoder.Encode(title), StringComparison.Ordinal)
            .Replace("{{hash}}", hash, StringComparison.Ordinal)
            .Replace("{{style}}", Assets.Text("pocket.css") + rules, StringComparison.Ordinal)
            .Replace("{{about}}", encoder.Encode($"Computed {day} with LureSim {version}; scenario {string.Join(", ", spots.Select(spot => Print(spot)))}."), StringComparison.Ordinal)
            .Replace("{{day}}", computed.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("{{body}}", body.ToString(), StringComparison.Ordinal)
            .Replace("{{data}}", JsonSerializer.Serialize(data, Json), StringComparison.Ordinal)
            .Replace("{{script}}", script, StringComparison.Ordinal);
        return Encoding.UTF8.GetBytes(page);
    }

    /// <summary>What the readings between the steps are worth, as the page prints it.</summary>
    public static string ErrorWords(PocketTable table, UnitFormat format)
    {
        PocketError e = table.Error;
        int snapped = table.Methods.Count(method => method == PocketMethod.Nearest);
        string snap = snapped == 0 ? "" : snapped == table.Methods.Count
            ? " The heads change too sharply between the computed steps: each is shown at the nearest one."
            : $" {string.Join(", ", table.Rigs.Where((_, i) => table.Methods[i] == PocketMethod.Nearest).Select(rig => Name(rig, format)))}: too sharp to read off, shown at the nearest computed step.";
        if (e.Checks == 0) return snap.TrimStart();
        return $"Between the computed steps this page reads off: usually within {Points(e.Share.Half)} and {format.TravelText(e.Depth.Half)}, 1 case in 20 off by {Points(e.Share.Most)} and {format.TravelText(e.Depth.Most)}, worst of {e.Checks} checks {Points(e.Share.Worst)}. The head it names was the best, or as good, in {e.SameHead} of {e.Points}.{snap}";
    }

    /// <summary>Name of a head.</summary>
    public static string Name(Rig rig, UnitFormat format) => rig.Head.IsNone ? format.LureText(rig.Body) : format.HeadText(rig.Head);

    /// <summary>The card of the spot, as every page has it.</summary>
    public static Card Card(PocketSpot spot, UnitFormat format) => Report.Words.Card.Of(
        new CardFacts(spot.Scenario, spot.First) { Colour = new ColourChoice(spot.Colors.Advice.Choice.Name, CardWords.Why(spot.Colors.Advice)), Warnings = spot.Warnings }, format.System);

    /// <summary>The current at a step, in words.</summary>
    public static string Flow(double current, UnitFormat format) =>
        Math.Abs(current) < 0.02 ? "slack" : $"{format.FlowSpeed.Text(Math.Abs(current))}{(current < 0 ? " the other way" : "")}";

    /// <summary>An hour, "7:30".</summary>
    public static string Clock(double hours)
    {
        int minutes = (int)Math.Round(hours * 60);
        return string.Create(CultureInfo.InvariantCulture, $"{minutes / 60 % 24}:{minutes % 60:00}");
    }

    private static string Points(double share) => $"{UnitFormat.Number(100 * share, 0)} point{(Math.Round(100 * share) == 1 ? "" : "s")}";

    private static string Does(Candidate run, UnitFormat format)
    {
        (double high, double low) = PictureWords.Running(run.Track);
        string there = run.Coverage.TimeToZone is { } time ? $"there after {UnitFormat.SecondsText(time)}" : "never in the zone";
        return $"{there}, runs {(format.HandNumber(high) == format.HandNumber(low) ? "at " : "")}{format.HandBand(high, low)}, in the zone {UnitFormat.PercentText(run.Coverage.ZoneShare)} of the retrieve";
    }

    private static string Print(PocketSpot spot)
    {
        byte[] bytes = SHA256.HashData(Encoding.UTF8.GetBytes($"{spot.Scenario.Title}|{spot.Scenario.Spot}|{spot.First.Rig}"));
        return Convert.ToHexStringLower(bytes)[..8];
    }

    private static void Section(StringBuilder body, StringBuilder rules, PocketSpot spot, int number, bool alone, UnitFormat format, HtmlEncoder encoder)
    {
        string E(string text) => encoder.Encode(text);
        PocketTable table = spot.Table;
        body.Append(CultureInfo.InvariantCulture, $"<section class=\"spot\" id=\"spot{number}\" data-spot=\"{number}\"><h2{(alone ? " class=\"print\"" : "")}>{E(alone ? "What to do" : spot.Scenario.Title)}</h2>");

        // The card: plain, for any viewer.
        body.Append("<dl class=\"card\">");
        foreach (CardRow row in Card(spot, format).Rows) body.Append(CultureInfo.InvariantCulture, $"<div><dt>{E(row.Label)}</dt><dd>{E(row.Text)}</dd></div>");
        body.Append(CultureInfo.InvariantCulture, $"<div><dt>WHAT IT DOES</dt><dd>{E(Does(spot.First, format))}</dd></div>");
        if (spot.LookNext.Count > 0) body.Append(CultureInfo.InvariantCulture, $"<div><dt>LOOK FIRST</dt><dd>{E(ObservationWords.Next(spot.LookNext[0], format))}</dd></div>");
        if (spot.Observed is { } seen && ObservationWords.Brief(seen.Update, format) is { Length: > 0 } learned) body.Append(CultureInfo.InvariantCulture, $"<div><dt>YOU SAW</dt><dd>{E(Grammar.Sentence(learned))}</dd></div>");
        body.Append("</dl>");

        // Sliders come here where a script runs; a page without one does not show them.
        body.Append(CultureInfo.InvariantCulture, $"<div class=\"live\" id=\"live{number}\" hidden></div>");

        // Taps without a script: radio buttons, and style that shows the card of the two that are tapped.
        double[] flows = [.. spot.Steps.Select(step => step.Current).Distinct()], depths = [.. spot.Steps.Select(step => step.Depth).Distinct()];
        int own = Array.FindIndex(flows, flow => Math.Abs(flow - spot.Scenario.Spot.CurrentSpeed) < 1e-9), level = Array.FindIndex(depths, d => Math.Abs(d - spot.Scenario.Spot.Depth) < 1e-9);
        body.Append(CultureInfo.InvariantCulture, $"<div class=\"taps\" id=\"taps{number}\"><h3>Tap what you find</h3>");
        body.Append("<fieldset><legend>Current</legend>");
        for (int i = 0; i < flows.Length; i++) body.Append(CultureInfo.InvariantCulture, $"<input type=\"radio\" name=\"c{number}\" id=\"c{number}-{i}\"{(i == Math.Max(0, own) ? " checked" : "")}><label for=\"c{number}-{i}\">{E(Flow(flows[i], format))}</label>");
        body.Append("</fieldset><fieldset><legend>Water</legend>");
        for (int j = 0; j < depths.Length; j++) body.Append(CultureInfo.InvariantCulture, $"<input type=\"radio\" name=\"d{number}\" id=\"d{number}-{j}\"{(j == Math.Max(0, level) ? " checked" : "")}><label for=\"d{number}-{j}\">{E(format.HandText(depths[j]))}</label>");
        body.Append("</fieldset><div class=\"answers\">");
        for (int k = 0; k < spot.Steps.Count; k++)
        {
            PocketStep step = spot.Steps[k];
            int i = Array.IndexOf(flows, step.Current), j = Array.IndexOf(depths, step.Depth);
            string id = string.Create(CultureInfo.InvariantCulture, $"a{number}-{i}-{j}");
            string tie = step.Run is { } run ? $"<p class=\"tie\">Tie on <b>{E(Name(run.Rig, format))}</b></p><p>{E(Does(run, format))}</p>{Small(run, step.Depth, spot, format)}" : "<p class=\"tie\">No head in your box gets there.</p>";
            body.Append(CultureInfo.InvariantCulture, $"<div class=\"answer\" id=\"{id}\">{tie}</div>");
            rules.Append(CultureInfo.InvariantCulture, $"#taps{number}:has(#c{number}-{i}:checked):has(#d{number}-{j}:checked) #{id}{{display:block}}\n");
        }

        body.Append("</div></div>");

        // The table: printed too.
        body.Append(CultureInfo.InvariantCulture, $"<h3>If the current is…</h3><div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"What to tie on by current\"><table><thead><tr><th scope=\"col\">current</th><th scope=\"col\">tie on</th><th scope=\"col\">there after</th><th scope=\"col\">in the zone</th></tr></thead><tbody>");
        foreach (PocketStep step in spot.Steps.Where(step => Math.Abs(step.Depth - spot.Scenario.Spot.Depth) < 1e-9))
            Row(Flow(step.Current, format), step.Run);
        body.Append("</tbody></table></div>");
        if (spot.Hours.Count > 0)
        {
            body.Append("<h3>By the hour</h3><div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"What to tie on by the hour\"><table><thead><tr><th scope=\"col\">time</th><th scope=\"col\">tie on</th><th scope=\"col\">there after</th><th scope=\"col\">in the zone</th></tr></thead><tbody>");
            foreach (PocketHour hour in spot.Hours) Row($"{Clock(hour.Hours)} ({Flow(hour.Current, format)}, {format.HandText(hour.Depth)})", hour.Run);
            body.Append("</tbody></table></div>");
        }

        int first = Math.Max(0, Math.Min(spot.Choice - 1, spot.Lures.Count - 3)), last = Math.Min(spot.Lures.Count - 1, first + 2);
        body.Append("<h3>Sink count, bail open</h3><div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Seconds to each depth\"><table><thead><tr><th scope=\"col\">down to</th>");
        for (int head = first; head <= last; head++) body.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{E(Name(table.Rigs[head], format))}</th>");
        body.Append("</tr></thead><tbody>");
        for (int row = 0; row < spot.Falls.Depths.Count; row++)
        {
            body.Append(CultureInfo.InvariantCulture, $"<tr><th scope=\"row\">{E(format.HandText(spot.Falls.Depths[row]))}</th>");
            for (int head = first; head <= last; head++)
            {
                double? seconds = spot.Falls.Columns.FirstOrDefault(column => column.Head == spot.Lures[head])?.SlackLineSeconds[row];
                body.Append(CultureInfo.InvariantCulture, $"<td>{E(UnitFormat.SecondsText(seconds))}</td>");
            }

            body.Append("</tr>");
        }

        body.Append("</tbody></table></div>");
        Presentation way = spot.First.Rig.Presentation;
        TackleBox tackle = spot.Scenario.Tackle;
        string free = string.Join(", ", table.Axes.Select(axis => axis.Kind switch { PocketAxisKind.Current => "current", PocketAxisKind.Depth => "depth", PocketAxisKind.Speed => "reel speed", PocketAxisKind.Cast => "cast", _ => throw new ArgumentOutOfRangeException(nameof(spot), axis.Kind, "Not an axis.") }));
        List<string> held = [$"{format.StrengthText(tackle.Line.Strength)} {TackleWords.LineName(tackle.Line.Kind)}"];
        if (table.Axes.All(axis => axis.Kind != PocketAxisKind.Cast)) held.Add($"{format.HandText(way.CastLength)} cast");
        if (table.Axes.All(axis => axis.Kind != PocketAxisKind.Speed) && way.RetrieveSpeed > 0) held.Add(RetrieveWords.Pace(way.RetrieveSpeed, tackle.Reel, format));
        held.AddRange([format.LureText(spot.First.Rig.Body), format.TemperatureText(spot.Scenario.Spot.TemperatureCelsius), SpotWords.Bottom(spot.Scenario.Spot.Bottom)]);
        body.Append(CultureInfo.InvariantCulture, $"<p class=\"small\">This page varies {E(free)}. Fixed: {E(string.Join(", ", held))}. If one of these is not so, this page is for another day.</p><p class=\"small error\">{E(ErrorWords(table, format))}</p></section>");

        void Row(string label, Candidate? run) => body.Append(CultureInfo.InvariantCulture, $"<tr><th scope=\"row\">{E(label)}</th><td><b>{E(run is null ? "–" : Name(run.Rig, format))}</b></td><td>{E(run is null ? "never" : UnitFormat.SecondsText(run.Coverage.TimeToZone))}</td><td>{E(run is null ? "–" : UnitFormat.PercentText(run.Coverage.ZoneShare))}</td></tr>");
    }

    // A small picture of one run, for a card that is shown without a script.
    private static string Small(Candidate run, double depth, PocketSpot spot, UnitFormat format)
    {
        const double Width = 320, Height = 92;
        Spot water = SpotChange.WithDepth(spot.Scenario.Spot, depth);
        double reach = 1.05 * run.CastLength;
        double[] x = [.. run.Track.X.Select(v => Width * Math.Clamp(v / reach, -0.02, 1.02))], y = [.. Enumerable.Range(0, run.Track.Count).Select(i => Height * Math.Clamp(run.Track.Depth(i) / depth, 0, 1))];
        if (x.Length < 2) return "";
        string path = string.Concat(PathThinner.Keep(x, y, 0, x.Length - 1, 1.6).Select((i, n) => string.Create(CultureInfo.InvariantCulture, $"{(n == 0 ? "M" : "L")}{x[i]:0} {y[i]:0}")));
        double top = Height * water.StrikeZone.Top / depth, bottom = Height * Math.Min(1, water.StrikeZone.Bottom / depth);
        return string.Create(CultureInfo.InvariantCulture, $"<svg viewBox=\"0 -6 {Width} {Height + 12}\" role=\"img\" aria-label=\"Its path in {HtmlEncoder.Default.Encode(format.HandText(depth))} of water, strike zone {HtmlEncoder.Default.Encode(format.HandBand(water.StrikeZone.Top, water.StrikeZone.Bottom))}\"><rect class=\"sea\" width=\"{Width}\" height=\"{Height}\"/><rect class=\"zone\" y=\"{top:0.#}\" width=\"{Width}\" height=\"{Math.Max(1, bottom - top):0.#}\"/><path class=\"p\" d=\"{path}\"/><path class=\"bed\" d=\"M0 {Height}H{Width}\"/></svg>");
    }

    // What the sliders look up. All words are finished here.
    private static object Data(PocketSpot spot, UnitFormat format)
    {
        PocketTable table = spot.Table;
        Scenario scenario = spot.Scenario;
        Presentation way = spot.First.Rig.Presentation;
        List<object> axes = [];
        foreach ((PocketAxis axis, double own) in table.Axes.Zip(spot.Own))
        {
            double[] stops = Stops(axis);
            (string name, Func<double, string> words, double unit, string symbol) = Words(axis.Kind, scenario, format);
            axes.Add(new
            {
                Kind = axis.Kind.ToString().ToLowerInvariant(),
                Name = name,
                Steps = axis.Steps.Select(Round),
                Stops = stops.Select(Round),
                Labels = stops.Select(words),
                Computed = stops.Select(stop => axis.Steps.Any(step => Math.Abs(step - stop) < 1e-9) ? 1 : 0),
                Own = Array.FindIndex(stops, stop => Math.Abs(stop - own) < 1e-9),
                Unit = unit,
                Symbol = symbol,
                Low = $"Not computed below {words(axis.Steps[0])}. Nearest computed: {words(axis.Steps[0])}, shown.",
                High = $"Not computed past {words(axis.Steps[^1])}. Nearest computed: {words(axis.Steps[^1])}, shown.",
                Near = "Shown at the nearest step of the slider.",
            });
        }

        PocketAxis depthAxis = table.Axes.First(axis => axis.Kind == PocketAxisKind.Depth), flowAxis = table.Axes.First(axis => axis.Kind == PocketAxisKind.Current);
        double[] depthStops = Stops(depthAxis), flowStops = Stops(flowAxis);
        Spot[] waters = [.. depthStops.Select(depth => SpotChange.WithDepth(scenario.Spot, depth))];
        BenchQuestion question = new(BenchSettings.None, scenario, [.. table.Rigs.Select((rig, i) => new BenchLure(Name(rig, format), rig))], spot.Choice, 0, [], null, [], []);
        SceneView scene = WaterPicture.Scene(question, format);
        ColourChart chart = spot.Colors.Chart;
        return new
        {
            Axes = axes,
            Heads = table.Rigs.Select((rig, i) =>
            {
                (string light, string dark, int mark) = WaterPicture.Look(question, i);
                return new { Name = Name(rig, format), Method = (int)table.Methods[i], Color = light, DarkColor = dark, Marker = mark };
            }),
            table.Preferred,
            PocketTable.AsGood,
            Slices = table.Layout.Slices,
            Wanders = table.Layout.Wanders,
            Lowest = table.Layout.Lowest,
            Spread = table.Layout.Spread,
            Size = table.Layout.Size,
            Tallest = Round(table.Layout.Tallest),

            // Letters that need no escape in JSON, and that look like no address.
            Cells = System.Buffers.Text.Base64Url.EncodeToString(table.Packed()),
            Scene = scene,
            CastEnd = Round(way.LineLeftAtEnd),
            Waters = waters.Select(water => new { Depth = Cm(water.Depth), Grass = Cm(water.GrassHeight), ZoneTop = Cm(water.StrikeZone.Top), ZoneBottom = Cm(water.StrikeZone.Bottom), Low = Round(water.Depth - water.StrikeZone.Bottom), High = Round(water.Depth - water.StrikeZone.Top) }),
            Flows = flowStops.Select(flow => new { Words = Flow(flow, format) }),
            Shares = Enumerable.Range(0, 101).Select(percent => UnitFormat.PercentText(percent / 100.0)),
            Waits = Enumerable.Range(0, 255).Select(half => UnitFormat.SecondsText(half / 2.0)),
            Never = "never there",
            There = "there after",
            InZone = "in zone",
            Best = "Tie on",
            None = "No head in your box gets there.",
            Verdicts = Enum.GetValues<TrialVerdict>().Select(verdict => Verdict(verdict, scenario.Spot)),
            Hours = spot.Hours.Select(hour => new { Label = Clock(hour.Hours), Flow = Nearest(flowStops, hour.Current), Depth = Nearest(depthStops, hour.Depth) }),
            Colors = new
            {
                Title = "Colors where it runs",
                Depths = chart.Depths.Select(Round),
                Labels = chart.Depths.Select(depth => depth == 0 ? "surface" : format.HandText(depth)),
                Names = chart.Colours.Select(color => color.Name),
                Cells = Enumerable.Range(0, chart.Depths.Count).Select(row => Enumerable.Range(0, chart.Colours.Count).Select(column => new[] { chart[row, column].EyeSwatch.Hex.ToLowerInvariant(), ColourWords.Text(chart[row, column].Word) })),
            },
            Error = ErrorWords(table, format),
            At = "computed here",
            Read = "read off between computed steps",
        };
    }

    private static string Verdict(TrialVerdict verdict, Spot spot) => verdict switch
    {
        TrialVerdict.NotComputed => "not computed",
        TrialVerdict.BelowZone => "runs below",
        TrialVerdict.NeverDownToZone => "never gets there",
        TrialVerdict.DragsInGrass => "in the grass",
        TrialVerdict.PlodsOnBottom => spot.StrikeZone.Bottom >= spot.Depth - 0.1 ? "on bottom" : "drags bottom",
        TrialVerdict.TouchesBottom => "ticks bottom",
        TrialVerdict.MostlyAbove => "mostly above",
        TrialVerdict.MostlyBelow => "mostly below",
        TrialVerdict.RunsClear => "runs clean",
        TrialVerdict.PartlyInZone => "partly in zone",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };

    private static (string Name, Func<double, string> Words, double Unit, string Symbol) Words(PocketAxisKind kind, Scenario scenario, UnitFormat format)
    {
        bool us = format.System == UnitSystem.Us;
        const double Knot = 1852.0 / 3600, Foot = 0.3048;
        return kind switch
        {
            PocketAxisKind.Current => ("Current", value => Flow(value, format), us ? Knot : 1, us ? "knots" : "m/s"),
            PocketAxisKind.Depth => ("Depth", format.HandText, us ? Foot : 1, us ? "feet" : "m"),
            PocketAxisKind.Speed => ("Reel", value => RetrieveWords.Pace(value, scenario.Tackle.Reel, format), us ? Foot : 1, us ? "feet a second" : "m/s"),
            PocketAxisKind.Cast => ("Cast", format.HandText, us ? Foot : 1, us ? "feet" : "m"),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not an axis."),
        };
    }

    /// <summary>Stops of a slider: the computed steps and some between them.</summary>
    internal static double[] Stops(PocketAxis axis)
    {
        List<double> stops = [axis.Steps[0]];
        for (int i = 1; i < axis.Steps.Count; i++)
        {
            for (int k = 1; k < Between; k++) stops.Add(axis.Steps[i - 1] + ((axis.Steps[i] - axis.Steps[i - 1]) * k / Between));
            stops.Add(axis.Steps[i]);
        }

        return [.. stops];
    }

    private static int Nearest(double[] stops, double value) => Enumerable.Range(0, stops.Length).MinBy(i => Math.Abs(stops[i] - value));

    // Nine digits: an interpolation in the page is the same as here to 1e-6.
    private static double Round(double value) => Math.Round(value, 9);

    private static int Cm(double metres) => (int)Math.Round(100 * metres);

    // One classic script: a page that is opened from a file may load no module.
    private static string Script() =>
        "(function(){\"use strict\";\n" + Assets.Text("scene.js").Replace("export function", "function", StringComparison.Ordinal) + "\n" + Assets.Text("pocket.js") + "\n})();";
}
