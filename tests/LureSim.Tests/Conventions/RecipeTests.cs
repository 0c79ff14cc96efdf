using System.Reflection;
using LureSim.Cli.Commands;
using LureSim.Decision.Comparison;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Hydrodynamics;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Swimming;
using LureSim.Tests.Scenarios;
using Spectre.Console.Cli;

namespace LureSim.Tests.Conventions;

/// <summary>The recipes of the contributor guide: who leaves a step out of one is told here which.</summary>
public class RecipeTests
{
    private const string Colours = "  colours: [white, dark purple, \"#7FFF00\"]";

    private static readonly string[] NoFaults = [nameof(Rigging.LoopLength), nameof(Rigging.ShankShare), nameof(Rigging.HookGape), nameof(Rigging.WeightStation)];

    private static IEnumerable<PropertyInfo> Faults => typeof(Rigging).GetProperties().Where(p => p.CanWrite && (p.PropertyType == typeof(double) || p.PropertyType == typeof(double?)) && !NoFaults.Contains(p.Name));

    /// <summary>Every figure of a rigging that is a fault.</summary>
    public static TheoryData<string> FaultNames => [.. Faults.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(FaultNames))]
    public void A_rigging_fault_is_read_cleaned_tried_without_and_worded(string name)
    {
        PropertyInfo fault = typeof(Rigging).GetProperty(name)!;
        string key = string.Concat(name.Select((c, i) => i > 0 && char.IsUpper(c) ? "_" + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
        GrammarKey? inGrammar = RiggingGrammar.Rigging.Keys.FirstOrDefault(k => k.Name == key);
        Assert.True(inGrammar is not null, $"RiggingGrammar has no key {key}.");
        string value = ((QuantityValue)inGrammar.Value).Kind switch { QuantityKind.Angle => "5 deg", QuantityKind.Percentage => "20 %", _ => "2 mm" };
        Scenario scenario = TestScenario.Read(TestScenario.With(Colours, $"  rigging: {{{key}: {value}}}\n{Colours}"));
        Rigging crooked = scenario.Tackle.Rigging;
        Assert.True((double)fault.GetValue(crooked)! > 0, $"RiggingReader.Build does not take {key}.");
        Assert.False(crooked.IsClean);
        Assert.True((double)fault.GetValue(crooked.Straightened())! == 0, $"Rigging.Straightened leaves {name}.");
        Assert.True(RigWords.Faults(crooked, new UnitFormat(UnitSystem.Us)).Any(), $"RigWords.Faults does not say {name}.");
        Assert.True(RigChecker.Trials(crooked, new Rig(scenario.Tackle.JigHeads[0], scenario.Tackle.Bodies[0], scenario.Presentations[0])).Exists(t => t.Fault.ToString() == name && t.Fixed == crooked.Straightened()), $"RigChecker.Trials does not take {name} away.");
    }

    [Fact]
    public void Every_fault_has_its_advice()
    {
        var report = new ActionReport { Verdict = ActionVerdict.Swims, Findings = [] };
        var same = new EnsembleAssessment(new ActionAssessment(null!, report), [report]);
        Assert.All(Enum.GetValues<RigFault>(), fault => Assert.NotEmpty(SwimmingWords.Fix(new RigFix(fault, 0.1, 0.4, same, same, new Rigging()), UnitSystem.Us)));
    }

    [Fact]
    public void Every_move_has_a_key_and_words()
    {
        var item = (MapValue)MoveGrammar.Moves.Item;
        foreach (MoveKind kind in Enum.GetValues<MoveKind>())
        {
            Assert.True(item.Keys.Any(key => string.Equals(key.Name, kind.ToString(), StringComparison.OrdinalIgnoreCase)), $"MoveGrammar has no move {kind}.");
            var retrieve = new Presentation
            {
                Name = "any",
                CastLength = 20,
                RetrieveSpeed = 0.5,
                Moves = [new Move { Kind = kind, Duration = 2, ReelShare = 1, Up = 0.3, Beats = kind == MoveKind.Twitch ? 1 : 0 }, new Move { Kind = MoveKind.Sweep, Duration = 1, Left = 0.5 }],
                TimeLimit = 60,
            };
            Assert.NotEmpty(RetrieveWords.Retrieve(retrieve, new Reel(5.2, 0.045), new UnitFormat(UnitSystem.Us)));
        }
    }

    [Fact]
    public void Every_kind_of_water_has_a_word_a_range_a_mixture_and_its_names()
    {
        WordValue words = ScenarioGrammar.WaterKinds;
        Assert.All(Enum.GetValues<WaterKind>(), kind =>
        {
            Assert.True(words.Words.Any(word => word.Meaning is WaterKind meant && meant == kind), $"ScenarioGrammar has no word for {kind}.");
            Assert.True(ScenarioBuilder.SecchiRange.ContainsKey(kind), $"ScenarioBuilder.SecchiRange has no {kind}.");
            Assert.NotNull(OpticalWater.Mixture(kind, 1));
            Assert.NotEmpty(LessonWords.Water(kind));
            Assert.NotEmpty(LightWords.Kind(kind));
            Assert.NotEmpty(SpotWords.KindName(kind));
        });
    }

    [Fact]
    public void Every_difference_between_rigs_is_looked_for_and_named()
    {
        Assert.Equal(Enum.GetValues<RigFeatureKind>(), RigFeature.All.Select(f => f.Kind).Order());
        Assert.All(Enum.GetValues<RigFeatureKind>(), kind => Assert.NotEmpty(ComparisonWords.Name(kind, UnitSystem.Us)));
    }

    [Fact]
    public void Every_law_of_drag_can_be_taken()
    {
        foreach (NormalDragLaw across in Enum.GetValues<NormalDragLaw>())
        {
            foreach (TangentialDragLaw along in Enum.GetValues<TangentialDragLaw>()) Assert.NotEmpty(LineDragLaw.Of(across, along).Name);
        }
    }

    [Fact]
    public void Every_ready_made_colour_is_in_the_list()
    {
        IEnumerable<string> missing = typeof(LureColours).GetProperties().Where(p => p.PropertyType == typeof(LureColour)).Select(p => (LureColour)p.GetValue(null)!)
            .Where(colour => !LureColours.All.Contains(colour)).Select(colour => colour.Name);
        Assert.True(!missing.Any(), "LureColours.All lacks " + string.Join(", ", missing));
    }

    [Fact]
    public void Every_command_is_in_the_catalogue() =>
        Assert.Equal(typeof(CommandCatalogue).Assembly.GetTypes().Count(type => !type.IsAbstract && type.IsAssignableTo(typeof(ICommand))), CommandCatalogue.All.Count);

    // A figure that no page, book or lesson draws is seen by nobody.
    [Fact]
    public void Every_figure_is_drawn_somewhere()
    {
        string figures = Path.Combine("src", "LureSim.Report", "Figures");
        string[] others = [.. Directory.EnumerateFiles(Repository.File("src"), "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal))];
        Dictionary<string, string> texts = others.ToDictionary(f => f, File.ReadAllText);
        foreach (Type type in typeof(Figure).Assembly.GetTypes().Where(t => t.Namespace == typeof(Figure).Namespace && t.GetMethod("Create", BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static)?.ReturnType == typeof(Figure)))
            Assert.True(texts.Any(t => Path.GetFileNameWithoutExtension(t.Key) != type.Name && t.Value.Contains(type.Name + ".Create(", StringComparison.Ordinal)), $"{figures}/{type.Name} is drawn nowhere.");
    }
}
