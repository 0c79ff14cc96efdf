namespace LureSim.Tests;

public class KeptResultsTests
{
    [Fact]
    public void What_was_asked_for_longest_ago_is_forgotten_first()
    {
        var kept = new KeptResults<int, object>(3);
        object[] first = [.. Enumerable.Range(0, 3).Select(key => kept.Of(key, () => new object()).Value)];

        // Asked for again, 0 is younger than 1.
        Assert.Same(first[0], kept.Of(0, () => new object()).Value);
        _ = kept.Of(3, () => new object()).Value;
        Assert.Equal(3, kept.Count);
        Assert.Same(first[0], kept.Of(0, () => new object()).Value);
        Assert.Same(first[2], kept.Of(2, () => new object()).Value);
        Assert.NotSame(first[1], kept.Of(1, () => new object()).Value);
        Assert.Equal(3, kept.Count);
    }

    [Fact]
    public void A_key_is_computed_once_by_however_many_threads()
    {
        var kept = new KeptResults<int, int>(64);
        int computed = 0;
        int[] results = new int[20_000];
        Parallel.For(0, results.Length, i => results[i] = kept.Of(i % 50, () =>
        {
            Interlocked.Increment(ref computed);
            return 2 * (i % 50);
        }).Value);
        Assert.Equal(50, computed);
        Assert.All(results.Select((result, i) => (result, i)), item => Assert.Equal(2 * (item.i % 50), item.result));
    }

    [Fact]
    public void No_more_are_kept_than_told_under_many_threads()
    {
        var kept = new KeptResults<int, int>(8);
        Parallel.For(0, 10_000, i => Assert.Equal(i % 100, kept.Of(i % 100, () => i % 100).Value));
        Assert.Equal(8, kept.Count);
    }
}
