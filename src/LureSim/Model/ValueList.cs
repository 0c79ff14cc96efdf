using System.Collections;

namespace LureSim.Model;

/// <summary>A list that is equal to another when its items are, one by one, so that records which hold it are compared by value.</summary>
/// <typeparam name="T">Type of the items.</typeparam>
internal sealed class ValueList<T>(IReadOnlyList<T> items) : IReadOnlyList<T>, IEquatable<ValueList<T>>
    where T : IEquatable<T>
{
    /// <inheritdoc/>
    public int Count => items.Count;

    /// <inheritdoc/>
    public T this[int index] => items[index];

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => items.GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <inheritdoc/>
    public bool Equals(ValueList<T>? other) => other is not null && (ReferenceEquals(this, other) || items.SequenceEqual(other));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (T item in items) hash.Add(item);
        return hash.ToHashCode();
    }
}
