using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Fuzz;
using LureSim.Tests.Scenarios;
using Xunit.Abstractions;

namespace LureSim.Tests.Cli;

/// <summary>
/// A process that is killed at a system call while it writes, and processes that write into one folder at once. The calls are counted and the
/// signal is put in by strace; without it only the second half can be seen. LURESIM_ALL_KILLS=1 kills at every call, otherwise at those that
/// change files.
/// </summary>
public sealed partial class KilledWritingTests(ITestOutputHelper log) : IDisposable
{
    // Calls that change what others see.
    private static readonly string[] Changing = ["mkdir", "rename", "renameat2", "unlink", "rmdir", "fsync", "pwrite64", "ftruncate", "fallocate", "chmod", "fchmod", "copy_file_range", "sendfile", "openat", "link"];

    private static readonly string Child = Path.Combine(AppContext.BaseDirectory, "LureSim.Fuzz.dll");

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    // The name of a call at the start of a line of the log, after the number of its thread.
    [GeneratedRegex("^(?<thread>[0-9]+) +(?<call>[a-z0-9_]+)\\(", RegexOptions.CultureInvariant)]
    private static partial Regex Call();

    [Theory]
    [InlineData("new folder")]
    [InlineData("the same files")]
    [InlineData("other files too")]
    public void A_killed_writer_leaves_the_old_or_the_new_and_who_comes_next_mends_the_rest(string start)
    {
        if (!HasStrace())
        {
            Assert.False(Environment.GetEnvironmentVariable("CI") == "true", "strace is not there or may not trace; .ci/run installs it.");
            log.WriteLine("No strace: nothing was killed.");
            return;
        }

        List<(string Call, int Number)> calls = CallsOfWriting(start);
        if (Environment.GetEnvironmentVariable("LURESIM_ALL_KILLS") != "1")
            calls = [.. calls.Where(call => Changing.Contains(call.Call))];
        Assert.True(calls.Count > 10, $"{calls.Count} calls were seen.");
        int killed = 0, old = 0, @new = 0, mixed = 0;
        foreach ((string call, int number) in calls)
        {
            string root = Prepare(start, string.Create(CultureInfo.InvariantCulture, $"{call}-{number}"));
            int code = Run("strace", "-f", "-qq", "-o", "/dev/null", "-e", $"trace={call}", "-e", string.Create(CultureInfo.InvariantCulture, $"inject={call}:signal=SIGKILL:when={number}"), "dotnet", Child, "write", root, "new");
            killed += code == 0 ? 0 : 1;
            string at = $"{start}, killed at {call} {number}";
            bool[] isNew = [.. Writer.Names.Select(name => IsNew(root, name, start, at))];
            Assert.True(start != "other files too" || File.ReadAllText(Path.Combine(root, "own.txt")) == "own", at);
            if (isNew.Distinct().Count() == 2)
            {
                Assert.True(start == "other files too", $"{at}: half of the files are new");
                mixed++;
            }
            else
            {
                old += isNew[0] ? 0 : 1;
                @new += isNew[0] ? 1 : 0;
            }

            // The next command that is to write there, before it has computed anything.
            AtomicFiles.RequireFolder(root);
            Assert.True(Writer.Names.Select(name => IsNew(root, name, start, at + ", mended")).Distinct().Count() == 1, $"{at}: half of the files are new after mending");
            AtomicFiles.Write(root, [.. Writer.Names.Select(name => OutputFile.Text(name, "next"))], CancellationToken.None);
            Assert.All(Writer.Names, name => Assert.Equal("next", File.ReadAllText(Path.Combine(root, name))));
            Assert.DoesNotContain(Directory.EnumerateFileSystemEntries(folder.Path, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }), path => path.EndsWith(AtomicFiles.Mark, StringComparison.Ordinal) || path.Contains("unfinished", StringComparison.Ordinal));
            Directory.Delete(root, recursive: true);
        }

