using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>Way and speed of the line's far end in time, from reel and rod, with the times of its corners.</summary>
internal sealed class LineEndSchedule
{
    private readonly TowStroke[] strokes;
    private readonly double[] rampStart, rampFrom, rampTo, distanceAtRamp;
    private readonly double firstSpeed;
    private readonly double[] breaks;

    public LineEndSchedule(TowInput tow)
    {
        firstSpeed = tow.Speed;
        strokes = [.. tow.Strokes];
        int count = tow.SpeedChanges.Count;
        rampStart = new double[count];
        rampFrom = new double[count];
        rampTo = new double[count];
        distanceAtRamp = new double[count];
        var corners = new SortedSet<double>();
        double speed = firstSpeed, time = 0, distance = 0;
        for (int i = 0; i < count; i++)
        {
            SpeedChange change = tow.SpeedChanges[i];
            distance += speed * (change.Time - time);
            rampStart[i] = change.Time;
            rampFrom[i] = speed;
            rampTo[i] = change.Speed;
            distanceAtRamp[i] = distance;
            distance += 0.5 * (speed + change.Speed) * TowInput.SpeedRamp;
            time = change.Time + TowInput.SpeedRamp;
            speed = change.Speed;
            corners.Add(change.Time);
            corners.Add(time);
        }

        foreach (TowStroke s in strokes)
        {
            corners.Add(s.Start);
            corners.Add(s.PullEnd);
            corners.Add(s.End);
        }

        breaks = [.. corners];
    }

    public double NextBreak(double time)
    {
        foreach (double b in breaks)
        {
            if (b > time + 1e-12) return b;
        }

        return double.PositiveInfinity;
    }

    public void Evaluate(double time, out double distance, out double speed)
    {
        int last = -1;
        for (int i = 0; i < rampStart.Length && rampStart[i] <= time; i++) last = i;
        if (last < 0)
        {
            speed = firstSpeed;
            distance = firstSpeed * time;
        }
        else
        {
            double since = time - rampStart[last];
            double ramp = Math.Min(since, TowInput.SpeedRamp);
            double share = ramp / TowInput.SpeedRamp;
            speed = rampFrom[last] + (share * (rampTo[last] - rampFrom[last]));
            distance = distanceAtRamp[last] + (0.5 * (rampFrom[last] + speed) * ramp) + (rampTo[last] * (since - ramp));
        }

        foreach (TowStroke s in strokes)
        {
            if (time <= s.Start) continue;
            Ease((time - s.Start) / s.Duration, s.Length, s.Duration, ref distance, ref speed);
            if (time > s.PullEnd) Ease((time - s.PullEnd) / s.ReturnDuration, -s.Return * s.Length, s.ReturnDuration, ref distance, ref speed);
        }
    }

    private static void Ease(double share, double length, double duration, ref double distance, ref double speed)
    {
        if (share >= 1)
        {
            distance += length;
            return;
        }

        (double sine, double cosine) = Math.SinCos(Math.PI * share);
        distance += 0.5 * length * (1 - cosine);
        speed += 0.5 * length * Math.PI / duration * sine;
    }
}
