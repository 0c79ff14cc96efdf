using System.Reflection;
using System.Runtime.CompilerServices;
using LureSim.Model;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Conventions;

/// <summary>A record of the model cannot hold a bad value, whichever way it was made.</summary>
public class ModelRecordTests
{
    private static readonly Scenario Whole = TestScenario.Read(TestScenario.Text);

    // One good record of each type.
    private static readonly object[] Good =
    [
        Whole,
        Whole.Spot,
        Whole.Spot.StrikeZone,
        new BottomProfile { Points = [new(0, 1), new(9, 3)], Stretches = [new(2, 4)] },
        new ProfilePoint(9, 3),
        new BottomStretch(2, 4) { GrassHeight = 0.2 },
        new SpotStructure(StructureKind.Posts, 2, 4) { ShadeFrom = 1, ShadeTo = 3 },
        new SecchiClarity(2, WaterKind.CoastalGreen),
        new JerlovClarity(JerlovType.II),
        new ConstituentClarity(1e-6, 0.2, 1e-3),
        new SkyByElevation(0.5),
        new SkyByClock(new DateTimeOffset(2026, 6, 14, 6, 20, 0, TimeSpan.FromHours(-4)), 0.5, -1.3),
        Whole.Tackle,
        FishingRig.Of(Whole.Tackle, Whole.Tackle.JigHeads[1], Whole.Tackle.Bodies[0]),
        Whole.Tackle.Reel,
        Whole.Tackle.Line,
        Whole.Tackle.Leader!,
        Whole.Tackle.JigHeads[1],
        Whole.Tackle.Bodies[0],
        new LipShape(0.02, 0.01, 0.8),
        Whole.Tackle.Rigging with { ShankShare = 0.4, HookGape = 0.015, WeightStation = 0.4 },
        Whole.Presentations[1] with { TimeLimit = 60 },
        Whole.Presentations[1].Moves[0],
        RetrieveStyle.All[^1] with { Speed = 0.4 },
        new MeasuredColour("my lure", [400, 700], [0.1, 0.6]),
        new PatternSpecification("shiner", "green", "white", "white", null),
        new ForageSighting(ForageKind.Shrimp, 0.05, ForageSeen.Present),
        new ComparedRig("mine", Whole.Tackle.JigHeads[1], Whole.Tackle.Bodies[0], "white", Whole.Tackle.Line, null, Whole.Presentations[0]),
        Whole.Uncertainty,
        Whole.Uncertainty.Cast,
        new TidePoint(6, 1, 0.2),
        new Rod(2.1, 0.007, 0.018),
        new CastAnchor(Whole.Tackle.JigHeads[1], Whole.Tackle.Bodies[0]) { Mass = 0.01 },
        new Observation { Kind = ObservationKind.PoolFall, Value = 3, Length = 2, Error = 0.2 },
        new MeasuredDrag(1.2, 0.1),
        new HandRanges { SinkCount = new ValueRange(2, 8), ReelSpeed = new ValueRange(0.3, 0.6) },
        new LearnedTry(0.4, 3, 1, 0.5, new Dictionary<string, double>()),
    ];

    // Infinite where the documentation says what that means.
    private static readonly string[] Endless = ["Move.Duration", "RetrieveStyle.CountDown"];

    public static TheoryData<string> Records => [.. Good.Select(record => record.GetType().Name)];

    private static object Of(string record) => Good.First(item => item.GetType().Name == record);

