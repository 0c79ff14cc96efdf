using System.Globalization;
using LureSim.Decision.Holding;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Scenarios;

/// <summary>
/// Turns values that have passed the grammar into records, after the checks that need more than one value. The
/// checks run on what is there even when other values were refused, so that everything is reported in one go.
/// </summary>
internal sealed partial class ScenarioBuilder(ProblemList problems)
{
    /// <summary>Default of line_left (m), where the rod tip is low enough for it.</summary>
    public const double DefaultLineLeft = 3.0;

    // Time for one twitch (s).
    private const double DefaultTwitchPeriod = 0.5;

    // With the line shorter than the rod tip's height the lure would hang in the air: keep this much more (m).
    private const double LineLeftAboveTip = 0.5;

    // No wrist moves a rod tip faster (m/s): twice the height in one period.
    private const double FastestTip = 12.0;

    // A line's diameter this many times off the common one for its strength is a slip of the unit.
    private const double DiameterFactor = 3.0;

    // Two ways of writing the same edge may differ by the rounding of units.
    private const double Rounding = 1e-9;

    private static readonly TimeSpan QuarterHour = TimeSpan.FromMinutes(15.0);

    /// <summary>Secchi depths (m) that a kind of water can have.</summary>
    internal static readonly Dictionary<WaterKind, (double Least, double Most)> SecchiRange = new()
    {
        [WaterKind.ClearOcean] = (2.0, 45.0),
        [WaterKind.CoastalGreen] = (0.3, 30.0),
        [WaterKind.TanninStained] = (0.05, 12.0),
        [WaterKind.Silty] = (0.05, 12.0),
    };

    /// <summary>Checks and builds; null if there are problems, old or new.</summary>
    public Scenario? Build(ReadValue root)
    {
        CheckSpot(root["spot"], root);
        CheckTackle(root["tackle"]);
        CheckPresentations(root);
        CheckCompare(root);
        UncertaintyBuilder.Check(root["uncertainty"], Add);
        TideBuilder.Check(root["tide"], root["spot"], Add);
        new ObservationBuilder(root, Add).Check();
        HandsBuilder.Check(root["hands"], Add);
        if (problems.Count > 0)
            return null;
        try
        {
            Scenario scenario = BuildScenario(root);
            HandsBuilder.CheckFigures(root["hands"], scenario, Add);
            return problems.Count > 0 ? null : scenario;
        }
        catch (ArgumentException refused)
        {
            // The grammar and the checks are to be as strict as the records; should they not be, the reader still does not throw.
            problems.Add(root.Line, root.Column, ScenarioProblem.WholeFile, "", $"what was read does not fit together: {refused.Message.Split('\n')[0]}", "values inside the ranges of docs/scenario-format.md", "change the value that is named");
            return null;
        }
    }

    private void CheckSpot(ReadValue? spot, ReadValue root)
    {
        if (spot is null)
            return;
        new BottomBuilder(problems).Check(spot, LongestCast(root));

        // Where the bottom is not understood nothing more is said of what lies above it.
        double? depth = problems.HasUnder(YamlTreeBuilder.Join(spot.Path, "bottom_profile")) ? null : BottomBuilder.Depth(spot);
        new StructureBuilder(problems).Check(spot, LongestCast(root), depth);
        ReadValue? grass = spot["grass_height"];
        if (depth is { } water && grass is not null && grass.Number >= water)
            Add(grass, "the grass is as high as the water is deep", $"less than the depth, {Length(water)}", "lower the grass or correct the depth");

        // Still water has no direction; water that moves must have one.
        if (spot["current"] is { } flow && Number(flow["speed"]) > 0 && flow["direction"] is null && !problems.HasUnder(YamlTreeBuilder.Join(flow.Path, "direction")))
            problems.Add(flow.Line, flow.Column, YamlTreeBuilder.Join(flow.Path, "direction"), "", "the key is missing", "away, left, towards, right, or an angle with a unit (deg, \u00b0)", "say where the water goes: add \"direction: left\", or write the line as \"outgoing 0.8 kn, to my right\"");

        ReadValue? zone = spot["strike_zone"];
        CheckBand(zone?["depth"], depth, "the deeper edge comes first", "give the upper edge first");
        CheckBand(zone?["above_bottom"], depth, "the higher edge comes first", "give the lower edge first");

        if (Number(spot["salinity"]) is { } salinity && spot["temperature"] is { } temperature)
        {
            double freezing = FreezingPoint(salinity);
            if (temperature.Number < freezing)
                Add(temperature, "water of this salinity is ice at this temperature", $"at least {QuantityText.Plain(QuantityKind.Temperature, freezing)} at this salinity", "correct the temperature or the salinity");
        }

        ReadValue? clarity = spot["clarity"];
        if (clarity?["secchi"] is { } secchi && clarity["water"]?.Word?.Meaning is WaterKind kind)
        {
            (double least, double most) = SecchiRange[kind];
            if (secchi.Number < least || secchi.Number > most)
                Add(secchi, $"{clarity.At("water").Text.Trim()} water is not this {(secchi.Number < least ? "murky" : "clear")}", $"{QuantityText.Range(QuantityKind.Length, least, most)} for this water", "correct the Secchi depth or choose another kind of water");
        }

        CheckClock(spot["light"]);
    }

