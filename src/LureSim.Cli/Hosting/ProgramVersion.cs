using System.Reflection;

namespace LureSim.Cli.Hosting;

/// <summary>Version of the program.</summary>
internal static class ProgramVersion
{
    /// <summary>Version without the source revision.</summary>
    public static string Text { get; } =
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "0.0.0";
}
