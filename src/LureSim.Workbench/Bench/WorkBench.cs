using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Scenarios;
using YamlDotNet.RepresentationModel;

namespace LureSim.Workbench.Bench;

/// <summary>A scenario on the bench: knobs, and the question that they ask together. Thread-safe; the same settings give the same question.</summary>
internal sealed class WorkBench
{
    private const string Remark = "# luresim open: ";

    // A bound on memory; a question is some kilobytes.
    private const int MostKept = 200;

    private readonly string text;
    private readonly ConcurrentDictionary<string, BenchQuestion> kept = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, IReadOnlyList<Knob>> knobs = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<int, Presentation> marks = new();

    /// <summary>Puts a scenario on the bench.</summary>
    /// <param name="text">Text of the file, which the reader has accepted.</param>
    /// <param name="path">Its path: tables that it names are looked for beside it.</param>
    /// <param name="scenario">What was read.</param>
    /// <param name="units">Units of the words.</param>
    public WorkBench(string text, string path, Scenario scenario, UnitSystem units)
    {
        this.text = text;
        Path = path;
        Scenario = scenario;
        Units = units;
        Opened = Remembered(text);
    }

    /// <summary>Path of the file.</summary>
    public string Path { get; }

    /// <summary>The scenario of the file.</summary>
    public Scenario Scenario { get; }

    /// <summary>Units of the words.</summary>
    public UnitSystem Units { get; }

    /// <summary>Settings that a saved file was drawn with; empty for any other file.</summary>
    public BenchSettings Opened { get; }

    /// <summary>What is shown at first, where no setting says otherwise: found once.</summary>
    public BenchSettings Start { get; private set; } = BenchSettings.None;

    /// <summary>Reads a file for the bench.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="problems">What is wrong with it; empty where nothing is.</param>
    public static WorkBench? Read(string path, UnitSystem units, out IReadOnlyList<ScenarioProblem> problems)
    {
        ScenarioReading reading = ScenarioReader.Read(path);
        problems = reading.Problems;
        return reading.Scenario is { } scenario ? new WorkBench(File.ReadAllText(path), path, scenario, units) : null;
    }

    /// <summary>Sets what is shown at first.</summary>
    /// <param name="start">Retrieve, soft bait and head.</param>
    public void BeginWith(BenchSettings start) => Start = start;

    /// <summary>The question that the settings ask. Values are put on the nearest step of their knobs; what is unknown is left out.</summary>
    /// <param name="settings">Settings from the page.</param>
    public BenchQuestion Ask(BenchSettings settings)
    {
        BenchSettings wanted = Start.With(settings);
        string key = wanted.ToString();
        if (kept.TryGetValue(key, out BenchQuestion? known)) return known;
        if (kept.Count > MostKept) kept.Clear();
        return kept[key] = Build(wanted);
    }

    /// <summary>The knobs with a presentation in the hand.</summary>
    /// <param name="retrieve">Its place in the file.</param>
    public IReadOnlyList<Knob> Knobs(int retrieve) => knobs.GetOrAdd(retrieve.ToString(CultureInfo.InvariantCulture), _ =>
    {
        LureBody? soft = BodyChoice.Of(Scenario).Soft;
        LureBody[] baits = [.. Scenario.Tackle.Bodies.Where(body => body.NeedsHead)];
        return KnobCatalogue.Of(Scenario, retrieve, marks.GetValueOrDefault(retrieve), [.. LuresOf(Scenario, soft).Select(lure => lure.Name)], soft is null ? -1 : Array.IndexOf(baits, soft), Units);
    });

    /// <summary>Gives the knobs the steps at which a choice has its hands, so that the choice itself can be shown.</summary>
    /// <param name="retrieve">Place of its presentation in the file.</param>
    /// <param name="way">The choice's presentation.</param>
    public void Mark(int retrieve, Presentation way)
    {
        marks[retrieve] = way;
        knobs.Clear();
        kept.Clear();
    }

