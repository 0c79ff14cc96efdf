using LureSim.Decision.Trips;

namespace LureSim.Tests.Decision.Trips;

/// <summary>The best day is the best of all days, counted one by one where they are few.</summary>
public class TripProblemTests
{
    private static TripProblem Random(int seed, int spots, int slots)
    {
        var random = new System.Random(seed);
        int[,] travel = new int[spots + 1, spots + 1];
        for (int i = 0; i <= spots; i++)
        {
            for (int j = 0; j <= spots; j++) travel[i, j] = i == j ? 0 : random.Next(0, 3);
        }

        return new TripProblem(
            slots,
            [.. Enumerable.Range(0, spots).Select(_ => new SpotWorth([.. Enumerable.Range(0, slots).Select(_ => random.NextDouble() < 0.2 ? 0 : random.NextDouble())], 1 + random.Next(2), 2 + random.Next(2)))],
            travel,
            random.Next(2) == 0);
    }

    // Every day there is: every next spot, every wait, every stay.
    private static double Everything(TripProblem problem, int place, int time, int visited)
    {
        double best = place == 0 || !problem.Back || time + problem.Travel[place, 0] <= problem.Slots ? 0 : double.NegativeInfinity;
        for (int spot = 0; spot < problem.Spots.Count; spot++)
        {
            if ((visited & (1 << spot)) != 0) continue;
            SpotWorth there = problem.Spots[spot];
            for (int start = time + problem.Travel[place, spot + 1]; start < problem.Slots; start++)
            {
                for (int stay = there.LeastStay; stay <= there.MostStay && start + stay <= problem.Slots; stay++)
                    best = Math.Max(best, there.Worth.Skip(start).Take(stay).Sum() + Everything(problem, spot + 1, start + stay, visited | (1 << spot)));
            }
        }

        return best;
    }

    [Fact]
    public void The_best_day_is_the_best_of_all_days()
    {
        for (int seed = 0; seed < 60; seed++)
        {
            TripProblem problem = Random(seed, 1 + (seed % 4), 8);
            Assert.Equal(Everything(problem, 0, 0, 0), problem.Best().Value, 1e-9);
        }
    }

    [Fact]
    public void A_day_keeps_its_own_rules()
    {
        for (int seed = 0; seed < 40; seed++)
        {
            TripProblem problem = Random(seed, 6, 24);
            TripOrder day = problem.Best();
            int place = 0, time = 0;
            foreach (TripVisit visit in day.Visits)
            {
                Assert.True(visit.Start >= time + problem.Travel[place, visit.Spot + 1]);
                Assert.InRange(visit.End - visit.Start, problem.Spots[visit.Spot].LeastStay, problem.Spots[visit.Spot].MostStay);
                Assert.Equal(problem.Spots[visit.Spot].Worth.Skip(visit.Start).Take(visit.End - visit.Start).Sum(), visit.Value, 1e-9);
                (place, time) = (visit.Spot + 1, visit.End);
            }

            Assert.True(time + (problem.Back && place > 0 ? problem.Travel[place, 0] : 0) <= problem.Slots);
            Assert.Equal(day.Visits.Sum(visit => visit.Value), day.Value, 1e-9);
            Assert.Equal(day.Visits.Count, day.Visits.Select(visit => visit.Spot).Distinct().Count());
        }
    }

    [Fact]
    public void Its_own_order_is_as_good_and_no_other_is_better()
    {
        for (int seed = 0; seed < 40; seed++)
        {
            TripProblem problem = Random(seed, 5, 16);
            TripOrder day = problem.Best();
            int[] order = [.. day.Visits.Select(visit => visit.Spot)];
            if (order.Length == 0) continue;
            Assert.Equal(day.Value, problem.InOrder(order)!.Value, 1e-9);
            Assert.True((problem.InOrder([.. order.Reverse()])?.Value ?? 0) <= day.Value + 1e-9);
            Assert.True(problem.Without(order[0]).Best().Value <= day.Value + 1e-9);
        }
    }

    [Fact]
    public void Twelve_spots_in_a_long_day_are_laid_out()
    {
        TripOrder day = Random(7, 12, 48).Best();
        Assert.True(day.Value > 0);
    }

    [Fact]
    public void Nothing_that_is_worth_nothing_is_visited_and_what_does_not_fit_is_refused()
    {
        var nothing = new TripProblem(8, [new SpotWorth(new double[8], 1, 4)], new int[2, 2], true);
        Assert.Empty(nothing.Best().Visits);
        Assert.Null(new TripProblem(4, [new SpotWorth([1, 1, 1, 1], 3, 4)], new int[,] { { 0, 2 }, { 2, 0 } }, true).InOrder([0]));
        Assert.Throws<ArgumentException>(() => new TripProblem(8, [new SpotWorth(new double[7], 1, 4)], new int[2, 2], true).Best());
        Assert.Throws<ArgumentException>(() => new TripProblem(8, [.. Enumerable.Range(0, 13).Select(_ => new SpotWorth(new double[8], 1, 4))], new int[14, 14], true).Best());
        Assert.Throws<ArgumentException>(() => nothing.InOrder([0, 0]));
    }
}