    // All clocks in use differ from UTC by whole quarters of an hour.
    private void CheckClock(ReadValue? light)
    {
        CheckPlace(light);
        if (light?["utc_offset"] is not { } offset)
            return;
        double quarters = offset.Number / QuarterHour.TotalSeconds;
        if (Math.Abs(quarters - Math.Round(quarters)) > 1e-6)
            Add(offset, "no clock differs from UTC by this much", "a multiple of a quarter of an hour, 0.25 h", "correct the offset");
    }

    private void CheckBand(ReadValue? band, double? depth, string wrongOrder, string fix)
    {
        if (band is null || band.Items.Count != 2)
            return;
        if (band.Items[0].Number > band.Items[1].Number)
            Add(band.Items[0], wrongOrder, "the smaller number first", fix);
        else if (band.Items[0].Number == band.Items[1].Number || (band.Items[0].Number >= depth && band.Items[0].Number <= depth * (1.0 + Rounding)))
            Add(band.Items[1], "the strike zone has no height", "two different edges", "widen the zone");
        foreach (ReadValue edge in band.Items)
        {
            if (depth is { } water && edge.Number > water * (1.0 + Rounding))
                Add(edge, "the edge of the strike zone lies outside the water", $"0 to the depth, {Length(water)}", "correct the zone or the depth");
        }
    }

    // Not known where a rod or another weight decides how far a lure goes.
    private static double? LongestCast(ReadValue root) => root["presentations"]?.Items is { } items && items.All(item => item["cast"] is not { } cast || (cast["length"] is not null && cast["with"] is null))
        ? items.Select(item => Number(item["cast"]?["length"])).Max()
        : null;

    private void CheckTackle(ReadValue? tackle)
    {
        if (tackle is null)
            return;
        CheckDiameter(tackle["line"]);
        CheckDiameter(tackle["leader"]);
        CheckBodies(tackle["bodies"]);
        CheckHeads(tackle["jig_heads"]);
        CheckGear(tackle);
        CheckCastLoads(tackle);
        RiggingReader.Check(tackle, problems, Add);
        CheckRepeated(tackle["colours"]?.Items ?? [], item => item.Text, "colour");
        ReadMeasuredColours(tackle["measured_colours"]);
        CheckPatterns(tackle["patterns"], tackle["measured_colours"]);
        IncludeTackle(tackle["include"], tackle["bodies"]);
    }

    private void CheckDiameter(ReadValue? line)
    {
        if (line?["diameter"] is not { } diameter || Number(line["strength"]) is not { } strength || line["kind"]?.Word?.Meaning is not LineKind kind)
            return;
        double common = TacklePresets.LineDiameter(kind, strength);
        if (diameter.Number < common / DiameterFactor || diameter.Number > common * DiameterFactor)
            Add(diameter, $"{line.At("kind").Text.Trim()} of this strength is about {QuantityText.Both(QuantityKind.Length, common)} thick", QuantityText.Range(QuantityKind.Length, common / DiameterFactor, common * DiameterFactor), "correct the diameter, its unit or the strength");
    }

