using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Decision.Baits;

/// <summary>How well a body of the box suits the season, the water and the forage.</summary>
/// <param name="Body">The body.</param>
/// <param name="Suitability">0 to 1: mean fit to the rules that hold, weighted by how loud they speak; 1 where none holds.</param>
public sealed record BodyFit(LureBody Body, double Suitability)
{
    /// <summary>
    /// What the rules about today make of the score of its runs, 0 to 1: 1 - belief x (1 - fit), with the belief of the loudest of them and the fit to them alone.
    /// 1 where no rule speaks of today: habits of a kind of fish decide only between baits whose runs do not differ by more than the model knows.
    /// </summary>
    public double Appeal { get; init; } = 1;
}

/// <summary>What would have to be so for another body to be the choice.</summary>
public enum BodyConditionKind
{
    /// <summary>Forage of a kind were being attacked.</summary>
    ForageAttacked,

    /// <summary>No forage had been seen.</summary>
    NoForage,

    /// <summary>It were another season.</summary>
    OtherSeason,
}

/// <summary>Something that would make another body the choice.</summary>
/// <param name="Kind">What would have to be so.</param>
/// <param name="Forage">The forage that would have to be attacked; null for other conditions.</param>
/// <param name="Seasons">The seasons; empty for other conditions.</param>
/// <param name="Body">The body then.</param>
public sealed record BodyChange(BodyConditionKind Kind, ForageKind? Forage, IReadOnlyList<Season> Seasons, LureBody Body);

/// <summary>Choice of profile and size by season, water temperature, forage and fish.</summary>
/// <param name="Fits">The bodies of the box, best first; equal ones in the order of the box.</param>
/// <param name="Season">The season, or null where it is not known.</param>
/// <param name="Spoke">The loudest rule that holds; null where none holds.</param>
/// <param name="Agreed">Quieter rules that would have chosen the same body.</param>
/// <param name="Overruled">Rules that hold and would have chosen another body.</param>
/// <param name="Wanted">Length that the rule that spoke asks for (m).</param>
/// <param name="Changes">What would change the answer.</param>
public sealed record BodyChoice(
    IReadOnlyList<BodyFit> Fits,
    Season? Season,
    ForageRule? Spoke,
    IReadOnlyList<ForageRule> Agreed,
    IReadOnlyList<ForageRule> Overruled,
    LengthRange Wanted,
    IReadOnlyList<BodyChange> Changes)
{
    /// <summary>Fit below which a body is no answer to the rule that spoke.</summary>
    public const double PoorFit = 0.6;

    // Two bodies whose fit to a rule differs by less are equal to it.
    private const double Indifference = 0.03;

    /// <summary>The body to put on.</summary>
    public LureBody First => Fits[0].Body;

    /// <summary>The best of the bodies that go on a jig head, or null where the box has none.</summary>
    public LureBody? Soft => SoftBodies.FirstOrDefault();

    /// <summary>The next best of those, or null.</summary>
    public LureBody? SoftRunnerUp => SoftBodies.Skip(1).FirstOrDefault();

    private IEnumerable<LureBody> SoftBodies => Fits.Select(fit => fit.Body).Where(body => body.NeedsHead);

    /// <summary>Chooses.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public static BodyChoice Of(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        Season? season = Seasons.Of(scenario);
        IReadOnlyList<ForageRule> rules = Holding(scenario, season);
        IReadOnlyList<BodyFit> fits = Rank(scenario, rules);
        LureBody first = fits[0].Body;

        // Of equally loud rules the one that the chosen body answers best has spoken.
        ForageRule? spoke = rules.OrderByDescending(rule => rule.Weight).ThenByDescending(rule => rule.Fit(first, scenario)).FirstOrDefault();
        ForageRule[] others = [.. rules.Where(rule => rule != spoke).OrderByDescending(rule => rule.Weight)];
        ILookup<bool, ForageRule> content = others.ToLookup(rule => rule.Fit(first, scenario) >= scenario.Tackle.Bodies.Max(body => rule.Fit(body, scenario)) - Indifference);
        return new BodyChoice(
            fits,
            season,
            spoke,
            [.. content[true]],
            [.. content[false]],
            spoke?.Wanted(scenario) ?? default,
            ChangesOf(scenario, season, first));
    }

    private static ForageRule[] Holding(Scenario scenario, Season? season) => [.. ForageRule.All.Where(rule => rule.Holds(scenario, season))];

    private static IReadOnlyList<BodyFit> Rank(Scenario scenario, IReadOnlyList<ForageRule> rules)
    {
        ForageRule[] today = [.. rules.Where(rule => rule.Belief > 0)];
        double belief = today.MaxBy(rule => rule.Weight)?.Belief ?? 0;
        return
        [
            .. scenario.Tackle.Bodies
                .Select(body => new BodyFit(body, Fit(rules, body)) { Appeal = 1 - (belief * (1 - Fit(today, body))) })
                .OrderByDescending(fit => fit.Suitability),
        ];

        double Fit(IReadOnlyList<ForageRule> of, LureBody body)
        {
            double total = of.Sum(rule => rule.Weight);
            return total > 0 ? of.Sum(rule => rule.Weight * rule.Fit(body, scenario)) / total : 1;
        }
    }

    // Asks the rules again with one thing changed at a time.
    private static List<BodyChange> ChangesOf(Scenario scenario, Season? season, LureBody first)
    {
        var changes = new List<BodyChange>();
        if (scenario.Tackle.Bodies.Count < 2)
            return changes;
        foreach (ForageKind kind in Enum.GetValues<ForageKind>())
        {
            var sighting = new ForageSighting(kind, null, ForageSeen.BeingAttacked);
            if (!scenario.Forage.Any(item => item.Kind == sighting.Kind && item.Seen == sighting.Seen))
                Try(BodyConditionKind.ForageAttacked, kind, scenario with { Forage = [sighting] });
        }

        if (scenario.Forage.Count > 0)
            Try(BodyConditionKind.NoForage, null, scenario with { Forage = [] });
        else
            OtherSeasons();
        return changes;

        void Try(BodyConditionKind condition, ForageKind? forage, Scenario other)
        {
            LureBody then = Rank(other, Holding(other, season))[0].Body;
            if (then != first)
                changes.Add(new BodyChange(condition, forage, [], then));
        }

        void OtherSeasons()
        {
            IEnumerable<IGrouping<LureBody, Season>> other = Enum.GetValues<Season>()
                .Where(when => when != season)
                .Select(when => (Season: when, Rank(scenario, Holding(scenario, when))[0].Body))
                .Where(pair => pair.Body != first)
                .GroupBy(pair => pair.Body, pair => pair.Season);
            foreach (IGrouping<LureBody, Season> group in other)
                changes.Add(new BodyChange(BodyConditionKind.OtherSeason, null, [.. group], group.Key));
        }
    }
}