        log.WriteLine($"{start}: killed {killed} times at {calls.Count} calls; {old} left the old files, {@new} the new ones, {mixed} a list of what to go on with.");
        Assert.True(killed > calls.Count / 2, $"{killed} of {calls.Count} were killed.");
        // The last call of a new folder is the one that puts it there, and a call that is killed does nothing.
        Assert.True(old > 0 && (@new > 0 || start == "new folder"));
        Assert.True(start == "other files too" || mixed == 0);
    }

    [Theory]
    [InlineData("the same files")]
    [InlineData("other files too")]
    public void Writers_at_once_write_one_after_the_other(string start)
    {
        string root = Prepare(start, "shared");
        using var stop = new CancellationTokenSource();
        string[] words = ["one", "two", "three", "four"];
        Thread[] threads = [.. words.Select(word => new Thread(() =>
        {
            for (int i = 0; i < 20; i++)
                AtomicFiles.Write(root, [.. Writer.Names.Select(name => OutputFile.Text(name, Writer.Content(name, word)))], CancellationToken.None);
        }))];
        Process[] processes = [.. words.Take(2).Select(word => Start("dotnet", Child, "write", root, word))];
        foreach (Thread thread in threads)
            thread.Start();
        foreach (Thread thread in threads)
            thread.Join();
        foreach (Process process in processes)
        {
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            process.Dispose();
        }

        string[] found = [.. Writer.Names.Select(name => File.ReadAllText(Path.Combine(root, name)))];
        Assert.Contains(words, word => Writer.Names.Select((name, i) => found[i] == Writer.Content(name, word)).All(same => same));
        string[] entries = [.. folder.Content().Order(StringComparer.Ordinal)];
        Assert.DoesNotContain(entries, name => name.Contains(AtomicFiles.Mark, StringComparison.Ordinal));
    }

    [Fact]
    public void Waiting_for_another_writer_can_be_stopped()
    {
        string root = Path.Combine(folder.Path, "held");
        using var stop = new CancellationTokenSource(TimeSpan.FromMilliseconds(300));
        using var held = new ManualResetEventSlim();
        var holder = new Thread(() =>
        {
            using var turn = FolderLock.Take(root, CancellationToken.None);
            held.Set();
            stop.Token.WaitHandle.WaitOne();
            Thread.Sleep(300);
        });
        holder.Start();
        held.Wait();
        Assert.ThrowsAny<OperationCanceledException>(() => AtomicFiles.Write(root, [OutputFile.Text("a.txt", "1")], stop.Token));
        holder.Join();
        Assert.Empty(folder.Content());
    }

    // True for the new content, false for the old one or none where there was none; anything else is a half.
    private static bool IsNew(string root, string name, string start, string at)
    {
        string path = Path.Combine(root, name);
        string? found = File.Exists(path) ? File.ReadAllText(path) : null;
        if (found == Writer.Content(name, "new"))
            return true;
        Assert.True(start == "new folder" ? found is null : found == Writer.Content(name, "old"), $"{at}: {name} is neither old nor new");
        return false;
    }

    private string Prepare(string start, string name)
    {
        string root = Path.Combine(folder.Path, name);
        if (start == "new folder")
            return root;
        foreach (string file in Writer.Names)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(root, file))!);
            File.WriteAllText(Path.Combine(root, file), Writer.Content(file, "old"));
        }

        if (start == "other files too")
            File.WriteAllText(Path.Combine(root, "own.txt"), "own");
        return root;
    }

    // The calls of the writing thread from the first that names the folder on, each with how many of its name came before it.
    private List<(string Call, int Number)> CallsOfWriting(string start)
    {
        string root = Prepare(start, "counted"), file = Path.Combine(folder.Path, "calls");
        Assert.Equal(0, Run("strace", "-f", "-qq", "-s", "300", "-o", file, "dotnet", Child, "write", root, "new"));
        Match[] lines = [.. File.ReadLines(file).Select(line => Call().Match(line)).Where(match => match.Success)];
        string[] texts = [.. File.ReadLines(file).Where(line => Call().IsMatch(line))];

        // Its own arguments name the folder too.
        int begin = Array.FindIndex(texts, text => text.Contains(root, StringComparison.Ordinal) && !text.Contains("execve", StringComparison.Ordinal));
        string thread = lines[begin].Groups["thread"].Value;
        int end = Array.FindLastIndex(texts, text => text.StartsWith(thread + " ", StringComparison.Ordinal) && (text.Contains(root, StringComparison.Ordinal) || text.Contains(AtomicFiles.Mark, StringComparison.Ordinal)));
        Dictionary<string, int> counts = [];
        List<(string Call, int Number)> calls = [];
        for (int i = 0; i <= end; i++)
        {
            if (lines[i].Groups["thread"].Value != thread)
                continue;
            string call = lines[i].Groups["call"].Value;
            counts[call] = counts.GetValueOrDefault(call) + 1;
            if (i >= begin && call is not ("exit" or "exit_group"))
                calls.Add((call, counts[call]));
        }

        File.Delete(file);
        Directory.Delete(root, recursive: true);
        return calls;
    }

    private static bool HasStrace()
    {
        try
        {
            return OperatingSystem.IsLinux() && Run("strace", "-f", "-qq", "-o", "/dev/null", "true") == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static int Run(string program, params string[] arguments)
    {
        using Process process = Start(program, arguments);
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(2)), "The child does not end.");
        return process.ExitCode;
    }

    private static Process Start(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true };
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        Process process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }
}