    [Fact]
    public void Every_record_of_the_model_is_looked_at()
    {
        IEnumerable<string> records = typeof(Scenario).Assembly.GetExportedTypes()
            .Where(type => type.Namespace == "LureSim.Model" && type is { IsClass: true, IsAbstract: false } && type.GetMethod("<Clone>$") is not null)
            .Select(type => type.Name);
        Assert.Equal(records.Order(StringComparer.Ordinal), Good.Select(record => record.GetType().Name).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Records))]
    public void A_copy_with_a_bad_number_is_refused_by_name(string record)
    {
        object good = Of(record);
        foreach (PropertyInfo property in Settable(good.GetType()).Where(property => IsNumber(property.PropertyType)))
        {
            foreach (double bad in Bad($"{record}.{property.Name}"))
                Refused<ArgumentOutOfRangeException>(property.Name, () => property.SetValue(Clone(good), bad));
        }
    }

    [Theory]
    [MemberData(nameof(Records))]
    public void A_new_record_with_a_bad_number_is_refused_by_name(string record)
    {
        object good = Of(record);
        foreach (ConstructorInfo constructor in good.GetType().GetConstructors())
        {
            ParameterInfo[] parameters = constructor.GetParameters();
            object?[] values = [.. parameters.Select(parameter => good.GetType().GetProperty(parameter.Name!, BindingFlags.Public | BindingFlags.Instance | BindingFlags.IgnoreCase)!.GetValue(good))];
            for (int i = 0; i < parameters.Length; i++)
            {
                if (!IsNumber(parameters[i].ParameterType)) continue;
                foreach (double bad in Bad($"{record}.{parameters[i].Name}"))
                {
                    object?[] with = [.. values];
                    with[i] = bad;
                    Refused<ArgumentOutOfRangeException>(parameters[i].Name!, () => constructor.Invoke(with));
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Records))]
    public void A_word_that_the_enum_lacks_and_a_missing_part_are_refused_by_name(string record)
    {
        object good = Of(record);
        var nullability = new NullabilityInfoContext();
        foreach (PropertyInfo property in Settable(good.GetType()))
        {
            Type type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
            if (type.IsEnum)
                Refused<ArgumentOutOfRangeException>(property.Name, () => property.SetValue(Clone(good), Enum.ToObject(type, 99)));
            else if (!type.IsValueType && nullability.Create(property).ReadState == NullabilityState.NotNull)
                Refused<ArgumentNullException>(property.Name, () => property.SetValue(Clone(good), null));
        }
    }

    [Fact]
    public void What_does_not_fit_together_is_refused()
    {
        Refuses(nameof(Scenario.Spot), () => Whole with { Spot = Whole.Spot with { GrassHeight = Whole.Spot.Depth } });
        Refuses(nameof(Scenario.Spot), () => Whole with { Spot = Whole.Spot with { StrikeZone = new StrikeZone(1, 20) } });
        Refuses(nameof(Spot.StrikeZone), () => Whole.Spot with { StrikeZone = new StrikeZone(2, 1) });
        Refuses(nameof(Scenario.Presentations), () => Whole with { Presentations = [] });
        Refuses(nameof(TackleBox.Bodies), () => Whole.Tackle with { Bodies = [] });
        Refuses(nameof(TackleBox.Colours), () => Whole.Tackle with { Colours = [] });
        Refuses(nameof(Presentation.Moves), () => Whole.Presentations[0] with { Moves = [] });
        Refuses(nameof(MeasuredColour.WavelengthsNm), () => new MeasuredColour("my lure", [400], [0.1]));
        Refuses(nameof(MeasuredColour.WavelengthsNm), () => new MeasuredColour("my lure", [700, 400], [0.1, 0.6]));
        Refuses(nameof(MeasuredColour.WavelengthsNm), () => new MeasuredColour("my lure", [400, double.NaN], [0.1, 0.6]));
        Refuses(nameof(MeasuredColour.Reflectances), () => new MeasuredColour("my lure", [400, 700], [0.1]));
        Refuses(nameof(MeasuredColour.Reflectances), () => new MeasuredColour("my lure", [400, 700], [0.1, 1.1]));
        Refuses(nameof(MeasuredColour.Reflectances), () => new MeasuredColour("my lure", [400, 700], [double.NaN, 0.1]));
        Refuses(nameof(JigHead.Mass), () => Whole.Tackle.JigHeads[0] with { Mass = 1e-4 });

        static void Refuses(string name, Func<object> make) => Assert.Equal(name, Assert.ThrowsAny<ArgumentException>(make).ParamName);
    }

    private static IEnumerable<double> Bad(string member) =>
        new[] { double.NaN, double.NegativeInfinity, double.PositiveInfinity }.Where(value => !(value > 0 && Endless.Contains(member)));

    private static bool IsNumber(Type type) => type == typeof(double) || type == typeof(double?);

    private static IEnumerable<PropertyInfo> Settable(Type type) => type.GetProperties()
        .Where(property => property.SetMethod is { IsPublic: true } set && set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)));

    private static object Clone(object record) => record.GetType().GetMethod("<Clone>$")!.Invoke(record, null)!;

    private static void Refused<TException>(string name, Action make)
        where TException : ArgumentException
    {
        Exception? thrown = Assert.Throws<TargetInvocationException>(make).InnerException;
        Assert.Equal(name, Assert.IsType<TException>(thrown).ParamName);
    }
}
