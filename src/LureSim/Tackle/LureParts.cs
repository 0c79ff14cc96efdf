using LureSim.Data;
using LureSim.Model;

namespace LureSim.Tackle;

/// <summary>
/// Puts a lure together from its parts: head, hook, sections of the body, ballast, lip. Dimensions that the scenario does not give come from
/// Data/tackle/lure_parts.csv and rig_proportions.csv, which say of each whether it is invented.
/// </summary>
public static class LureParts
{
    // A bait bunched harder than this kinks instead of arching (radians), assumed.
    private const double LargestArch = 0.6;

    // Metal of the hook or lead nearer to the tail than this share of the length still leaves a stump of tail that can swing.
    private const double ShortestTail = 0.08;

    private static readonly Dictionary<BodyProfile, OutlineSection[]> SectionsByProfile = ReadSections();

    private static readonly Dictionary<string, double> Figures = ReadFigures();

    /// <summary>Puts a lure together.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">Body.</param>
    /// <param name="rigging">How it is put on its hook.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not positive.</exception>
    public static LureAssembly Of(JigHead head, LureBody body, Rigging rigging)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(rigging);
        Guard.Positive(body.Length);
        Guard.Positive(body.Height);
        Guard.Positive(body.Width);
        return body.Profile switch
        {
            BodyProfile.HardTwitchbait => Twitchbait(body),
            BodyProfile.Spoon => Spoon(body),
            _ => Soft(head, body, rigging),
        };
    }

    /// <summary>The sections of a body's outline from nose to tail; none for a spoon.</summary>
    /// <param name="profile">Profile.</param>
    public static IReadOnlyList<OutlineSection> Sections(BodyProfile profile) => SectionsByProfile.TryGetValue(profile, out OutlineSection[]? found) ? found : [];

    /// <summary>Common length of the shank as a share of the body's length.</summary>
    /// <param name="profile">Profile of a soft body.</param>
    public static double CommonShankShare(BodyProfile profile) => Figures[profile switch
    {
        BodyProfile.PaddleTail => "shank_share_paddle_tail",
        BodyProfile.ShrimpImitation => "shank_share_shrimp_imitation",
        _ => "shank_share_soft_jerkbait",
    }];

    /// <summary>A figure of Data/tackle/rig_proportions.csv.</summary>
    /// <param name="name">Its name in the table.</param>
    /// <exception cref="KeyNotFoundException">The table has no such figure.</exception>
    public static double Figure(string name) => Figures[name];

    /// <summary>
    /// Bend of a body by where the hook comes out (radians, away from the side on which it shows): the nose is clamped on the eye and the body pushed over by e
    /// at the end of the engaged length l, free beyond: a cantilever with an end load, whose end slope is 3/2 e/l (Euler-Bernoulli beam).
    /// </summary>
    /// <param name="offset">Exit beside the centre line (m), to the left positive.</param>
    /// <param name="engagement">Length of body on the hook (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above 0.</exception>
    public static double BendOfExit(double offset, double engagement)
    {
        Guard.Positive(engagement);
        return -Math.Atan(1.5 * offset / engagement);
    }

    /// <summary>Where the hook would come out of a body bent by an angle: the inverse of <see cref="BendOfExit"/> (m).</summary>
    /// <param name="bend">Bend (radians), below pi/2 in size.</param>
    /// <param name="engagement">Length of body on the hook (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double ExitOfBend(double bend, double engagement)
    {
        Guard.InRange(bend, -1.5, 1.5, unit: "rad");
        Guard.Positive(engagement);
        return -Math.Tan(bend) * engagement / 1.5;
    }

    /// <summary>Slope at the ends of a body that is bunched by a length s between two points a length c apart (radians): for a circular arc
    /// arc/chord = a/sin a = 1 + a^2/6, so a = sqrt(6 s/c); at most 0.6, beyond which a bait kinks.</summary>
    /// <param name="surplus">s (m), 0 or more.</param>
    /// <param name="chord">c (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is out of range.</exception>
    public static double ArchOfSurplus(double surplus, double chord)
    {
        Guard.InRange(surplus, 0, 1);
        Guard.Positive(chord);
        return Math.Min(LargestArch, Math.Sqrt(6 * surplus / chord));
    }

    private static LureAssembly Soft(JigHead head, LureBody body, Rigging rigging)
    {
        double length = body.Length;
        double shank = (rigging.ShankShare ?? CommonShankShare(body.Profile)) * length;
        double sideways = rigging.Bend + BendOfExit(rigging.ExitSideways, shank);
        double upright = BendOfExit(rigging.ExitAbove, shank) - ArchOfSurplus(rigging.PulledUp, shank);
        double volume = Math.PI / 4 * body.Height * body.Width * length * JigLure.Fill(body.Profile);
        var parts = new List<LurePart>();

        double headVolume = head.Mass / Materials.Density(head.Metal);
        double radius = Math.Cbrt(3 * headVolume / (4 * Math.PI));
        var tow = new Station(0, 0, 0);
        if (head.Mass > 0 && head.Place == WeightPlace.Nose)
        {
            parts.Add(new LurePart("head", head.Mass, headVolume, default, Inertia.Ball(head.Mass, radius)));

            // The eye stands on the head and turns with it.
            double above = Figures["eye_above_head"] * 2 * radius;
            tow = new Station(0, 0, above);
        }
        else if (head.Mass > 0)
        {
            var centre = new Station(Figures["shank_weight_station"] * shank, 0, -Figures["shank_weight_below"] * body.Height);
            parts.Add(new LurePart("shank weight", head.Mass, headVolume, centre, Inertia.Ball(head.Mass, radius)));
        }

        if (head.HookMass > 0)
        {
            // On a jig the shank lies in the body and the point stands over it; a weedless hook carries its shank under the body, its point lies in the back.
            bool weedless = head.Mass == 0 || head.Place == WeightPlace.Shank;
            double below = weedless ? Figures["weedless_shank_below"] * body.Height : 0;
            double gape = weedless ? below + (body.Height / 2) : Math.Min(Figures["gape_per_shank"] * shank, 1.2 * body.Height);
            double inShank = Figures["hook_mass_in_shank"] * head.HookMass;
            double rest = head.HookMass - inShank;
            parts.Add(new LurePart("shank", inShank, inShank / Materials.SteelDensity, new Station(shank / 2, 0, -below), Inertia.Rod(inShank, shank)));
            var point = new Station(shank, gape / 2 * Math.Sin(rigging.PointLean), (gape / 2 * Math.Cos(rigging.PointLean)) - below);
            double across = rest * gape * gape / 12;
            parts.Add(new LurePart("bend and point", rest, rest / Materials.SteelDensity, point, Inertia.Diagonal(across, across, 0)));
        }

        parts.AddRange(BodyParts(body, volume, volume * body.Density, shank, sideways, upright));
        return new LureAssembly
        {
            Parts = parts,
            Length = length,
            Height = body.Height,
            Width = body.Width,
            TowPoint = tow,
            Engagement = shank,
            BendSideways = sideways,
            BendUp = upright,
            Tail = Tail(body, volume, shank),
        };
    }

    // Sections of the body along its bent centre line: an arc as far as the hook holds it, straight beyond.
    private static IEnumerable<LurePart> BodyParts(LureBody body, double volume, double mass, double arc, double sideways, double upright)
    {
        OutlineSection[] sections = SectionsByProfile[body.Profile];
        double sum = sections.Sum(s => s.Weight);
        foreach (OutlineSection s in sections)
        {
            double share = s.Weight / sum;
            double middle = (s.From + s.To) / 2 * body.Length;
            double along = Math.Min(1, arc > 0 ? middle / arc : 1);
            Inertia own = Inertia.Cylinder(mass * share, (s.To - s.From) * body.Length, s.Height * body.Height, s.Width * body.Width);

            // A tail to the left is a section whose nose points to the right.
            own = own.Yawed(-sideways * along).Raised(-upright * along);
            yield return new LurePart(s.Name, mass * share, volume * share, CentreLine(middle, arc, sideways, upright), own);
        }
    }

    /// <summary>Centre line of a bent body at a length from its nose: slope 0 at the nose, growing evenly to the bend at the end of the arc, straight beyond.</summary>
    /// <param name="length">Length from the nose along the body (m).</param>
    /// <param name="arc">Length of the arc (m); 0 for a body straight from the nose.</param>
    /// <param name="sideways">Bend (radians), tail to the left positive.</param>
    /// <param name="upright">Bend (radians), tail up positive.</param>
    public static Station CentreLine(double length, double arc, double sideways, double upright)
    {
        double inside = Math.Min(length, arc), beyond = Math.Max(0, length - arc);
        double left = (arc > 0 ? sideways * inside * inside / (2 * arc) : 0) + (beyond * Math.Sin(sideways));
        double up = (arc > 0 ? upright * inside * inside / (2 * arc) : 0) + (beyond * Math.Sin(upright));
        return new Station(inside + (beyond * Math.Cos(sideways) * Math.Cos(upright)), left, up);
    }

    // The tail swings from the beginning of the stem, or from where the hook ends if that is farther aft.
    private static FreeTail? Tail(LureBody body, double volume, double shank)
    {
        if (body.Profile != BodyProfile.PaddleTail)
            return null;
        OutlineSection[] sections = SectionsByProfile[body.Profile];
        double sum = sections.Sum(s => s.Weight);
        OutlineSection stem = sections.First(s => s.Name == "stem");
        OutlineSection paddle = sections[^1];
        double free = stem.From * body.Length;
        double hinge = Math.Min(Math.Max(free, shank), (1 - ShortestTail) * body.Length);
        double mass = 0, inertia = 0;
        foreach (OutlineSection s in sections)
        {
            double from = Math.Max(s.From * body.Length, hinge), to = s.To * body.Length;
            if (to <= from)
                continue;
            double m = volume * body.Density * s.Weight / sum * (to - from) / ((s.To - s.From) * body.Length);
            double arm = ((from + to) / 2) - hinge;
            mass += m;
            inertia += m * ((arm * arm) + ((to - from) * (to - from) / 12) + (s.Width * body.Width * s.Width * body.Width / 16));
        }

        // A stem of elliptic section bent over the thin part of its length: k = E I / l, I = pi/64 h w^3.
        // It thickens towards the paddle, so a hook that holds it farther aft leaves a stouter piece to bend.
        double thicker = 1 + (Figures["stem_thickening"] * Math.Clamp((hinge - free) / ((paddle.From * body.Length) - free), 0, 1));
        double height = thicker * stem.Height * body.Height, width = thicker * stem.Width * body.Width;
        double bent = Figures["stem_bending_share"] * (body.Length - hinge);
        double stiffness = Figures["soft_modulus_pa"] * Math.PI / 64 * height * width * width * width / bent;
        double edge = paddle.Height * body.Height;
        return new FreeTail(hinge, body.Length - hinge, edge, Math.PI / 4 * edge * edge * 0.8, mass, inertia, stiffness, (body.Length - hinge) / (body.Length - free));
    }

    private static LureAssembly Twitchbait(LureBody body)
    {
        double length = body.Length;
        double volume = Math.PI / 4 * body.Height * body.Width * length * JigLure.Fill(body.Profile);
        double treble = Figures["treble_mass_share"] * TacklePresets.HookMass(length);
        double trebleVolume = treble / Materials.SteelDensity;
        double lipArea = body.Lip is { } l ? l.Length * l.Width : 0;
        double lipVolume = lipArea * Figures["lip_thickness_m"];
        double lipMass = lipVolume * Figures["lip_density_kg_m3"];
        double total = body.Density * (volume + (2 * trebleVolume) + lipVolume);

        // What is left after shell, hooks and lip is ballast in the belly; a very light bait has a thinner shell instead.
        double rest = Math.Max(0.2 * total, total - (2 * treble) - lipMass);
        double shell = Math.Min(rest, Figures["shell_fill"] * volume * Figures["shell_density_kg_m3"]);
        double ballast = rest - shell;
        List<LurePart> parts = [.. BodyParts(body, volume, shell, 0, 0, 0)];
        double ballastRadius = Math.Cbrt(3 * ballast / (4 * Math.PI * Materials.SteelDensity));
        parts.Add(new LurePart("ballast", ballast, 0, new Station(Figures["ballast_station"] * length, 0, -Figures["ballast_below"] * body.Height), Inertia.Ball(ballast, ballastRadius)));
        double hang = Figures["treble_hang_m"];
        parts.Add(new LurePart("front hook", treble, trebleVolume, new Station(Figures["treble_front_station"] * length, 0, -(body.Height / 2) - hang), Inertia.Ball(treble, hang / 2)));
        parts.Add(new LurePart("rear hook", treble, trebleVolume, new Station((Figures["treble_rear_station"] * length) + (hang / 2), 0, -hang), Inertia.Ball(treble, hang / 2)));
        if (body.Lip is { } lip)
        {
            double root = Figures["lip_root_below"] * body.Height;
            var centre = new Station(-lip.Length / 2 * Math.Cos(lip.Angle), 0, -root - (lip.Length / 2 * Math.Sin(lip.Angle)));

            // A plate seen along its own length, turned nose down by the lip's angle.
            Inertia plate = Inertia.Diagonal(lipMass * lip.Width * lip.Width / 12, lipMass * lip.Length * lip.Length / 12, lipMass * ((lip.Length * lip.Length) + (lip.Width * lip.Width)) / 12);
            parts.Add(new LurePart("lip", lipMass, lipVolume, centre, plate.Raised(-lip.Angle)));
        }

        return new LureAssembly { Parts = parts, Length = length, Height = body.Height, Width = body.Width, TowPoint = default };
    }

    private static LureAssembly Spoon(LureBody body)
    {
        double volume = Math.PI / 4 * body.Length * body.Width * body.Height;
        double mass = volume * Materials.Density(body.Metal ?? HeadMetal.Brass);
        double hook = Figures["spoon_hook_share"] * TacklePresets.HookMass(body.Length);
        double width2 = body.Width * body.Width, length2 = body.Length * body.Length;
        double trail = 0.15 * body.Length;

        // An elliptic plate: m/16 times the squares of its axes.
        Inertia plate = Inertia.Diagonal(mass * width2 / 16, mass * length2 / 16, mass * (length2 + width2) / 16);
        return new LureAssembly
        {
            Parts =
            [
                new LurePart("plate", mass, volume, new Station(body.Length / 2, 0, 0), plate),
                new LurePart("hook", hook, hook / Materials.SteelDensity, new Station(body.Length + trail, 0, 0), Inertia.Rod(hook, 2 * trail)),
            ],
            Length = body.Length,
            Height = body.Height,
            Width = body.Width,
            TowPoint = default,
        };
    }

    private static Dictionary<BodyProfile, OutlineSection[]> ReadSections() => ReferenceTable.Tackle("lure_parts").Rows
        .GroupBy(row => row.Text("profile"))
        .ToDictionary(
            group => TacklePresets.ProfileNamed(group.Key),
            group => group.Select(row => new OutlineSection(row.Text("section"), row.Number("from_share"), row.Number("to_share"), row.Number("height_share"), row.Number("width_share"))).ToArray());

    private static Dictionary<string, double> ReadFigures() => ReferenceTable.Tackle("rig_proportions").Rows.ToDictionary(row => row.Text("name"), row => row.Number("value"));
}

/// <summary>A section of a body's outline.</summary>
/// <param name="Name">What it is.</param>
/// <param name="From">Where it begins, share of the length from the nose.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Height">Height as a share of the body's greatest.</param>
/// <param name="Width">Width as a share of the body's greatest.</param>
public sealed record OutlineSection(string Name, double From, double To, double Height, double Width)
{
    /// <summary>Its volume as a share of the body's box (an elliptic cylinder fills pi/4 of it).</summary>
    internal double Weight => (To - From) * Height * Width;
}
