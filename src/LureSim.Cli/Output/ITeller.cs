namespace LureSim.Cli.Output;

/// <summary>Tells the one who waits more than the share done.</summary>
internal interface ITeller
{
    /// <summary>Shows it; from any thread.</summary>
    void Tell(string sentence);

    /// <summary>Names what is being done from now on; from any thread.</summary>
    void Name(string part);
}
