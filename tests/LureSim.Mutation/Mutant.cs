namespace LureSim.Mutation;

/// <summary>What a mutant changes.</summary>
internal enum MutantKind
{
    /// <summary>Plus for minus, times for divided by, or the other way round.</summary>
    Operator,

    /// <summary>A number times 1.2.</summary>
    Constant,

    /// <summary>A comparison of two numbers turned round.</summary>
    Comparison,

    /// <summary>A minus sign left out.</summary>
    Sign,

    /// <summary>One that is always tried, see <see cref="KnownMutants"/>.</summary>
    Known,
}

/// <summary>One wrong formula.</summary>
/// <param name="Number">Its number in the run, from 1; the environment variable names it.</param>
/// <param name="Folder">Folder of src/LureSim.</param>
/// <param name="File">File, from the folder src/LureSim.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Kind">What it changes.</param>
/// <param name="Before">The formula.</param>
/// <param name="After">What the mutant makes of it.</param>
internal sealed record Mutant(int Number, string Folder, string File, int Line, MutantKind Kind, string Before, string After);

/// <summary>What became of a mutant.</summary>
internal enum MutantEnd
{
    /// <summary>A test failed.</summary>
    Killed,

    /// <summary>The tests did not end in their time.</summary>
    TimedOut,

    /// <summary>All tests passed.</summary>
    Survived,
}

/// <summary>A mutant and its end.</summary>
/// <param name="Mutant">The mutant.</param>
/// <param name="End">What became of it.</param>
/// <param name="By">The test that failed, or empty.</param>
internal sealed record MutantResult(Mutant Mutant, MutantEnd End, string By);
