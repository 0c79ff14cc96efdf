using System.Diagnostics;
using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Checks and builds what a scenario says about rigging and about lures that are no soft bodies.</summary>
internal static class RiggingReader
{
    // Densities of a hard bait all in all (kg/m3), assumed: floating ones rise at about the rate of a slow sink; a suspending one lies between fresh and sea water.
    private const double FloatingDensity = 940.0;
    private const double SuspendingDensity = 1015.0;
    private const double SinkingDensity = 1100.0;

    /// <summary>Reports a problem: place, message, what is allowed, fix.</summary>
    internal delegate void Report(ReadValue at, string message, string allowed, string fix);

    /// <summary>Checks keys against the profile they belong to, and the rigging against the bodies.</summary>
    public static void Check(ReadValue tackle, ProblemList problems, Report report)
    {
        ReadValue[] bodies = [.. (tackle["bodies"]?.Items ?? []).Where(body => body["profile"] is not null)];
        foreach (ReadValue body in bodies)
        {
            LureKind kind = Kind(body);
            Only(body, ["float"], kind => kind.TakesFloat, report);
            Only(body, ["lip"], kind => kind.TakesLip, report);
            Only(body, ["thickness", "metal"], kind => kind.IsPlate, report);
            if (kind.IsPlate)
            {
                if (body["height"] is { } height)
                    report(height, $"a {kind.Word} has no height of its own", "thickness", "write thickness instead");
                if (body["density"] is { } density)
                    report(density, $"the density of a {kind.Word} is that of its metal", "metal", "write metal instead");
            }

            if (body["lip"]?["width"] is { } width && body["length"] is { } length && width.Number > length.Number)
                report(width, "the lip is wider than the body is long", "at most the length of the body", "correct the lip or the length");
        }

        ReadValue[] soft = [.. bodies.Where(body => Kind(body).NeedsHead)];
        if (soft.Length > 0 && tackle["jig_heads"] is null && !problems.HasUnder("tackle.jig_heads"))
            report(soft[0], "a soft body needs a jig head or a hook, and there is none", "jig_heads with a weight, or unweighted", "add \"jig_heads: [unweighted]\" or the heads you have");
        CheckRigging(tackle["rigging"], soft, report);
        if (tackle["rigging"]?["weight_at"] is { } station && !(tackle["jig_heads"]?.Items ?? []).Any(head => head["place"]?.Word?.Meaning is WeightPlace.Shank))
            report(station, "weight_at belongs to a weighted hook, and there is none", "weight_at with a jig head of place: shank", "remove the key or add \"place: shank\" to a head");
    }

    /// <summary>Adds to a body what only hard lures have.</summary>
    public static LureBody Complete(ReadValue body, LureBody built)
    {
        LureKind kind = built.Kind;
        if (kind.TakesFloat)
            built = WithFloat(body, built);
        if (kind.TakesLip && body["lip"] is { } lip)
            built = built with { Lip = new LipShape(lip.NumberAt("length"), lip.NumberAt("width"), lip.NumberAt("angle")) };
        return !kind.IsPlate ? built : built with
        {
            Height = body["thickness"]?.Number ?? built.Height,
            Metal = body["metal"]?.Word?.Meaning is HeadMetal metal ? metal : HeadMetal.Brass,
        };
    }

    /// <summary>Builds the rigging; a clean job where there is none.</summary>
    /// <param name="rigging">What was read, or null.</param>
    /// <param name="soft">The soft body that is rigged, or null.</param>
    public static Rigging Build(ReadValue? rigging, LureBody? soft)
    {
        if (rigging is null)
            return new Rigging();
        KnotStyle knot = rigging["knot"]?.Word?.Meaning is KnotStyle given ? given : KnotStyle.Loop;
        return new Rigging
        {
            Knot = knot,
            LoopLength = knot == KnotStyle.Snug ? 0.0 : rigging["loop_length"]?.Number ?? DefaultLoop(knot),
            ShankShare = rigging["shank_share"]?.Number ?? (rigging["shank"] is { } shank && soft is not null ? Math.Clamp(shank.Number / soft.Length, 0.05, 0.95) : null),
            ExitSideways = rigging["exit_sideways"]?.Number ?? 0.0,
            ExitAbove = rigging["exit_above"]?.Number ?? 0.0,
            Bend = rigging["bend"]?.Number ?? 0.0,
            PointLean = rigging["point_lean"]?.Number ?? 0.0,
            HeadTurn = rigging["head_turn"]?.Number ?? 0.0,
            PulledUp = rigging["pulled_up"]?.Number ?? 0.0,
            HookGape = rigging["gape"]?.Number,
            WeightStation = rigging["weight_at"]?.Number,
            TailLost = rigging["tail_lost"]?.Number ?? 0.0,
        };
    }

