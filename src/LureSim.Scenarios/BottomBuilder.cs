using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Checks and builds the bottom along the cast.</summary>
internal sealed class BottomBuilder(ProblemList problems)
{
    // What is filled in of a named shape (m), assumed.
    private const double LedgeWidth = 0.9144;
    private const double HoleWidth = 6.096;
    private const double BankRun = 10;
    private const double EdgeRun = 3;

    private const double Rounding = 1e-9;

    /// <summary>Depth of the spot (m): as given, otherwise the greatest of its profile; null where neither can be told.</summary>
    public static double? Depth(ReadValue? spot)
    {
        if (spot?["depth"] is { } depth) return depth.Number;
        return spot?["bottom_profile"] is { } profile && Points(profile) is { Count: > 0 } points ? points.Max(point => point.Depth) : null;
    }

    /// <summary>The profile of a spot without problems; null for even water of one kind.</summary>
    public static BottomProfile? Build(ReadValue spot)
    {
        BottomStretch[] stretches =
        [
            .. (spot["bottom_stretches"]?.Items ?? []).Select(item => new BottomStretch(item.NumberAt("from"), item.NumberAt("to"))
            {
                Bottom = item["bottom"]?.Word?.Meaning as BottomKind?,
                GrassHeight = item["grass_height"]?.Number,
                Name = item["name"]?.Text,
            }),
        ];
        IReadOnlyList<(double Distance, double Depth)> points = Shifted(spot);
        if (points.Count == 0 && stretches.Length == 0) return null;
        double depth = Depth(spot) ?? 0;
        return new BottomProfile
        {
            // The deepest is the depth of the spot to the last bit.
            Points = points.Count == 0 ? [new(0, depth)] : [.. points.Select(point => new ProfilePoint(point.Distance, Math.Abs(point.Depth - depth) < Rounding ? depth : point.Depth))],
            Stretches = stretches,
        };
    }

    /// <summary>Checks what more than one value says of the bottom.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="cast">The longest cast (m), where one is given.</param>
    public void Check(ReadValue spot, double? cast)
    {
        ReadValue? profile = spot["bottom_profile"];
        bool refused = problems.HasUnder(YamlTreeBuilder.Join(spot.Path, "bottom_profile")) || problems.HasUnder(YamlTreeBuilder.Join(spot.Path, "depth"));
        if (profile is null && spot["depth"] is null && !refused)
            problems.Add(spot.Line, spot.Column, YamlTreeBuilder.Join(spot.Path, "depth"), "", "the key is missing", "a depth, or a bottom_profile", "add \"depth: 6 ft\", or \"bottom_profile: [0 ft: 2 ft, 30 ft: 3 ft, 36 ft: 8 ft]\"");
        if (profile is not null) CheckProfile(spot, profile);
        CheckStretches(spot, cast);
    }

    private void CheckProfile(ReadValue spot, ReadValue profile)
    {
        if (profile.Items.Count == 0)
        {
            CheckShape(profile);
            if (!profile.IsWhole || problems.HasUnder(profile.Path)) return;
        }

        for (int i = 1; i < profile.Items.Count; i++)
        {
            if (profile.Items[i].NumberAt("distance") <= profile.Items[i - 1].NumberAt("distance"))
                Add(profile.Items[i], "this point is no farther out than the one before it", "distances from the rod outward, each once", "put the points in order of distance");
        }

        IReadOnlyList<(double Distance, double Depth)> points = Shifted(spot);
        for (int i = 0; i < points.Count; i++)
        {
            ReadValue at = profile.Items.Count > 0 ? profile.Items[i] : profile;
            if (points[i].Depth < Limits.Depth.Least)
            {
                bool moved = spot["depth"] is not null;
                Add(
                    at,
                    points[i].Depth > 0 ? $"there is hardly any water over the bottom {Place(points[i].Distance)}: {Length(points[i].Depth)}" : $"the bottom comes out of the water {Place(points[i].Distance)}",
                    $"at least {Length(Limits.Depth.Least)} of water all along",
                    moved ? "raise depth, which moves the whole profile, or correct the point" : "begin the profile where there is water enough, or give the depth there");
                return;
            }

            if (points[i].Depth > Limits.Depth.Most)
            {
                Add(at, "it is deeper there than the model takes", $"up to {Length(Limits.Depth.Most)}", "correct the point or the depth of the spot");
                return;
            }
        }
    }

