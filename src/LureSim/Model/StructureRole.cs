namespace LureSim.Model;

/// <summary>What the angler wants of a structure.</summary>
public enum StructureRole
{
    /// <summary>Pass close by: fish hold there.</summary>
    PassClose,

    /// <summary>Keep off: it takes lures.</summary>
    KeepOff,
}
