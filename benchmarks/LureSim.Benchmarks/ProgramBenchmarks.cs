using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;

namespace LureSim.Benchmarks;

/// <summary>The program from the start of its process to its end, as it stands in its folder after a release build of the solution.</summary>
[SimpleJob(RunStrategy.Monitoring, launchCount: 1, warmupCount: 1, iterationCount: 5)]
public class ProgramBenchmarks
{
    private string root = "";
    private string output = "";

    /// <summary>Finds the program.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LureSim.sln"))) folder = folder.Parent;
        root = folder?.FullName ?? throw new InvalidOperationException("The benchmarks are to be run from the tree.");
        output = Directory.CreateTempSubdirectory("luresim-benchmark").FullName;
    }

    /// <summary>Takes away what the plans have written.</summary>
    [GlobalCleanup]
    public void CleanUp() => Directory.Delete(output, true);

    /// <summary>Help.</summary>
    [Benchmark]
    public void Help() => Run("--help");

    /// <summary>A scenario checked.</summary>
    [Benchmark]
    public void Check() => Run("check", "scenarios/bridge-channel.yaml");

    /// <summary>The plan of the channel under a bridge with its tries, page and figures.</summary>
    [Benchmark]
    public void PlanOfBridge() => Run("plan", "scenarios/bridge-channel.yaml", "--out", output);

    private void Run(params string[] arguments)
    {
        string program = Path.Combine(root, "src", "LureSim.Cli", "bin", "Release", "net10.0", "LureSim.Cli.dll");
        var start = new ProcessStartInfo("dotnet", [program, .. arguments]) { WorkingDirectory = root, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException("The program does not start.");
        Task<string> said = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException($"luresim {string.Join(' ', arguments)} ended with {process.ExitCode}: {said.Result}");
    }
}