    private void CheckBodies(ReadValue? bodies)
    {
        if (bodies is null)
            return;
        foreach (ReadValue body in bodies.Items)
            CheckSides(body);

        CheckRepeated([.. bodies.Items.Where(IsComplete)], BodyLabel, "body");
    }

    private void CheckHeads(ReadValue? heads)
    {
        if (heads is null)
            return;
        CheckRepeated([.. heads.Items.Where(head => head["weight"] is not null)], head => string.Create(CultureInfo.InvariantCulture, $"{head.NumberAt("weight"):R} {head["metal"]?.Word?.Text ?? "lead"} {head["place"]?.Word?.Text ?? "nose"}"), "jig head");
    }

    private void CheckPresentations(ReadValue root)
    {
        ReadValue? list = root["presentations"];
        if (list is null)
            return;
        ReadValue? tackle = root["tackle"];
        double? tip = TipHeight(tackle);
        CheckRepeated([.. list.Items.Where(item => item["name"] is not null)], item => item.At("name").Text, "name", item => item.At("name"));
        foreach (ReadValue item in list.Items)
        {
            ReadValue? length = item["cast"]?["length"];
            double? cast = Number(length);
            if (cast is { } distance && tackle?["leader"]?["length"] is { } leader && leader.Number >= distance)
                Add(length!, "the cast is no longer than the leader", $"more than {Length(leader.Number)}", "cast farther or shorten the leader");
            CheckLineLeft(item, cast, tip);
            CheckCapacity(length, tip, tackle?["reel"]);
            CheckThrow(item["cast"], tackle);
            CheckHandle(item["retrieve"]?["handle_turns"], tackle?["reel"]);
            CheckTwitch(item);
            new ScheduleBuilder(problems).Check(item, tackle);
        }
    }

    private void CheckLineLeft(ReadValue item, double? cast, double? tip)
    {
        ReadValue? left = item["line_left"];
        if (left is not null && cast is { } distance && left.Number >= distance)
            Add(left, "the line left at the end is as long as the cast", $"less than the cast, {Length(distance)}", "cast farther or leave less line");
        if (left is not null && tip is { } height && left.Number < height)
            Add(left, "the lure would hang in the air: the line left is shorter than the rod tip is high", $"at least {Length(height)}", "leave more line or lower the rod tip");
        if (left is null && cast is { } length && tip is { } above && length <= LineLeft(above) && item["cast"]?["length"] is { } place)
            Add(place, $"the cast is no longer than the line left at the end, {Length(LineLeft(above))} unless line_left is given", $"more than {Length(LineLeft(above))}", "cast farther or add line_left");
    }

    // A splash-down leaves half a per cent of slack; anything less than a few turns more would not be a spool to cast with.
    private void CheckCapacity(ReadValue? cast, double? tip, ReadValue? reel)
    {
        if (cast is null || tip is not { } height || reel?["line_capacity"] is not { } capacity)
            return;
        double needed = 1.05 * Math.Sqrt((cast.Number * cast.Number) + (height * height));
        if (capacity.Number < needed)
            Add(capacity, $"a cast of {Length(cast.Number)} takes more line than the spool holds", $"at least {Length(needed)} for this cast", "cast less far or fill the spool");
    }

    private void CheckHandle(ReadValue? turns, ReadValue? reel)
    {
        if (turns is null || ReelOf(reel) is not { } known)
            return;
        double perTurn = known.LinePerTurn;
        double speed = turns.Number * perTurn;
        if (!Limits.LineSpeed.Contains(speed))
            Add(turns, $"with this reel that is {QuantityText.Both(QuantityKind.Speed, speed)} of line", $"{QuantityText.Range(QuantityKind.TurnRate, Limits.LineSpeed.Least / perTurn, Limits.LineSpeed.Most / perTurn)} with this reel", "turn the handle at another rate");
    }