    /// <summary>Reports what is wrong with a rigging.</summary>
    /// <param name="rigging">What was read, or null.</param>
    /// <param name="soft">The soft bodies, the first of which is rigged.</param>
    /// <param name="report">Takes the problems.</param>
    public static void CheckRigging(ReadValue? rigging, ReadValue[] soft, Report report)
    {
        if (rigging is null)
            return;
        if (rigging["knot"]?.Word?.Meaning is KnotStyle.Snug && rigging["loop_length"] is { } loop)
            report(loop, "a snug knot has no loop", "loop_length with a loop, a clip or a split ring", "remove the key or change the knot");
        if (rigging["shank"] is { } length && rigging["shank_share"] is { } share)
            report(length.Line > share.Line ? length : share, "the shank is given twice, as a length and as a share", "one of shank and shank_share", "remove one of the two");
        if (rigging["shank"] is { } shank && soft.FirstOrDefault()?["length"] is { } body && (shank.Number > 0.95 * body.Number || shank.Number < 0.05 * body.Number))
            report(shank, "the shank does not fit the first soft body", QuantityText.Range(QuantityKind.Length, 0.05 * body.Number, 0.95 * body.Number), "correct the shank or the length of the body");
        foreach (string key in (string[])["exit_sideways", "exit_above"])
        {
            // Farther off than half the body's width the hook would not be in the body.
            if (rigging[key] is not { } exit || soft.FirstOrDefault() is not { } first || first["length"] is not { } whole)
                continue;
            BodyProportions proportions = Kind(first).Proportions;
            bool sideways = key == "exit_sideways";
            double half = 0.5 * (first[sideways ? "width" : "height"]?.Number ?? (whole.Number * (sideways ? proportions.WidthShare : proportions.HeightShare)));
            if (Math.Abs(exit.Number) > half)
                report(exit, $"the hook would come out beyond the body, which is {QuantityText.Plain(QuantityKind.Length, 2.0 * half)} {(sideways ? "wide" : "high")}", QuantityText.Range(QuantityKind.Length, -half, half), "measure from the centre line of the body");
        }
    }

    private static LureBody WithFloat(ReadValue body, LureBody built)
    {
        HardFloat kind = body["float"]?.Word?.Meaning is HardFloat given ? given : HardFloat.Suspending;
        return built with
        {
            Buoyancy = kind,
            Density = body["density"]?.Number ?? kind switch
            {
                HardFloat.Floating => FloatingDensity,
                HardFloat.Sinking => SinkingDensity,
                HardFloat.Suspending => SuspendingDensity,
                _ => throw new UnreachableException(),
            },
        };
    }

    private static double DefaultLoop(KnotStyle knot) => knot switch
    {
        KnotStyle.Clip => RiggingGrammar.ClipLength,
        KnotStyle.SplitRing => RiggingGrammar.RingLength,
        KnotStyle.Loop or KnotStyle.Snug => RiggingGrammar.LoopLength,
        _ => throw new UnreachableException(),
    };

    private static LureKind Kind(ReadValue body) => LureKinds.Of(body["profile"]?.Word?.Meaning is BodyProfile profile ? profile : BodyProfile.PaddleTail);

    private static void Only(ReadValue body, string[] keys, Func<LureKind, bool> takes, Report report)
    {
        if (takes(Kind(body)))
            return;
        string names = string.Join(" or ", LureKinds.All.Where(takes).Select(kind => kind.Word));
        foreach (string key in keys)
        {
            if (body[key] is { } value)
                report(value, $"{key} belongs to a {names}", $"{key} with profile: {names}", "remove the key or change the profile");
        }
    }
}
