using LureSim.Light;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>An eye that looks at a lure: from where, how deep the lure is, and what it counts.</summary>
/// <param name="Direction">Where the eye looks.</param>
/// <param name="Depth">Depth of the lure (m), 0-500.</param>
/// <param name="Weight">Share of all looks, 0 to 1; the weights add to 1.</param>
public readonly record struct SightLook(ViewDirection Direction, double Depth, double Weight);

/// <summary>How a lure is seen where it runs.</summary>
/// <param name="SeenFrom">The one measure by which colours are compared (m): mean over the looks of the distance from which the lure is made out, each cut at the reaction distance there, beyond which being made out gains nothing.</param>
/// <param name="MadeOut">The same without the cut (m).</param>
/// <param name="Mode">How it stands against the water, in the look of most weight.</param>
/// <param name="Part">The part that carries farther than the whole, in the look of most weight; null for the whole.</param>
/// <param name="PartsApart">Distance to which its parts can be told apart, mean over the looks (m); null for a lure of one colour.</param>
public sealed record SeenLure(double SeenFrom, double MadeOut, SightMode Mode, PatternPart? Part, double? PartsApart);

/// <summary>
/// What a fish sees of a lure from where fish see it, at the depth, in the light and in the water in which the lure runs. Every distance of the choice of a colour comes from here.
/// </summary>
public sealed class SightMeasure
{
    private static readonly LurePattern White = LurePattern.Plain(LureColours.White);
    private static readonly LurePattern HalfAsBright = LurePattern.Plain(new LureColour("half as bright as white", 0.5 * LureColours.White.Reflectance, ColourBasis.StandIn));

    private readonly SightScene[] scenes;
    private readonly double[] reaction;
    private readonly int most;

    /// <summary>Sets the looks.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="eye">Eye of the fish.</param>
    /// <param name="body">The body, whose size is seen.</param>
    /// <param name="looks">From where it is looked at; at least one, their weights add to 1.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no look.</exception>
    public SightMeasure(LightField field, FishEye eye, LureBody body, IReadOnlyList<SightLook> looks)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(eye);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(looks);
        Guard.That(looks.Count > 0, "At least one look.", nameof(looks));
        Looks = [.. looks];
        scenes = [.. looks.Select(look => new SightScene(field, eye, look.Direction, look.Depth, body.ApparentSize))];
        reaction = [.. looks.Select(look => ReactionDistance.In(field, look.Depth, body.Length))];
        Reach = looks.Select((look, i) => look.Weight * reaction[i]).Sum();
        most = Enumerable.Range(0, looks.Count).MaxBy(i => looks[i].Weight);
    }

    private SightMeasure(SightMeasure other, FishEye eye)
    {
        (Looks, reaction, Reach, most) = (other.Looks, other.reaction, other.Reach, other.most);
        scenes = [.. other.scenes.Select(scene => scene.With(SightFactors.Own, eye))];
    }

    /// <summary>The same looks through another eye.</summary>
    /// <param name="eye">The eye.</param>
    /// <exception cref="ArgumentNullException"><paramref name="eye"/> is null.</exception>
    public SightMeasure Through(FishEye eye) => new(this, Guard.Given(eye));

    /// <summary>The looks.</summary>
    public IReadOnlyList<SightLook> Looks { get; }

    /// <summary>Distance from which a fish turns to a lure (m), mean over the looks (<see cref="ReactionDistance"/>): the most that <see cref="SeenLure.SeenFrom"/> can be.</summary>
    public double Reach { get; }

    /// <summary>How a lure is seen.</summary>
    /// <param name="lure">The lure.</param>
    /// <exception cref="ArgumentNullException"><paramref name="lure"/> is null.</exception>
    public SeenLure Of(LurePattern lure)
    {
        ArgumentNullException.ThrowIfNull(lure);
        double seen = 0, madeOut = 0, apart = 0;
        bool several = false;
        LureSight? main = null;
        for (int i = 0; i < scenes.Length; i++)
        {
            LureSight sight = LureSights.Of(scenes[i], lure);
            double weight = Looks[i].Weight;
            seen += weight * Math.Min(sight.Distance, reaction[i]);
            madeOut += weight * sight.Distance;
            several |= sight.PartsApart is not null;
            apart += weight * (sight.PartsApart ?? 0);
            if (i == most) main = sight;
        }

        return new SeenLure(seen, madeOut, main!.Mode, main.Part, several ? apart : null);
    }

    /// <summary>True where the cones of the fish tell white from a grey half as bright by more than a likeness may differ, in the look of most weight: where they do not, nothing is a likeness.</summary>
    public bool TellsColours => LureSights.Difference(scenes[most], White, HalfAsBright, 1.0) > LureSights.LikenessSteps;

    /// <summary>How far a lure is from looking like something else close up, just-noticeable steps, mean over the looks (<see cref="LureSights.Difference"/>).</summary>
    /// <param name="lure">The lure.</param>
    /// <param name="other">What it is to look like.</param>
    /// <param name="distance">Distance at which parts must be told apart to count one by one (m), above 0.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public double Difference(LurePattern lure, LurePattern other, double distance) =>
        scenes.Select((scene, i) => Looks[i].Weight * LureSights.Difference(scene, lure, other, distance)).Sum();
}