    private void CheckTwitch(ReadValue item)
    {
        if (item["twitch"] is not { } twitch)
            return;
        double period = Number(twitch["period"]) ?? DefaultTwitchPeriod;
        if (item["pause"] is not { } pause)
        {
            // A style has pauses of its own, and so have moves.
            if (item["style"] is not null || item["moves"] is not null || problems.HasUnder(YamlTreeBuilder.Join(item.Path, "style")) || problems.HasUnder(YamlTreeBuilder.Join(item.Path, "moves")))
                return;

            // A pause that was given but refused has its own problem.
            if (!problems.HasUnder(YamlTreeBuilder.Join(item.Path, "pause")))
                Add(twitch, "twitches come at the start of a pause, but there is no pause", "twitch together with pause", "add \"pause:\" with every and for");
        }
        else if (item["style"] is null && Number(pause["for"]) is { } length && Number(twitch["count"]) is { } count && count * period > length * (1.0 + 1e-9))
        {
            Add(twitch.At("count"), string.Create(CultureInfo.InvariantCulture, $"{count:0} twitches of {period:0.###} s last longer than the pause of {length:0.###} s"), "twitches that fit into the pause", "twitch less often or faster, or pause longer");
        }

        if (twitch["height"] is { } height && 2.0 * height.Number / period > FastestTip)
            Add(height, $"the rod tip would move at {QuantityText.Both(QuantityKind.Speed, 2.0 * height.Number / period)}", $"up to {Length(FastestTip * period / 2.0)} in this period", "lift less or more slowly");
    }

    private void CheckRepeated(IReadOnlyList<ReadValue> items, Func<ReadValue, string> identity, string what, Func<ReadValue, ReadValue>? place = null)
    {
        var seen = new Dictionary<string, ReadValue>(StringComparer.OrdinalIgnoreCase);
        foreach (ReadValue item in items)
        {
            string key = identity(item);
            if (!seen.TryAdd(key, item))
                Add(place?.Invoke(item) ?? item, string.Create(CultureInfo.InvariantCulture, $"the same {what} is on line {seen[key].Line} already"), $"each {what} once", "change or remove one of the two");
        }
    }

    private Scenario BuildScenario(ReadValue root)
    {
        Scenario scenario = BuildWithoutSeen(root);
        return root["seen"] is null ? scenario : scenario with { Seen = ObservationBuilder.BuildAll(root, scenario.Tackle, scenario.Presentations) };
    }

    private Scenario BuildWithoutSeen(ReadValue root)
    {
        TackleBox box = BuildTackle(root.At("tackle"));
        return new Scenario
        {
            Title = root.At("title").Text,
            Notes = root["notes"]?.Text ?? "",
            Spot = WithZone(BuildSpot(root.At("spot"), WaterOf(root)), root),
            Tackle = box,
            Presentations = [.. root.At("presentations").Items.Select(item => BuildPresentation(item, root.At("tackle"), box))],
            Season = root["season"]?.Word?.Meaning as Season?,
            Fixed = [.. (root["fixed"]?.Items ?? []).SelectMany(item => item.Word?.Meaning is Hand hand ? [hand] : Enum.GetValues<Hand>()).Distinct().Order()],
            Hands = HandsBuilder.Build(root["hands"]),
            Forage = [.. (root["forage"]?.Items ?? []).Select(BuildForage)],
            Compare = [.. (root["compare"]?.Items ?? []).Select(item => BuildCompared(item, root))],
            Uncertainty = WithWater(UncertaintyBuilder.Build(root["uncertainty"], root["tackle"]?["stand"]?.Word?.Meaning as StandHeight), root),
            Tide = TideBuilder.Build(root["tide"], root["spot"]),
        };
    }

    // Where nobody says where the fish are, the rules of the trade do.
    private static Spot WithZone(Spot spot, ReadValue root)
    {
        if (root.At("spot")["strike_zone"] is not null) return spot;
        Season? season = root["season"]?.Word?.Meaning as Season? ?? (spot.Sky is SkyByClock clock ? Seasons.Of(clock.Time.Month, clock.Latitude < 0) : null);
        return spot with { StrikeZone = HoldingRule.Of(spot, season).Zone(spot) };
    }