    private void CheckShape(ReadValue profile)
    {
        if (profile["shape"]?.Word is not { Meaning: BottomShape shape } word) return;
        ReadValue? far = profile["far_depth"], middle = profile["middle_depth"], near = profile["near_depth"];
        bool round = shape is BottomShape.Hole or BottomShape.Hump;
        if (!round && far is null && !problems.HasUnder(YamlTreeBuilder.Join(profile.Path, "far_depth")))
            Add(profile["shape"]!, $"how deep it is beyond the {word.Text} is missing", "near_depth and far_depth", "add \"far_depth: 8 ft\"");
        if (!round && middle is not null) Add(middle, $"a {word.Text} has no middle", "near_depth and far_depth", "remove middle_depth");
        if (round && middle is null && !problems.HasUnder(YamlTreeBuilder.Join(profile.Path, "middle_depth")))
            Add(profile["shape"]!, $"how deep it is in the middle of the {word.Text} is missing", "near_depth and middle_depth", "add \"middle_depth: 8 ft\"");
        if (round && middle is not null && near is not null)
        {
            double beside = far?.Number ?? near.Number;
            if (shape == BottomShape.Hole && middle.Number <= Math.Max(near.Number, beside)) Add(middle, "a hole is deeper in its middle", $"more than {Length(Math.Max(near.Number, beside))}", "correct the depths, or write \"shape: hump\"");
            if (shape == BottomShape.Hump && middle.Number >= Math.Min(near.Number, beside)) Add(middle, "a hump is shallower in its middle", $"less than {Length(Math.Min(near.Number, beside))}", "correct the depths, or write \"shape: hole\"");
        }

        if (profile["width"] is { Number: <= 0 } width) Add(width, "it has no width", "more than 0", "say how far it reaches along the cast");
        else if (Points(profile) is { Count: > 0 } points && points[^1].Distance > Limits.ProfileDistance.Most)
            Add(profile["width"] ?? profile.At("at"), "it reaches farther out than the model takes", $"up to {Length(Limits.ProfileDistance.Most)} from the rod", "bring it nearer or make it narrower");
    }

    private void CheckStretches(ReadValue spot, double? cast)
    {
        ReadValue[] given = [.. (spot["bottom_stretches"]?.Items ?? []).Where(item => item["from"] is not null && item["to"] is not null)];
        IReadOnlyList<(double Distance, double Depth)> points = spot["bottom_profile"] is { } profile && !problems.HasUnder(profile.Path) ? Shifted(spot) : [];
        foreach (ReadValue item in given)
        {
            double from = item.NumberAt("from"), to = item.NumberAt("to");
            if (to <= from)
            {
                Add(item.At("to"), "the stretch ends where it begins, or before", $"more than {Length(from)}", "give the end that is nearer to the rod first");
                continue;
            }

            if (item["bottom"] is null && item["grass_height"] is null && item.IsWhole)
                Add(item, "the stretch says nothing that is other than the spot", "bottom, grass_height, or both", "add \"bottom: shell\", or remove the stretch");
            if (cast is { } farthest && from >= farthest)
                Add(item.At("from"), "the stretch begins beyond the longest cast", $"less than {Length(farthest)}", "cast farther or remove the stretch");
            if (Array.Find(given, other => !ReferenceEquals(other, item) && Before(other, item) && other.NumberAt("to") > from + Rounding) is { } over)
                Add(item.At("from"), string.Create(System.Globalization.CultureInfo.InvariantCulture, $"the stretch overlaps that of line {over.Line}, which ends {Length(over.NumberAt("to"))} out"), $"at least {Length(over.NumberAt("to"))}", "let it begin where the other ends");
            double shallowest = points.Count > 0 ? Shallowest(points, from, to) : Depth(spot) ?? double.PositiveInfinity;
            if (item["grass_height"] is { } grass && grass.Number >= shallowest)
                Add(grass, "the grass is as high as the water is deep there", $"less than {Length(shallowest)}", "lower the grass or correct the depth");
        }

        if (spot["grass_height"] is { } own && points.Count > 0 && points.Min(point => point.Depth) is var least && own.Number >= least && own.Number < points.Max(point => point.Depth))
            Add(own, "the grass is as high as the water is deep where the profile is shallowest", $"less than {Length(least)}", "give the grass by stretch, under bottom_stretches, or lower it");

        bool Before(ReadValue a, ReadValue b) =>
            a.NumberAt("from") < b.NumberAt("from") || (a.NumberAt("from") == b.NumberAt("from") && Array.IndexOf(given, a) < Array.IndexOf(given, b));
    }

