using System.Diagnostics;
using System.Net;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using LureSim.Workbench.Server;

namespace LureSim.Workbench.Tests;

/// <summary>The program as it is packed and installed, started in a folder where nothing of it lies. LURESIM_TOOL names the installed command.</summary>
public partial class PackedToolTests
{
    [PackedToolFact]
    public async Task The_installed_tool_serves_every_file_whole()
    {
        string folder = Directory.CreateTempSubdirectory("luresim-foreign-").FullName;
        File.Copy(Path.Combine(Repository(), "tests", "LureSim.Browser.Tests", "creek.yaml"), Path.Combine(folder, "creek.yaml"));
        var start = new ProcessStartInfo(PackedToolFactAttribute.Tool!, ["open", "creek.yaml", "--no-browser"]) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        using Process tool = Process.Start(start)!;
        try
        {
            string link = await LinkAsync(tool);
            using var client = new HttpClient(new HttpClientHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = true });
            string page = await client.GetStringAsync(link);
            Assert.Contains("in the zone", page, StringComparison.Ordinal);
            foreach (string name in Assets.Names.Where(name => !name.EndsWith(".html", StringComparison.Ordinal)))
            {
                byte[] body = await client.GetByteArrayAsync(new Uri(new Uri(link), "/assets/" + name));
                (byte[] content, _) = Assets.Find(name)!.Value;
                Assert.True(body.Length == content.Length, $"{name}: {body.Length} of {content.Length} bytes");
                Assert.Equal(SHA256.HashData(content), SHA256.HashData(body));
            }
        }
        finally
        {
            tool.Kill(entireProcessTree: true);
            await tool.WaitForExitAsync();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<string> LinkAsync(Process tool)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(2));
        while (await tool.StandardOutput.ReadLineAsync(patience.Token) is { } line)
        {
            if (Link().Match(line) is { Success: true } found) return found.Value;
        }

        throw new InvalidOperationException("The tool ended without a link: " + await tool.StandardError.ReadToEndAsync(patience.Token));
    }

    private static string Repository()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LureSim.sln"))) folder = folder.Parent;
        return folder!.FullName;
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+/open\?k=\S+")]
    private static partial Regex Link();
}

/// <summary>A test of the installed tool; skipped where LURESIM_TOOL does not name it.</summary>
public sealed class PackedToolFactAttribute : FactAttribute
{
    public PackedToolFactAttribute()
    {
        Skip = Tool is null ? "The installed tool is tested where LURESIM_TOOL names its command." : null;
    }

    /// <summary>The command; null where none is named.</summary>
    public static string? Tool { get; } = Environment.GetEnvironmentVariable("LURESIM_TOOL") is { Length: > 0 } named ? named : null;
}
