using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>The ranges that the records document, written down a second time so that a slip in the grammar shows.</summary>
internal static class ScenarioRanges
{
    public static void Assert(Scenario scenario)
    {
        NotBlank(scenario.Title);
        Spot spot = scenario.Spot;
        In(spot.Depth, 0.2, 60);
        In(spot.GrassHeight, 0, spot.Depth);
        In(spot.CurrentSpeed, 0, 3);
        In(spot.CurrentDirection, 0, 2 * Math.PI);
        In(spot.WindSpeed, 0, 25);
        In(spot.WindDirection, 0, 2 * Math.PI);
        In(spot.Salinity, 0, 42);
        In(spot.TemperatureCelsius, -2, 40);
        Clarity(spot.Clarity);
        Sky(spot.Sky);
        In(spot.CloudCover, 0, 1);
        In(spot.StrikeZone.Top, 0, spot.StrikeZone.Bottom);
        Xunit.Assert.True(spot.StrikeZone.Bottom > spot.StrikeZone.Top);
        In(spot.StrikeZone.Bottom, 0, spot.Depth);
        Xunit.Assert.Contains(spot.TargetFish, TargetFishNames.All);
        In(spot.TargetLength ?? 1, 0.1, 2.5);
        Xunit.Assert.All(scenario.Forage, item => In(item.Length ?? 0.1, 0.005, 0.5));
        Xunit.Assert.True(scenario.Compare.Count is 0 or 2);

        TackleBox tackle = scenario.Tackle;
        In(tackle.RodTipHeight, 0.1, 6);
        In(tackle.Reel.GearRatio, 2, 12);
        In(tackle.Reel.SpoolDiameter, 0.015, 0.15);
        In(tackle.Line.Strength, 4.448, 445);
        In(tackle.Line.Diameter, 0.00003, 0.0015);
        if (tackle.Leader is { } leader)
        {
            In(leader.Strength, 4.448, 445);
            In(leader.Diameter, 0.00003, 0.0015);
            In(leader.Length, 0.05, 5);
        }

        Xunit.Assert.True(tackle.JigHeads.Count > 0 || tackle.Bodies.All(body => !body.NeedsHead));
        foreach (JigHead head in tackle.JigHeads)
        {
            Xunit.Assert.True(head.Mass == 0 || head.Mass is >= 0.0005 and <= 0.2);
            In(head.HookMass, 0.00005, 0.02);
            NotBlank(head.Label);
        }

        Xunit.Assert.NotEmpty(tackle.Bodies);
        foreach (LureBody body in tackle.Bodies)
        {
            In(body.Length, 0.02, 0.3);
            In(body.Height, body.Kind.IsPlate ? 0.0003 : 0.002, body.Length);
            In(body.Width, 0.002, body.Length);
            In(body.Density, 800, body.Kind.IsPlate ? 9000 : 1400);
            Xunit.Assert.Equal(body.Kind.TakesFloat, body.Buoyancy is not null);
            Xunit.Assert.Equal(body.Kind.IsPlate, body.Metal is not null);
            NotBlank(body.Label);
        }

        Rigging rigging = tackle.Rigging;
        In(rigging.LoopLength, 0, 0.05);
        In(rigging.ShankShare ?? 0.5, 0.05, 0.95);
        In(rigging.ExitSideways, -0.015, 0.015);
        In(rigging.ExitAbove, -0.015, 0.015);
        In(Math.Abs(rigging.Bend), 0, Math.PI / 4);
        In(Math.Abs(rigging.PointLean), 0, Math.PI / 4);
        In(Math.Abs(rigging.HeadTurn), 0, Math.PI / 6);
        In(rigging.PulledUp, 0, 0.015);
        In(rigging.HookGape ?? 0.01, 0.002, 0.06);
        In(rigging.WeightStation ?? 0.5, 0, 1);
        In(rigging.TailLost, 0, 0.75);

        Xunit.Assert.NotEmpty(tackle.Colours);
        Xunit.Assert.All(tackle.Colours, NotBlank);
        Xunit.Assert.NotEmpty(scenario.Presentations);
        foreach (Presentation presentation in scenario.Presentations)
        {
            NotBlank(presentation.Name);
            In(presentation.CastLength, 2, 80);
            In(presentation.CountDown ?? 0, 0, 120);
            if (presentation.RetrieveSpeed != 0 || presentation.Moves is [{ Kind: MoveKind.Reel }])
                In(presentation.RetrieveSpeed, 0.02, 3);
            Xunit.Assert.NotEmpty(presentation.Moves);
            In(presentation.LineLeftAtEnd, tackle.RodTipHeight, presentation.CastLength);
            In(presentation.Aim, 0, 2 * Math.PI);
            In(presentation.DriftSpeed, 0, 3);
            In(presentation.DriftDirection, 0, 2 * Math.PI);
            In(presentation.TimeLimit ?? 5, 5, 1800);
            foreach (Move move in presentation.Moves)
            {
                Xunit.Assert.True(move.Duration >= 0.1 && (move.Duration <= 600 || move.Kind == MoveKind.Reel));
                In(move.ReelShare * presentation.RetrieveSpeed, 0, 3 + 1e-9);
                In(move.FeedSpeed, 0, 3);
                In(move.Travel, 0, 4);
                In(move.Beats, 0, 6);
            }
        }
    }

    private static void Clarity(WaterClarity clarity)
    {
        switch (clarity)
        {
            case SecchiClarity secchi:
                In(secchi.Depth, 0.05, 45);
                Xunit.Assert.True(Enum.IsDefined(secchi.Kind));
                break;
            case JerlovClarity jerlov:
                Xunit.Assert.True(Enum.IsDefined(jerlov.Type));
                break;
            default:
                ConstituentClarity found = Xunit.Assert.IsType<ConstituentClarity>(clarity);
                In(found.Chlorophyll, 0, 3e-4);
                In(found.Dissolved440, 0, 50);
                In(found.Mineral, 0, 2);
                break;
        }
    }

    private static void Sky(SkySetting sky)
    {
        if (sky is SkyByElevation sun)
        {
            In(sun.SunElevation, -Math.PI / 2, Math.PI / 2);
            return;
        }

        SkyByClock clock = Xunit.Assert.IsType<SkyByClock>(sky);
        In(clock.Time.Year, 1951, 2049);
        In(clock.Time.Offset.TotalHours, -12, 14);
        Xunit.Assert.Equal(0, clock.Time.Offset.Ticks % TimeSpan.FromMinutes(15).Ticks);
        In(clock.Latitude, -Math.PI / 2, Math.PI / 2);
        In(clock.Longitude, -Math.PI, Math.PI);
    }

    private static void In(double value, double minimum, double maximum) => Xunit.Assert.InRange(value, minimum, maximum);

    private static void NotBlank(string text) => Xunit.Assert.False(string.IsNullOrWhiteSpace(text));
}
