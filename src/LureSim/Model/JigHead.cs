using System.Runtime.CompilerServices;

namespace LureSim.Model;

/// <summary>Metal of a jig head.</summary>
public enum HeadMetal
{
    /// <summary>Lead, 11,340 kg/m3.</summary>
    Lead,

    /// <summary>Tungsten composite head, 17,000 kg/m3.</summary>
    Tungsten,

    /// <summary>Tin, 7,290 kg/m3.</summary>
    Tin,

    /// <summary>Zinc, 7,140 kg/m3.</summary>
    Zinc,

    /// <summary>Bismuth, 9,780 kg/m3.</summary>
    Bismuth,

    /// <summary>Steel, 7,850 kg/m3.</summary>
    Steel,

    /// <summary>Brass, 8,500 kg/m3; spoons only.</summary>
    Brass,
}

/// <summary>Where the metal of a weighted hook sits.</summary>
public enum WeightPlace
{
    /// <summary>A head at the nose.</summary>
    Nose,

    /// <summary>On the shank of the hook, under the middle of the body.</summary>
    Shank,
}

/// <summary>A jig head.</summary>
/// <param name="Mass">Mass of the head's metal (kg), 0 for an unweighted hook rig, otherwise 0.0005 to 0.2.</param>
/// <param name="Metal">Metal.</param>
/// <param name="HookMass">Mass of the steel hook (kg), 0 for none, otherwise 0.00005 to 0.02.</param>
/// <param name="Label">The weight as the user wrote it ("1/4 oz"), or "unweighted".</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentNullException">There is no label.</exception>
public sealed record JigHead(double Mass, HeadMetal Metal, double HookMass, string Label)
{
    /// <summary>Mass of the head's metal (kg), 0 for an unweighted hook rig, otherwise 0.0005 to 0.2.</summary>
    public double Mass { get; init => field = NoneOr(Limits.HeadMass, value); } = NoneOr(Limits.HeadMass, Mass);

    /// <summary>Metal.</summary>
    public HeadMetal Metal { get; init => field = Guard.Defined(value); } = Guard.Defined(Metal);

    /// <summary>Mass of the steel hook (kg), 0 for none, otherwise 0.00005 to 0.02.</summary>
    public double HookMass { get; init => field = NoneOr(Limits.HookMass, value); } = NoneOr(Limits.HookMass, HookMass);

    /// <summary>The weight as the user wrote it ("1/4 oz"), or "unweighted".</summary>
    public string Label { get; init => field = Guard.Given(value); } = Guard.Given(Label);

    /// <summary>Where the metal sits.</summary>
    public WeightPlace Place { get; init => field = Guard.Defined(value); }

    /// <summary>True if it stands for no head at all: the body is a lure by itself.</summary>
    public bool IsNone { get; init; }

    /// <summary>Stands for the missing head of a body that needs none; it bears the body's name.</summary>
    /// <param name="body">The body.</param>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public static JigHead None(LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return new JigHead(0.0, HeadMetal.Steel, 0.0, body.Label) { IsNone = true };
    }

    private static double NoneOr(ValueRange range, double value, [CallerMemberName] string name = "") =>
        value == 0 ? 0 : range.Check(value, name);
}