    private static Spot BuildSpot(ReadValue spot, WaterBySeason water)
    {
        double depth = BottomBuilder.Depth(spot) ?? throw new InvalidOperationException("A spot is built without a depth.");
        ReadValue? current = spot["current"];
        ReadValue? wind = spot["wind"];
        ReadValue? zone = spot["strike_zone"];
        StrikeZone band = zone is null ? new(0, depth)
            : zone["depth"] is { } byDepth ? new(Math.Min(byDepth.Items[0].Number, depth), Math.Min(byDepth.Items[1].Number, depth))
            : new(Math.Max(0.0, depth - zone.At("above_bottom").Items[1].Number), depth - zone.At("above_bottom").Items[0].Number) { MovesWithBottom = true };
        return new Spot
        {
            Depth = depth,
            Profile = BottomBuilder.Build(spot),
            Structures = StructureBuilder.Build(spot),
            Bottom = Meaning(spot["bottom"], BottomKind.Sand),
            GrassHeight = Number(spot["grass_height"]) ?? 0.0,
            CurrentSpeed = Number(current?["speed"]) ?? 0.0,
            CurrentDirection = Number(current?["direction"]) ?? 0.0,
            TideStage = current?["tide"]?.Word?.Meaning as TideStage?,
            CurrentProfile = Meaning(current?["profile"], CurrentProfileKind.Power),
            WindSpeed = Number(wind?["speed"]) ?? 0.0,
            WindDirection = Number(wind?["direction"]) ?? 0.0,
            Salinity = Number(spot["salinity"]) ?? water.Salinity,
            TemperatureCelsius = Number(spot["temperature"]) ?? Math.Max(water.TemperatureCelsius, FreezingPoint(Number(spot["salinity"]) ?? water.Salinity)),
            Assumed = Assumed(spot),
            Clarity = BuildClarity(spot.At("clarity")),
            Sky = BuildSky(spot.At("light")),
            CloudCover = Number(spot.At("light")["cloud"]) ?? 0.0,
            StrikeZone = band,
            TargetFish = spot.At("target").Word!.Text,
            TargetLength = Number(spot["target_length"]),
        };
    }

    private static WaterClarity BuildClarity(ReadValue clarity)
    {
        if (clarity["jerlov"] is { } jerlov)
            return new JerlovClarity(Meaning(jerlov, JerlovType.I));
        return clarity["secchi"] is { } secchi
            ? new SecchiClarity(secchi.Number, Meaning(clarity["water"], WaterKind.CoastalGreen))
            : new ConstituentClarity(clarity.NumberAt("chlorophyll"), clarity.NumberAt("dissolved_440"), clarity.NumberAt("mineral"));
    }

    private static SkySetting BuildSky(ReadValue light)
    {
        if (light["sun_elevation"] is { } elevation)
            return new SkyByElevation(elevation.Number);
        return SkyAt(light);
    }

    private TackleBox BuildTackle(ReadValue tackle)
    {
        LureBody[] bodies = [.. tackle.At("bodies").Items.Select(BuildBody).Select(Measured)];
        ReadValue line = tackle.At("line");
        return new TackleBox
        {
            RodTipHeight = TipHeight(tackle)!.Value,
            Rod = RodOf(tackle["rod"]),
            Reel = ReelOf(tackle.At("reel"))!,
            Line = new LineSpecification(Meaning(line["kind"], LineKind.Braid), line.NumberAt("strength"), Diameter(line)),
            Leader = tackle["leader"] is { } leader
                ? new LeaderSpecification(Meaning(leader["kind"], LineKind.Fluorocarbon), leader.NumberAt("strength"), Diameter(leader), leader.NumberAt("length"))
                : null,
            JigHeads = [.. (tackle["jig_heads"]?.Items ?? []).Select(head => BuildHead(head, (bodies.FirstOrDefault(body => body.NeedsHead) ?? bodies[0]).Length))],
            Bodies = bodies,
            Rigging = RiggingReader.Build(tackle["rigging"], bodies.FirstOrDefault(body => body.NeedsHead)),
            Colours = [.. tackle.At("colours").Items.Select(colour => colour.Text)],
            MeasuredColours = measured,
            Patterns = [.. (tackle["patterns"]?.Items ?? []).Select(p => new PatternSpecification(
                p.At("name").Text.Trim(), p.At("back").Text, p.At("side").Text, p.At("belly").Text, p["eye"]?.Text))],
        };
    }

    private static double Diameter(ReadValue line) =>
        Number(line["diameter"]) ?? TacklePresets.LineDiameter(Meaning(line["kind"], LineKind.Braid), line.NumberAt("strength"));

