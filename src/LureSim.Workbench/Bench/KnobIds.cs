namespace LureSim.Workbench.Bench;

/// <summary>Names of the knobs, as the address of the page has them.</summary>
internal static class KnobIds
{
    public const string Current = "cur";
    public const string Depth = "dep";
    public const string Clarity = "clr";
    public const string Count = "cnt";
    public const string Speed = "spd";
    public const string Head = "w";
    public const string Cast = "cst";
    public const string Line = "lin";
    public const string Wind = "wnd";
    public const string Sun = "sun";
    public const string Temperature = "tmp";
    public const string ZoneTop = "zt";
    public const string ZoneBottom = "zb";
    public const string Direction = "dir";
    public const string Lift = "lft";
    public const string Rest = "rst";
    public const string Aim = "aim";
    public const string Water = "wat";
    public const string Retrieve = "way";
    public const string Bait = "bait";
    public const string Hook = "rig";
    public const string Knot = "knot";
    public const string Angler = "stand";

    /// <summary>No knob: what was noted on the page, in the words of a quick note, the oldest first.</summary>
    public const string Seen = "seen";

    /// <summary>Values of <see cref="Hook"/>.</summary>
    public const string AsInFile = "as in the file";
    public const string Straight = "straight";
    public const string OffCenter = "hook out off center";
    public const string Bent = "bent";

    /// <summary>A count that ends on the bottom.</summary>
    public const string ToBottom = "to bottom";
}