    /// <summary>The hands of a presentation that have knobs.</summary>
    /// <param name="way">The presentation.</param>
    public static IEnumerable<(string Id, string Value)> HandsOf(Presentation way)
    {
        yield return (KnobIds.Count, way.CountDown is { } count ? KnobCatalogue.Written(count, "s") : KnobIds.ToBottom);
        if (way.RetrieveSpeed > 0) yield return (KnobIds.Speed, KnobCatalogue.Written(way.RetrieveSpeed, "m/s"));
        if (MovesText.LiftOf(way) is { } lift) yield return (KnobIds.Lift, KnobCatalogue.Written(lift, "m"));
        if (MovesText.RestOf(way) is { } rest) yield return (KnobIds.Rest, KnobCatalogue.Written(rest, "s"));
        yield return (KnobIds.Aim, KnobCatalogue.Written(KnobCatalogue.Turned(way.Aim) * 180 / Math.PI, "deg"));
    }

    /// <summary>A file of the question, with a new title.</summary>
    /// <param name="question">The question.</param>
    /// <param name="title">Its title.</param>
    public string FileOf(BenchQuestion question, string title)
    {
        ScenarioText changed = Changed(question.Settings, question.Retrieve, question.Knobs);
        foreach (string note in question.Notes) Note(changed, note, question.Soft, question.Retrieve);
        changed.SetTitle(title);
        var file = new StringBuilder();
        foreach (string line in text.Split('\n').TakeWhile(line => line.StartsWith('#')))
        {
            if (line.StartsWith("# yaml-language-server:", StringComparison.Ordinal)) file.Append(line.TrimEnd('\r')).Append('\n');
        }

        file.Append("# Written by \"luresim open\" from \"").Append(Scenario.Title).Append("\". The next line tells the page what was shown.\n");
        file.Append(Remark).Append(question.Settings.Only(KnobIds.Retrieve, KnobIds.Bait, KnobIds.Head)).Append('\n');
        file.Append(changed.Text);
        return file.ToString();
    }

    /// <summary>The lures that are compared, light to heavy, each with a name of its own.</summary>
    private static List<(JigHead Head, LureBody Body, string Name)> LuresOf(Scenario scenario, LureBody? soft)
    {
        (JigHead Head, LureBody Body)[] lures = [.. scenario.Tackle.LuresWith(soft).OrderBy(lure => lure.Body.NeedsHead ? lure.Head.Mass : lure.Body.Kind.Mass(lure.Body))];
        var named = new List<(JigHead, LureBody, string)>();
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach ((JigHead head, LureBody body) in lures)
        {
            string name = head.IsNone ? body.Label : head.Label;
            for (int i = 2; !used.Add(name); i++) name = string.Create(CultureInfo.InvariantCulture, $"{head.Label} ({i})");
            named.Add((head, body, name));
        }

        return named;
    }

    private BenchQuestion Build(BenchSettings wanted)
    {
        int retrieve = Math.Max(0, Scenario.Presentations.ToList().FindIndex(p => p.Name == wanted[KnobIds.Retrieve]));
        IReadOnlyList<Knob> all = Knobs(retrieve);
        BenchSettings settings = BenchSettings.None;
        foreach (Knob knob in all)
        {
            if (wanted[knob.Id] is not { } value) continue;
            int at = knob.Find(value, value == KnobCatalogue.Own ? double.NaN : SizeOf(knob.Id, value));
            if (at >= 0 && (at != knob.FromFile || knob.Id is KnobIds.Retrieve or KnobIds.Bait or KnobIds.Head)) settings = settings.With(knob.Id, knob.Stops[at].Value);
        }

        ScenarioText changed = Changed(settings, retrieve, all);
        ScenarioReading reading = ScenarioReader.ReadText(changed.Text, Path);
        Scenario scenario = reading.Scenario ?? Scenario;
        LureBody? soft = scenario.Tackle.Bodies.FirstOrDefault(body => body.NeedsHead && body.Label == settings[KnobIds.Bait]) ?? BodyChoice.Of(scenario).Soft;
        IReadOnlyList<string> notes = [];
        if (reading.Scenario is not null && wanted.Notes.Count > 0) (notes, scenario) = Noted(scenario, settings, wanted.Notes, soft, retrieve, all);
        List<(JigHead Head, LureBody Body, string Name)> lures = LuresOf(scenario, soft);
        Presentation way = scenario.Presentations[retrieve];
        BenchLure[] rows = [.. lures.Select(lure => new BenchLure(lure.Name, new Rig(lure.Head, lure.Body, way)))];
        int focus = Math.Max(0, Array.FindIndex(rows, row => row.Name == settings[KnobIds.Head]));
        return new BenchQuestion(settings, scenario, rows, focus, retrieve, all, soft, notes, reading.Scenario is null ? reading.Problems : []);
    }

