namespace LureSim.Decision.Trials;

/// <summary>Which of several rigs to take: as light as will do the job, and as simple.</summary>
public static class Preference
{
    /// <summary>
    /// The rig to take: of all that no other beats by a real margin the one with the lightest head, of equally light ones the one that is worked in the simplest way,
    /// and of these the one that scores highest. A rig must stand against every other, and not against the best alone: the tries may leave open whether the best
    /// beats it, and show that the second best does.
    /// </summary>
    /// <typeparam name="T">What carries the rig.</typeparam>
    /// <param name="items">What to choose from, at least one.</param>
    /// <param name="rig">Its rig.</param>
    /// <param name="score">Its score.</param>
    /// <param name="margin">How far a score may lie below another, given the other item, and be no worse; never less than <see cref="ScoreWeights.Tie"/>, which null stands for.</param>
    /// <param name="weights">Weights; null for those of the table.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentException">There is nothing to choose from.</exception>
    public static T Of<T>(IReadOnlyList<T> items, Func<T, Rig> rig, Func<T, double> score, Func<T, T, double>? margin = null, ScoreWeights? weights = null)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(score);
        if (items.Count == 0) throw new ArgumentException("There must be something to choose from.", nameof(items));
        T best = items.MaxBy(score)!;
        double most = score(best), tie = (weights ?? ScoreWeights.Default).Tie(most);
        if (!(most > 0)) return best;
        return items
            .Where(item => score(item) > 0 && items.All(other => score(item) >= score(other) - (margin is null ? tie : Math.Max(tie, margin(other, item)))))
            .OrderBy(item => rig(item).Head.Mass)
            .ThenBy(item => Naturalness.ClassOf(rig(item).Presentation))
            .ThenByDescending(score)
            .First();
    }
}
