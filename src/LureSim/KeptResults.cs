namespace LureSim;

/// <summary>
/// Results that are computed once for a key and kept, up to a number of them: what was asked for longest ago is forgotten first. Takes questions from many threads; two that ask for
/// the same key at a time get the same result, and one of them waits for it.
/// </summary>
/// <typeparam name="TKey">What a result is computed for, compared by value.</typeparam>
/// <typeparam name="TResult">The result.</typeparam>
/// <param name="most">Results that are kept at most, 1 or more.</param>
internal sealed class KeptResults<TKey, TResult>(int most)
    where TKey : notnull
{
    private readonly Lock gate = new();
    private readonly Dictionary<TKey, LinkedListNode<(TKey Key, Lazy<TResult> Result)>> known = [];

    // From what was asked for longest ago to what was asked for last.
    private readonly LinkedList<(TKey Key, Lazy<TResult> Result)> order = [];

    /// <summary>Results that are kept.</summary>
    public int Count
    {
        get
        {
            lock (gate) return known.Count;
        }
    }

    /// <summary>The result of a key, computed when it is first looked at.</summary>
    /// <param name="key">The key.</param>
    /// <param name="compute">Computes it; called once as long as the result is kept.</param>
    public Lazy<TResult> Of(TKey key, Func<TResult> compute)
    {
        lock (gate)
        {
            if (known.TryGetValue(key, out LinkedListNode<(TKey Key, Lazy<TResult> Result)>? node))
            {
                order.Remove(node);
            }
            else
            {
                node = new((key, new Lazy<TResult>(compute)));
                known.Add(key, node);
                if (known.Count > most)
                {
                    known.Remove(order.First!.Value.Key);
                    order.RemoveFirst();
                }
            }

            order.AddLast(node);
            return node.Value.Result;
        }
    }
}