    // A note that the scenario cannot have is left out alone.
    private (IReadOnlyList<string> Notes, Scenario Scenario) Noted(Scenario without, BenchSettings settings, IReadOnlyList<string> wanted, LureBody? soft, int retrieve, IReadOnlyList<Knob> all)
    {
        if (With(wanted) is { } whole) return (wanted, whole);
        List<string> notes = [];
        Scenario scenario = without;
        foreach (string note in wanted)
        {
            if (With([.. notes, note]) is not { } noted) continue;
            notes.Add(note);
            scenario = noted;
        }

        return (notes, scenario);

        Scenario? With(IReadOnlyList<string> some)
        {
            ScenarioText file = Changed(settings, retrieve, all);
            return some.All(note => Note(file, note, soft, retrieve)) ? ScenarioReader.ReadText(file.Text, Path).Scenario : null;
        }
    }

    private bool Note(ScenarioText file, string note, LureBody? soft, int retrieve)
    {
        if (QuickObservation.Read(note) is not { IsValid: true } read) return false;
        LureBody? first = Scenario.Tackle.Bodies.FirstOrDefault(body => body.NeedsHead);
        file.AddSeen(read.Item, soft is null || soft.Label == first?.Label ? null : soft.Label, retrieve == 0 ? null : Scenario.Presentations[retrieve].Name);
        return true;
    }

    private ScenarioText Changed(BenchSettings settings, int retrieve, IReadOnlyList<Knob> all)
    {
        var file = new ScenarioText(text);
        YamlMappingNode spot = file.Spot, way = file.Presentation(retrieve);
        Spot own = Scenario.Spot;
        double depth = own.Depth;
        Presentation asIs = Scenario.Presentations[retrieve], moved = asIs;
        foreach (Knob knob in all)
        {
            if (settings[knob.Id] is not { } value || value is KnobCatalogue.Own or KnobIds.AsInFile || knob.Stops[knob.FromFile].Value == value) continue;
            switch (knob.Id)
            {
                case KnobIds.Current:
                    YamlMappingNode current = ScenarioText.Map(spot, "current");
                    ScenarioText.Set(current, "speed", value);
                    if (ScenarioText.Get(current, "direction") is null) ScenarioText.Set(current, "direction", "left");
                    break;
                case KnobIds.Direction:
                    current = ScenarioText.Map(spot, "current");
                    ScenarioText.Set(current, "direction", value);
                    if (ScenarioText.Get(current, "speed") is null) ScenarioText.Set(current, "speed", "0 kn");
                    break;
                case KnobIds.Depth:
                    ScenarioText.Set(spot, "depth", value);
                    depth = SizeOf(knob.Id, value);
                    file.ForgetSeen();
                    break;
                case KnobIds.Clarity:
                    ScenarioText.Set(ScenarioText.Map(spot, "clarity"), "secchi", value);
                    break;
                case KnobIds.Wind:
                    YamlMappingNode wind = ScenarioText.Map(spot, "wind");
                    ScenarioText.Set(wind, "speed", value);
                    if (ScenarioText.Get(wind, "direction") is null) ScenarioText.Set(wind, "direction", "left");
                    break;
                case KnobIds.Sun:
                    ScenarioText.Set(ScenarioText.Map(spot, "light"), "sun_elevation", value);
                    break;
                case KnobIds.Temperature:
                    ScenarioText.Set(spot, "temperature", value);
                    break;
                case KnobIds.Count:
                    ScenarioText.Set(way, "count_down", value);
                    break;
                case KnobIds.Cast:
                    ScenarioText.SetCast(way, value);
                    break;
                case KnobIds.Speed:
                    YamlMappingNode reel = ScenarioText.Map(way, "retrieve");
                    ScenarioText.Remove(reel, "handle_turns");
                    ScenarioText.Set(reel, "speed", value);
                    break;
                case KnobIds.Aim:
                    ScenarioText.Set(way, "aim", KnobCatalogue.Written((SizeOf(knob.Id, value) * 180 / Math.PI + 360) % 360, "deg"));
                    break;
                case KnobIds.Lift:
                    moved = MovesText.Lifted(moved, SizeOf(knob.Id, value));
                    break;
                case KnobIds.Rest:
                    moved = MovesText.Rested(moved, SizeOf(knob.Id, value));
                    break;
                case KnobIds.Line:
                    YamlMappingNode line = ScenarioText.Map(file.Tackle, "line");
                    ScenarioText.Remove(line, "diameter");
                    ScenarioText.Set(line, "strength", value);
                    break;
                case KnobIds.Knot:
                    YamlMappingNode rigging = ScenarioText.Map(file.Tackle, "rigging");
                    ScenarioText.Remove(rigging, "loop_length");
                    ScenarioText.Set(rigging, "knot", value);
                    break;
                case KnobIds.Hook:
                    Rig(ScenarioText.Map(file.Tackle, "rigging"), value);
                    break;
                case KnobIds.ZoneTop or KnobIds.ZoneBottom or KnobIds.Head or KnobIds.Bait or KnobIds.Retrieve:
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(settings), knob.Id, "Not a knob.");
            }
        }

