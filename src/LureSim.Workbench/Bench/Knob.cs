namespace LureSim.Workbench.Bench;

/// <summary>Where a knob stands on the page.</summary>
internal enum KnobPlace
{
    /// <summary>In the strip, always visible.</summary>
    Strip,

    /// <summary>Behind "More".</summary>
    More,

    /// <summary>Beside the swimming lure.</summary>
    Rig,
}

/// <summary>How a knob is turned.</summary>
internal enum KnobKind
{
    /// <summary>A slider over its stops.</summary>
    Slider,

    /// <summary>A choice from a list.</summary>
    Choice,
}

/// <summary>One position of a knob.</summary>
/// <param name="Value">As a scenario writes it; what the address of the page holds.</param>
/// <param name="Si">Its size (SI), or its place in the list; increasing along a slider.</param>
/// <param name="Label">In words.</param>
internal sealed record KnobStop(string Value, double Si, string Label);

/// <summary>Something that the hand can change. Positions are steps, so that the same question is asked again and not one beside it.</summary>
/// <param name="Id">Name in the address of the page.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Kind">How it is turned.</param>
/// <param name="Stops">Its positions.</param>
/// <param name="FromFile">The position that the file has.</param>
internal sealed record Knob(string Id, string Name, KnobPlace Place, KnobKind Kind, IReadOnlyList<KnobStop> Stops, int FromFile)
{
    /// <summary>First position beyond what the model was checked for; the number of positions where there is none.</summary>
    public int UncheckedFrom { get; init; } = Stops.Count;

    /// <summary>The position of a value: its own, else the nearest; -1 for a text that is none.</summary>
    /// <param name="value">A value as a scenario writes it.</param>
    /// <param name="size">Its size (SI), where it is no stop's own; not a number where it has none.</param>
    public int Find(string value, double size)
    {
        for (int i = 0; i < Stops.Count; i++)
        {
            if (string.Equals(Stops[i].Value, value, StringComparison.Ordinal)) return i;
        }

        if (Kind == KnobKind.Choice || double.IsNaN(size)) return -1;
        int nearest = 0;
        for (int i = 1; i < Stops.Count; i++)
        {
            if (Math.Abs(Stops[i].Si - size) < Math.Abs(Stops[nearest].Si - size)) nearest = i;
        }

        return nearest;
    }
}
