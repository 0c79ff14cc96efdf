using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Cli;

public sealed class AtomicFilesTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Files_are_written_with_their_folders_and_nothing_else()
    {
        AtomicFiles.Write(Path.Combine(folder.Path, "a", "b"), [OutputFile.Text("x.txt", "1"), OutputFile.Text("c/y.txt", "2")], CancellationToken.None);
        Assert.Equal(["a", "a/b", "a/b/c", "a/b/c/y.txt", "a/b/x.txt"], folder.Content());
        Assert.Equal("1", File.ReadAllText(Path.Combine(folder.Path, "a", "b", "x.txt")));
    }

    [Fact]
    public void Files_that_were_there_are_replaced()
    {
        string path = folder.Write("x.txt", "old");
        AtomicFiles.Write(folder.Path, [OutputFile.Text("x.txt", "new")], CancellationToken.None);
        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal(["x.txt"], folder.Content());
    }

    [Fact]
    public void A_failure_half_way_leaves_everything_as_it_was()
    {
        string first = folder.Write("a.txt", "old");
        // A folder in the place of the last file: its move fails after the others were moved.
        Directory.CreateDirectory(Path.Combine(folder.Path, "z.txt"));
        Assert.ThrowsAny<Exception>(() => AtomicFiles.Write(
            folder.Path,
            [OutputFile.Text("a.txt", "new"), OutputFile.Text("b.txt", "new"), OutputFile.Text("sub/c.txt", "new"), OutputFile.Text("z.txt", "new")],
            CancellationToken.None));
        Assert.Equal("old", File.ReadAllText(first));
        Assert.Equal(["a.txt", "z.txt"], folder.Content());
    }

    [Fact]
    public void A_cancellation_leaves_nothing()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => AtomicFiles.Write(Path.Combine(folder.Path, "new"), [OutputFile.Text("a.txt", "1")], source.Token));
        Assert.Empty(folder.Content());
    }

    [Theory]
    [InlineData("../x.txt")]
    [InlineData("a/../../x.txt")]
    [InlineData("")]
    [InlineData("/tmp/x.txt")]
    public void Names_stay_inside_the_folder(string name)
    {
        Assert.Throws<ArgumentException>(() => AtomicFiles.Write(Path.Combine(folder.Path, "in"), [OutputFile.Text(name, "1")], CancellationToken.None));
        Assert.Empty(folder.Content());
    }

    [Fact]
    public void A_name_given_twice_is_refused() =>
        Assert.Throws<ArgumentException>(() => AtomicFiles.Write(folder.Path, [OutputFile.Text("a", "1"), OutputFile.Text("a", "2")], CancellationToken.None));
}