        if (moved != asIs)
        {
            if (settings[KnobIds.Speed] is { } speed && speed != KnobCatalogue.Own) moved = moved with { RetrieveSpeed = SizeOf(KnobIds.Speed, speed) };
            MovesText.Write(way, moved);
        }

        // A zone that a rule fills in stays with the rule until a hand moves it.
        bool filled = own.StrikeZone.AssumedBy is not null;
        if ((settings[KnobIds.Depth] is not null && !filled) || settings[KnobIds.ZoneTop] is not null || settings[KnobIds.ZoneBottom] is not null)
            file.FitZone(depth, own.GrassHeight, own.StrikeZone, Edge(KnobIds.ZoneTop), Edge(KnobIds.ZoneBottom), own.Depth);
        return file;

        double? Edge(string id) => settings[id] is { } edge && edge != KnobCatalogue.Own ? SizeOf(id, edge) : null;
    }

    // Faults of a size that the class sees: a hook a sixth of an inch off, a bait bent as it dries in the bag.
    private static void Rig(YamlMappingNode rigging, string value)
    {
        foreach (string key in (string[])["exit_sideways", "exit_above", "bend", "point_lean", "head_turn", "pulled_up", "tail_lost"]) ScenarioText.Remove(rigging, key);
        if (value == KnobIds.OffCenter) ScenarioText.Set(rigging, "exit_sideways", "4 mm");
        else if (value == KnobIds.Bent) ScenarioText.Set(rigging, "bend", "15 deg");
        else if (rigging.Children.Count == 0) ScenarioText.Set(rigging, "knot", "loop");
    }

    private static double SizeOf(string id, string value) => id switch
    {
        KnobIds.Current or KnobIds.Wind or KnobIds.Speed => ScenarioText.Size(QuantityKind.Speed, value),
        KnobIds.Depth or KnobIds.Clarity or KnobIds.Cast or KnobIds.ZoneTop or KnobIds.ZoneBottom => ScenarioText.Size(QuantityKind.Length, value),
        KnobIds.Lift => ScenarioText.Size(QuantityKind.Length, value),
        KnobIds.Rest => ScenarioText.Size(QuantityKind.Duration, value),
        KnobIds.Aim => ScenarioText.Size(QuantityKind.Angle, value),
        KnobIds.Count => value == KnobIds.ToBottom ? double.PositiveInfinity : ScenarioText.Size(QuantityKind.Duration, value),
        KnobIds.Line => ScenarioText.Size(QuantityKind.LineStrength, value),
        KnobIds.Sun => ScenarioText.Size(QuantityKind.Angle, value),
        _ => double.NaN,
    };

    private static BenchSettings Remembered(string text)
    {
        foreach (string line in text.Split('\n').Take(20))
        {
            if (line.StartsWith(Remark, StringComparison.Ordinal)) return BenchSettings.Parse(line[Remark.Length..].Trim());
        }

        return BenchSettings.None;
    }
}