    private static JigHead BuildHead(ReadValue head, double bodyLength)
    {
        ReadValue weight = head.At("weight");
        HeadMetal metal = Meaning(head["metal"], HeadMetal.Lead);
        string label = metal == HeadMetal.Lead || weight.Word is not null ? weight.Text.Trim() : $"{weight.Text.Trim()} {head.At("metal").Word!.Text}";
        WeightPlace place = weight.Number > 0.0 ? Meaning(head["place"], WeightPlace.Nose) : WeightPlace.Nose;
        if (place == WeightPlace.Shank)
            label += " on the shank";
        return new JigHead(weight.Number, metal, Number(head["hook"]) ?? HookWire.CommonMass(bodyLength), label) { Place = place };
    }

    private static LureBody BuildBody(ReadValue body)
    {
        BodyProfile profile = Meaning(body["profile"], BodyProfile.PaddleTail);
        BodyProportions proportions = LureKinds.Of(profile).Proportions;
        double length = body.NumberAt("length");
        return RiggingReader.Complete(body, new LureBody(
            profile,
            length,
            Number(body["height"]) ?? (proportions.HeightShare * length),
            Number(body["width"]) ?? (proportions.WidthShare * length),
            Number(body["density"]) ?? proportions.Density,
            BodyLabel(body)));
    }

    internal static string BodyLabel(ReadValue body) => body["name"]?.Text ?? $"{body.At("length").Text.Trim()} {body.At("profile").Word!.Text}";

    private static Presentation BuildPresentation(ReadValue item, ReadValue tackle, TackleBox box)
    {
        (double speed, IReadOnlyList<Move> moves) = ScheduleBuilder.Build(item, tackle);
        RetrieveStyle? style = ScheduleBuilder.StyleOf(item);
        double tip = box.RodTipHeight, left = Number(item["line_left"]) ?? LineLeft(tip);
        (double cast, CastAnchor? with, bool full) = CastOf(item.At("cast"), box, left);
        return new Presentation
        {
            Name = item.At("name").Text,
            CastLength = cast,
            CastWith = with,
            FullCast = full,
            Aim = Number(item["aim"]) ?? 0.0,
            Fall = Meaning(item["fall"], style?.Fall ?? FallMode.SlackLine),
            CountDown = item["count_down"] is { } countDown ? Seconds(countDown) : Finite(style?.CountDown),
            RetrieveSpeed = speed,
            Moves = moves,
            Style = style?.Name,
            DriftSpeed = Number(item["drift"]?["speed"]) ?? 0.0,
            DriftDirection = Number(item["drift"]?["direction"]) ?? 0.0,
            TimeLimit = Number(item["time_limit"]),
            LineLeftAtEnd = left,
        };
    }

    // Fofonoff & Millard 1983 (UNESCO technical paper 44, fofonoff1983algorithms), after Millero 1978: freezing point of sea water at the
    // surface (degrees Celsius) at practical salinity S, stated for 4 to 40; at 0 it gives 0 as it should.
    internal static double FreezingPoint(double salinity) =>
        salinity * (-0.0575 + (1.710523e-3 * Math.Sqrt(salinity)) - (2.154996e-4 * salinity));

    private static double LineLeft(double rodTipHeight) => Math.Max(DefaultLineLeft, rodTipHeight + LineLeftAboveTip);

    private static double? Number(ReadValue? value) => value is null || double.IsNaN(value.Number) ? null : value.Number;

    private static TEnum Meaning<TEnum>(ReadValue? value, TEnum fallback)
        where TEnum : struct, Enum => value?.Word?.Meaning is TEnum meaning ? meaning : fallback;

    // A count-down in words is one to the bottom.
    private static double? Seconds(ReadValue countDown) => countDown.Word is null ? countDown.Number : null;

    private static double? Finite(double? countDown) => countDown is { } seconds && double.IsFinite(seconds) ? seconds : null;

    private static string Length(double value) => QuantityText.Both(QuantityKind.Length, value);

    private void Add(ReadValue at, string message, string allowed, string fix) =>
        problems.Add(at.Line, at.Column, at.Path, at.Text, message, allowed, fix);
}