    private static double Shallowest(IReadOnlyList<(double Distance, double Depth)> points, double from, double to)
    {
        var profile = new BottomProfile { Points = [.. points.Select(point => new ProfilePoint(point.Distance, Math.Clamp(point.Depth, Limits.Depth.Least, Limits.Depth.Most)))] };
        return points.Where(point => point.Distance >= from && point.Distance <= to).Select(point => point.Depth).Append(profile.DepthAt(from)).Append(profile.DepthAt(to)).Min();
    }

    // Points as the spot's depth has them; empty where they cannot be told.
    private static IReadOnlyList<(double Distance, double Depth)> Shifted(ReadValue spot)
    {
        if (spot["bottom_profile"] is not { } profile) return [];
        IReadOnlyList<(double Distance, double Depth)> points = Points(profile);
        double shift = points.Count > 0 && spot["depth"] is { } depth ? depth.Number - points.Max(point => point.Depth) : 0;
        return shift == 0 ? points : [.. points.Select(point => (point.Distance, point.Depth + shift))];
    }

    private static IReadOnlyList<(double Distance, double Depth)> Points(ReadValue profile)
    {
        if (profile.Items.Count > 0) return [.. profile.Items.Select(item => (item.NumberAt("distance"), item.NumberAt("depth")))];
        if (profile["shape"]?.Word?.Meaning is not BottomShape shape || profile["at"] is not { } start || profile["near_depth"] is not { } nearDepth) return [];
        double at = start.Number, near = nearDepth.Number, far = profile["far_depth"]?.Number ?? near;
        double width = profile["width"]?.Number ?? shape switch
        {
            BottomShape.Bank => BankRun * Math.Max(Math.Abs(far - near), 0.1),
            BottomShape.ChannelEdge => EdgeRun * Math.Max(Math.Abs(far - near), 0.1),
            BottomShape.Ledge => LedgeWidth,
            BottomShape.Hole or BottomShape.Hump => HoleWidth,
            _ => throw new ArgumentOutOfRangeException(nameof(profile), shape, "Not a shape."),
        };
        if (shape is not (BottomShape.Hole or BottomShape.Hump)) return [(at, near), (at + width, far)];
        if (profile["middle_depth"] is not { } middle) return [];
        return [(at, near), (at + (0.25 * width), middle.Number), (at + (0.75 * width), middle.Number), (at + width, far)];
    }

    private static string Place(double distance) => distance < 0.01 ? "below the rod tip" : $"{Length(distance)} out";

    private static string Length(double value) => QuantityText.Both(QuantityKind.Length, value);

    private void Add(ReadValue at, string message, string allowed, string fix) => problems.Add(at.Line, at.Column, at.Path, at.Text, message, allowed, fix);
}
