using System.Globalization;
using LureSim.Model;
using LureSim.Scenarios;
using YamlDotNet.RepresentationModel;
using YamlNode = YamlDotNet.RepresentationModel.YamlNode;

namespace LureSim.Workbench.Bench;

/// <summary>
/// A scenario file with some of its values changed. The changes are made in the text, and the text is read like any file: what is drawn and what is saved are
/// the same thing.
/// </summary>
internal sealed class ScenarioText
{
    private readonly YamlMappingNode root;

    /// <summary>Takes a text that the reader has accepted.</summary>
    /// <param name="text">The file.</param>
    public ScenarioText(string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        root = (YamlMappingNode)stream.Documents[0].RootNode;

        // A current in one line becomes keys, so that one of them can be changed.
        if (root.Children.TryGetValue("spot", out YamlNode? spot) && spot is YamlMappingNode map && Get(map, "current") is { } line)
        {
            var keys = new YamlMappingNode();
            foreach ((string key, string value) in PhraseBook.Current.Split(line.Trim()) ?? [("speed", line)]) Set(keys, key, value);
            map.Children["current"] = keys;
        }
    }

    /// <summary>Sets the length of a cast; the lure with which it is known stays.</summary>
    /// <param name="presentation">The presentation.</param>
    /// <param name="length">The length.</param>
    public static void SetCast(YamlMappingNode presentation, string length)
    {
        string? with = Get(presentation, "cast") is { } line ? PhraseBook.Cast.Split(line.Trim())?.FirstOrDefault(part => part.Key == "with").Text
            : presentation.Children.TryGetValue("cast", out YamlNode? keys) && keys is YamlMappingNode map ? Get(map, "with") : null;
        Set(presentation, "cast", with is null ? length : $"{length} with {with}");
    }

    /// <summary>The scenario as a file.</summary>
    public string Text
    {
        get
        {
            using var writer = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
            new YamlStream(new YamlDocument(root)).Save(writer, assignAnchors: false);

            // The emitter ends the document with a line of three dots.
            string text = writer.ToString();
            return text.EndsWith("...\n", StringComparison.Ordinal) ? text[..^4] : text;
        }
    }

    /// <summary>The spot.</summary>
    public YamlMappingNode Spot => Map(root, "spot");

    /// <summary>The tackle.</summary>
    public YamlMappingNode Tackle => Map(root, "tackle");

    /// <summary>Takes out what was seen: it belongs to water as deep as it was then.</summary>
    public void ForgetSeen() => Remove(root, "seen");

    /// <summary>Adds what was seen.</summary>
    /// <param name="item">The item, as a scenario writes it on one line.</param>
    /// <param name="bait">Label of the soft bait in the hand; null for the first of the box.</param>
    /// <param name="presentation">Name of the presentation in the hand; null for the first of the file.</param>
    public void AddSeen(string item, string? bait, string? presentation)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(item));
        var made = (YamlMappingNode)stream.Documents[0].RootNode;
        bool fished = Get(made, "jig_head") is not null;
        if (fished && bait is not null) Set(made, "bait", bait);
        if (fished && presentation is not null) Set(made, "presentation", presentation);
        if (!root.Children.TryGetValue("seen", out YamlNode? found) || found is not YamlSequenceNode list) root.Children["seen"] = list = [];
        list.Style = YamlDotNet.Core.Events.SequenceStyle.Block;
        list.Add(made);
    }

    /// <summary>Gives the scenario another title.</summary>
    /// <param name="title">The title.</param>
    public void SetTitle(string title) => Set(root, "title", title);

    /// <summary>One of the presentations.</summary>
    /// <param name="index">Its place in the file.</param>
    public YamlMappingNode Presentation(int index) => (YamlMappingNode)((YamlSequenceNode)root["presentations"])[index];

    /// <summary>Sets a value.</summary>
    /// <param name="map">Where.</param>
    /// <param name="key">Key.</param>
    /// <param name="value">Value as a scenario writes it.</param>
    public static void Set(YamlMappingNode map, string key, string value) => map.Children[key] = new YamlScalarNode(value);

    /// <summary>Takes a key out.</summary>
    /// <param name="map">Where.</param>
    /// <param name="key">Key.</param>
    public static void Remove(YamlMappingNode map, string key) => map.Children.Remove(new YamlScalarNode(key));

    /// <summary>The mapping under a key, made where there is none.</summary>
    /// <param name="map">Where.</param>
    /// <param name="key">Key.</param>
    public static YamlMappingNode Map(YamlMappingNode map, string key)
    {
        if (map.Children.TryGetValue(key, out YamlNode? found) && found is YamlMappingNode inner) return inner;
        var made = new YamlMappingNode();
        map.Children[key] = made;
        return made;
    }

    /// <summary>A value, or null.</summary>
    /// <param name="map">Where.</param>
    /// <param name="key">Key.</param>
    public static string? Get(YamlMappingNode map, string key) => map.Children.TryGetValue(key, out YamlNode? found) && found is YamlScalarNode text ? text.Value : null;

    /// <summary>Sets the edges of the strike zone in the form that the file has, and keeps them and the grass inside the water.</summary>
    /// <param name="depth">Depth of the water (m).</param>
    /// <param name="grass">Height of the grass (m).</param>
    /// <param name="zone">The zone of the file.</param>
    /// <param name="upper">Other upper edge, in the form of the file (m); null for the file's.</param>
    /// <param name="lower">Other lower edge, in the form of the file (m); null for the file's.</param>
    /// <param name="fileDepth">Depth of the water in the file (m).</param>
    public void FitZone(double depth, double grass, StrikeZone zone, double? upper, double? lower, double fileDepth)
    {
        const double Least = 0.05;
        double top, bottom;
        if (zone.MovesWithBottom)
        {
            double low = Math.Clamp(lower ?? (fileDepth - zone.Bottom), 0, depth - Least);
            double high = Math.Max(low + Least, Math.Min(upper ?? (fileDepth - zone.Top), depth));
            (top, bottom) = (low, high);
        }
        else
        {
            double high = Math.Clamp(upper ?? zone.Top, 0, depth - Least);
            double low = Math.Max(high + Least, Math.Min(lower ?? zone.Bottom, depth));
            (top, bottom) = (high, low);
        }

        Map(Spot, "strike_zone").Children[zone.MovesWithBottom ? "above_bottom" : "depth"] = new YamlSequenceNode(new YamlScalarNode(Metres(top)), new YamlScalarNode(Metres(bottom))) { Style = YamlDotNet.Core.Events.SequenceStyle.Flow };
        const double MostGrass = 0.9;
        if (grass >= depth) Set(Spot, "grass_height", Metres(MostGrass * depth));
    }

    /// <summary>The size of a text (SI); not a number where it is none.</summary>
    /// <param name="kind">What it measures.</param>
    /// <param name="text">The text.</param>
    public static double Size(QuantityKind kind, string text) => QuantityReader.Read(kind, text) is { IsValid: true } reading ? reading.Value : double.NaN;

    private static string Metres(double value) => value.ToString("0.####", CultureInfo.InvariantCulture) + " m";
}
