using LureSim.Stepping;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>Turns a trace into figures and a verdict.</summary>
public static class ActionAnalysis
{
    // Limits of the verdict; assumed, from what can be seen in the water by eye.
    internal const double SwimTail = 8 * Math.PI / 180;
    internal const double SwimBody = 4 * Math.PI / 180;
    internal const double DartHeading = 15 * Math.PI / 180;
    internal const double SpinTurns = 0.2;
    internal const double SlackTension = 0.005;
    internal const double LeanRoll = 15 * Math.PI / 180;
    internal const double FarRoll = 45 * Math.PI / 180;

    // A lure that has turned over farther than this lies on its back.
    internal const double OnItsBack = 135 * Math.PI / 180;

    // Sine of the pitch beyond which the nose points up or down, 60 degrees.
    internal const double SteepNose = 0.866;

    // Off to one side by more than a tenth of the way, a foot in ten.
    internal const double OffCourse = 0.1;

    // Tangent beyond which a lure does not follow its line at all.
    private const double GreatestSlope = 10;

    /// <summary>Analyses a trace: the part after the settling time, or all of it when the line is twitched.</summary>
    /// <param name="trace">Result of <see cref="Towing.Simulate"/>.</param>
    /// <exception cref="ArgumentNullException">The trace is null.</exception>
    public static ActionReport Of(ActionTrace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        if (trace.Status != SimulationStatus.Completed || trace.Count < 8)
        {
            return new()
            {
                Verdict = ActionVerdict.Unknown,
                Findings = [NotJudged(trace)],
            };
        }

        bool twitched = trace.Tow.Mode == TowMode.Pulled && trace.Tow.Strokes.Count > 0;
        double settling = twitched ? 0 : Math.Min(trace.Options.SettlingTime, 0.5 * trace.Options.Duration);
        int from = 0;
        while (from < trace.Count - 8 && trace.Time[from] < settling) from++;
        Measures f = Measure(trace, from);
        List<DartResult> darts = twitched ? Darts(trace) : [];
        (ActionVerdict verdict, List<ActionFinding> findings) = Judge(trace, f, darts);
        double dartAngle = darts.Count > 0 ? darts.Average(d => Math.Abs(d.Angle)) : 0;
        return new()
        {
            Verdict = verdict,
            Findings = findings,
            Frequency = f.Frequency,
            YawAmplitude = f.Yaw,
            RollAmplitude = f.Roll,
            PitchAmplitude = f.Pitch,
            TailAmplitude = f.TailAngle,
            TailTipAmplitude = f.TailTip,
            Strouhal = f.Strouhal,
            MeanYaw = f.MeanYaw,
            MeanRoll = f.MeanRoll,
            MeanPitch = f.MeanPitch,
            MeanSpeed = f.Speed,
            SinkRate = f.Sink,
            SideOffset = f.Side,
            CourseSlope = f.Course,
            NoseSwing = f.NoseSwing,
            SpiralRadius = f.SpiralRadius,
            SpiralRate = f.SpiralRate,
            SpinRate = f.Spin,
            LineTwistsPerMetre = f.TwistPerMetre,
            Darts = darts,
            DartAngle = dartAngle,
            DartTravel = darts.Count > 0 ? darts.Average(d => d.Travel) : 0,
            Glide = darts.Count > 0 ? darts.Average(d => d.Glide) : 0,
            Alternation = Alternation(darts),
            DragFactor = f.DragFactor,
            LiftCoefficient = f.Lift,
            MeanTension = f.Tension,
        };
    }

    private static ActionFinding NotJudged(ActionTrace trace) => trace.Status switch
    {
        SimulationStatus.Completed => new(ActionFindingKind.WindowTooShort),
        SimulationStatus.Cancelled => new(ActionFindingKind.Cancelled, trace.EndTime),
        SimulationStatus.StepLimit => new(ActionFindingKind.OutOfSteps, trace.EndTime, trace.Options.Duration),
        SimulationStatus.Failed => new(ActionFindingKind.Lost, trace.EndTime),
        _ => throw new ArgumentOutOfRangeException(nameof(trace), trace.Status, "Not a way to end."),
    };

    // Square of the cosine of the steepest mean flow in which a lift is told from the drag.
    private const double SteepestFlow = 0.1;

    private static Measures Measure(ActionTrace trace, int from)
    {
        int n = trace.Count - from;
        double span = trace.Time[^1] - trace.Time[from];
        double[] yaw = new double[n];
        double[] roll = new double[n];
        double[] pitch = new double[n];
        double[] tail = new double[n];
        double[] tip = new double[n];
        double yawOffset = 0, rollOffset = 0, path = 0, speed = 0, tension = 0, side = 0;
        double rollSine = 0, rollCosine = 0, across = 0, along = 0;
        Vector3d pull = default;
        Vector3d travel = trace.Position[^1] - trace.Position[from];
        FlexibleTail? t = trace.Body.Tail;
        for (int i = 0; i < n; i++)
        {
            int k = from + i;
            yaw[i] = Unwrap(trace.Attitude[k].Yaw, i == 0 ? 0 : yaw[i - 1], ref yawOffset);
            roll[i] = Unwrap(trace.Attitude[k].Roll, i == 0 ? 0 : roll[i - 1], ref rollOffset);
            pitch[i] = trace.Attitude[k].Pitch;
            tail[i] = trace.TailAngle[k];
            if (t is not null) tip[i] = ((t.HingePosition - t.Length) * -Math.Sin(yaw[i])) + (t.Length * (Math.Sin(tail[i] - yaw[i]) + Math.Sin(yaw[i])));
            speed += trace.Velocity[k].Length;
            tension += trace.Tension[k];
            pull += trace.LinePull[k];
            (double sine, double cosine) = Math.SinCos(trace.Attitude[k].Roll);
            rollSine += sine;
            rollCosine += cosine;

            // Angle from the line to the course, seen from above.
            Vector3d course = trace.Attitude[k].ToWater(trace.Velocity[k]), line = trace.LinePull[k];
            across += (line.X * course.Y) - (line.Y * course.X);
            along += (line.X * course.X) + (line.Y * course.Y);
            side += trace.Position[k].Y - trace.LineEnd[k].Y;
            if (i > 0) path += (trace.Position[k] - trace.Position[k - 1]).Length;
        }

        speed /= n;
        double rho = trace.Tow.WaterDensity;
        double frontal = Math.PI * trace.Body.SemiAxes.Y * trace.Body.SemiAxes.Z;
        double wet = (trace.Body.Mass - (rho * trace.Body.Volume)) * trace.Tow.Gravity;
        double spin = (trace.TwistTotal[^1] - trace.TwistTotal[from]) / (2 * Math.PI * span);

        // The beat is read off the tail where there is one, otherwise off what moves most: heading, roll or pitch.
        double yawSize = Amplitude(yaw), rollSize = Amplitude(roll), pitchSize = Amplitude(pitch), tailSize = Amplitude(tail);
        double[] beat = t is not null && tailSize > 0.5 * SwimBody ? tail : yawSize >= Math.Max(0.7 * rollSize, pitchSize) ? yaw : rollSize >= pitchSize ? roll : pitch;
        double beatSize = Amplitude(beat);
        double frequency = beatSize > 0.5 * Math.PI / 180 ? Frequency(beat, trace.Options.OutputInterval, 0.2 * beatSize) : 0;

        double drag = 1;
        if (trace.Tow.Mode == TowMode.Pulled && speed > 0.02)
        {
            var equations = new TowedBodyEquations(trace.Body, trace.Knot, trace.Tow, trace.Options);
            double straight = equations.StraightDrag(speed);
            double mean = pull.X / n;
            if (straight > 1e-9 && trace.Tow.Strokes.Count == 0) drag = Math.Clamp(mean / straight, 0, 100);
        }

        (double radius, double spiralRate) = Spiral(trace, from);
        return new()
        {
            Span = span,
            NoseSwing = NoseSwing(trace, from),
            Yaw = yawSize,
            Roll = rollSize,
            Pitch = pitchSize,
            TailAngle = tailSize,
            TailTip = t is null ? 0 : Amplitude(tip),
            Frequency = frequency,
            Strouhal = frequency > 0 && speed > 0.02 ? frequency * (t?.PaddleWidth ?? (2 * trace.Body.SemiAxes.Z)) / speed : 0,
            MeanYaw = yaw.Average(),
            MeanRoll = Math.Atan2(rollSine, rollCosine),
            MeanPitch = pitch.Average(),
            Speed = speed,
            Sink = -travel.Z / span,
            Side = side / n,
            Course = trace.Tow.Mode == TowMode.Pulled && trace.Tow.Strokes.Count == 0 && along > 0 ? Math.Clamp(across / along, -GreatestSlope, GreatestSlope) : 0,
            Spin = spin,
            TwistPerMetre = path > 0.05 ? Math.Abs(spin) * span / path : 0,
            Turns = spin * span,
            PitchTurns = Turned(pitch, trace, from),
            DragFactor = drag,
            Lift = trace.Tow.Mode == TowMode.Pulled ? Lift((1.0 / n) * pull, wet, (1 / span) * travel, rho) / frontal : 0,
            Tension = tension / n,
            SpiralRadius = radius,
            SpiralRate = spiralRate,
            Drift = Math.Sqrt((travel.X * travel.X) + (travel.Y * travel.Y)),
        };
    }

    // Lift area (m2): what the water does to the lure on the mean, across the mean flow in its vertical plane, over 1/2 rho U^2. The water holds what line and weight leave.
    private static double Lift(Vector3d pull, double wet, Vector3d velocity, double density)
    {
        double square = Vector3d.Dot(velocity, velocity);
        if (square < 4e-4) return 0;
        Vector3d across = new Vector3d(0, 0, 1) - ((velocity.Z / square) * velocity);
        Vector3d force = new Vector3d(0, 0, wet) - pull;
        double part = Vector3d.Dot(across, across);
        return part < SteepestFlow ? 0 : Vector3d.Dot(force, across) / (0.5 * density * square * part);
    }

    private static (ActionVerdict Verdict, List<ActionFinding> Findings) Judge(ActionTrace trace, Measures f, List<DartResult> darts)
    {
        var findings = new List<ActionFinding>();
        bool hasTail = trace.Body.Tail is not null;

        // A lure that circles down on a spiral turns with its path; that is no spin about its own axis.
        bool circles = trace.Tow.Mode != TowMode.Pulled && f.SpiralRadius > 0 && Math.Abs(f.Spin) < 1.2 * Math.Abs(f.SpiralRate);
        if (!circles && Math.Abs(f.Spin) > SpinTurns && Math.Abs(f.Turns) > 1)
        {
            findings.Add(new(ActionFindingKind.TurnsOver));
            if (trace.Body.Bend is BodyBend b && b.Angle > 0.01)
                findings.Add(new(ActionFindingKind.BodyBent, b.Angle));
            if (trace.Body.Head is HeadSet h && Math.Abs(h.Yaw) > 0.01) findings.Add(new(ActionFindingKind.HeadTurned, Math.Abs(h.Yaw)));
            return (ActionVerdict.Spins, findings);
        }

        if (darts.Count > 0)
        {
            double heading = darts.Average(d => Math.Abs(d.Heading)), angle = darts.Average(d => Math.Abs(d.Angle));
            findings.Add(new(ActionFindingKind.Twitched, heading));
            if (heading >= DartHeading || angle >= 0.5 * DartHeading)
            {
                findings.Add(new(ActionFindingKind.ChangesSides));
                return (ActionVerdict.Darts, findings);
            }

            findings.Add(new(ActionFindingKind.TooLittleForDart, DartHeading));
            return (darts.Average(d => d.Glide) > 0.5 * trace.Body.Length ? ActionVerdict.Glides : ActionVerdict.Muted, findings);
        }

        if (trace.Tow.Mode != TowMode.Pulled) return Fall(f, findings);
        if (Math.Abs(f.MeanRoll) >= OnItsBack) findings.Add(new(ActionFindingKind.UpsideDown));
        if (trace.Body.Plate is null && Astray(f, findings) is { } astray)
        {
            if (hasTail) findings.Add(f.TailAngle >= SwimTail ? new(ActionFindingKind.TailBeats) : new(ActionFindingKind.TailHardlyMoves, SwimTail));
            return (astray, findings);
        }

        if (hasTail)
        {
            if (f.TailAngle >= SwimTail)
            {
                findings.Add(new(ActionFindingKind.TailBeats));
                return (ActionVerdict.Swims, findings);
            }

            findings.Add(new(ActionFindingKind.TailHardlyMoves, SwimTail));
            double share = trace.Body.Tail!.Length / trace.Body.Length;
            if (share < 0.2) findings.Add(new(ActionFindingKind.LittleIsFree, share));
            return (ActionVerdict.Muted, findings);
        }

        if (Math.Max(f.Yaw, f.Roll) >= SwimBody && f.Frequency > 0.3)
        {
            findings.Add(new(ActionFindingKind.Wobbles));
            return (ActionVerdict.Swims, findings);
        }

        findings.Add(new(ActionFindingKind.RunsStraight));
        return (trace.Body.Lip is not null ? ActionVerdict.Muted : ActionVerdict.Still, findings);
    }

    // What a crooked lure does that does not go over; null for one that swims upright after the line.
    private static ActionVerdict? Astray(Measures f, List<ActionFinding> findings)
    {
        bool rolls = f.Roll >= FarRoll, leans = Math.Abs(f.MeanRoll) >= LeanRoll, off = Math.Abs(f.Course) >= OffCourse;
        if (rolls) findings.Add(new(ActionFindingKind.RollsFar));
        else if (leans && Math.Abs(f.MeanRoll) < OnItsBack) findings.Add(new(ActionFindingKind.LiesOver));
        if (off) findings.Add(new(ActionFindingKind.RunsAside));
        return rolls ? ActionVerdict.Rolls : leans ? ActionVerdict.Leans : off ? ActionVerdict.RunsOff : null;
    }

    private static (ActionVerdict Verdict, List<ActionFinding> Findings) Fall(Measures f, List<ActionFinding> findings)
    {
        if (Math.Abs(f.PitchTurns) > 1.5)
        {
            findings.Add(new(ActionFindingKind.EndOverEnd, Math.Abs(f.PitchTurns) / f.Span));
            return (ActionVerdict.Tumbles, findings);
        }

        if (Math.Max(f.Pitch, Math.Max(f.Roll, f.Yaw)) >= SwimBody && f.Frequency > 0.3)
        {
            findings.Add(new(ActionFindingKind.Rocks));
            return (ActionVerdict.Flutters, findings);
        }

        if (f.Drift > 0.3 * Math.Abs(f.Sink) * f.Span)
        {
            findings.Add(new(ActionFindingKind.SlidesAway));
            return (ActionVerdict.Glides, findings);
        }

        findings.Add(new(ActionFindingKind.SinksStraight));
        return (ActionVerdict.Still, findings);
    }

    private static List<DartResult> Darts(ActionTrace trace)
    {
        var darts = new List<DartResult>();
        TowStroke[] strokes = [.. trace.Tow.Strokes.OrderBy(s => s.Start)];
        double dt = trace.Options.OutputInterval;
        for (int s = 0; s < strokes.Length; s++)
        {
            double end = s + 1 < strokes.Length ? strokes[s + 1].Start : trace.Time[^1];
            int a = (int)Math.Round(strokes[s].Start / dt), b = Math.Min(trace.Count - 1, (int)Math.Round(end / dt));
            if (a >= trace.Count - 2 || b - a < 2) break;

            // Until the lure has come to rest, or for a second and a half: later it only sinks or rises.
            b = Math.Min(b, a + (int)Math.Round((strokes[s].Duration + 1.5) / dt));
            double travel = 0, glide = 0, heading = 0;
            for (int i = a + 1; i <= b; i++)
            {
                Vector3d d = trace.Position[i] - trace.Position[i - 1];
                double step = Math.Sqrt((d.X * d.X) + (d.Y * d.Y));
                travel += step;
                if (trace.Tension[i] < SlackTension && trace.Time[i] > strokes[s].Start + (0.5 * strokes[s].Duration)) glide += step;
            }

            // The pull turns the nose from where the last dart has left it: the dart is what comes after, from slack line on. A nose that points up or down has no heading.
            int let = a + 1;
            for (int i = a + 1; i <= b && trace.Time[i] <= strokes[s].End; i++)
            {
                if (trace.Tension[i] >= SlackTension) let = i;
            }

            for (int i = let; i <= b; i++)
            {
                Vector3d nose = trace.Attitude[i].ToWater(new(1, 0, 0));
                double yaw = Math.Atan2(nose.Y, nose.X);
                if (Math.Abs(nose.Z) < SteepNose && Math.Abs(yaw) > Math.Abs(heading)) heading = yaw;
            }

            // Direction of the way made on slack line; where there is none, of the whole.
            int slack = a;
            while (slack < b - 1 && (trace.Time[slack] < strokes[s].Start + (0.5 * strokes[s].Duration) || trace.Tension[slack] > SlackTension)) slack++;
            Vector3d way = trace.Position[b] - trace.Position[slack];
            Vector3d whole = trace.Position[b] - trace.Position[a];
            if (Horizontal(way) < 0.1 * Horizontal(whole)) way = whole;
            double angle = Horizontal(way) > 1e-4 ? Math.Atan2(way.Y, way.X) : 0;
            darts.Add(new(strokes[s].Start, angle, heading, travel, whole.Y, glide));
        }

        return darts;
    }

    private static double Alternation(List<DartResult> darts)
    {
        if (darts.Count < 2) return 0;
        int changes = 0;
        for (int i = 1; i < darts.Count; i++)
        {
            if (Math.Abs(darts[i].Heading) >= DartHeading && darts[i].Heading * darts[i - 1].Heading < 0) changes++;
        }

        return (double)changes / (darts.Count - 1);
    }

    // Angle from its mean direction within which the nose keeps nine tenths of the time: the same whichever way the lure points.
    private static double NoseSwing(ActionTrace trace, int from)
    {
        int n = trace.Count - from;
        var nose = new Vector3d[n];
        Vector3d sum = default;
        for (int i = 0; i < n; i++)
        {
            nose[i] = trace.Attitude[from + i].ToWater(new(1, 0, 0));
            sum += nose[i];
        }

        if (sum.Length < 1e-9) return Math.PI;
        Vector3d mean = (1 / sum.Length) * sum;
        double[] angles = [.. nose.Select(direction => Math.Acos(Math.Clamp(Vector3d.Dot(direction, mean), -1, 1)))];
        Array.Sort(angles);
        return angles[(int)(0.9 * (n - 1))];
    }

    // Turns about the transverse axis: whole turns of the pitch rate.
    private static double Turned(double[] pitch, ActionTrace trace, int from)
    {
        double sum = 0;
        for (int i = 1; i < pitch.Length; i++) sum += trace.AngularVelocity[from + i].Y * trace.Options.OutputInterval;
        return sum / (2 * Math.PI);
    }

    // Radius and rate of a circle seen from above, from the turn of the horizontal velocity.
    private static (double Radius, double Rate) Spiral(ActionTrace trace, int from)
    {
        double turned = 0, path = 0, last = 0;
        bool first = true;
        for (int i = from + 1; i < trace.Count; i++)
        {
            Vector3d d = trace.Position[i] - trace.Position[i - 1];
            double step = Horizontal(d);
            if (step < 1e-6) continue;
            double course = Math.Atan2(d.Y, d.X);
            if (!first) turned += Math.IEEERemainder(course - last, 2 * Math.PI);
            first = false;
            last = course;
            path += step;
        }

        double span = trace.Time[^1] - trace.Time[from];
        return Math.Abs(turned) > 1.5 * Math.PI ? (path / Math.Abs(turned), turned / (2 * Math.PI * span)) : (0, 0);
    }

    private static double Horizontal(Vector3d v) => Math.Sqrt((v.X * v.X) + (v.Y * v.Y));

    private static double Unwrap(double angle, double previous, ref double offset)
    {
        double value = angle + offset;
        while (value - previous > Math.PI)
        {
            value -= 2 * Math.PI;
            offset -= 2 * Math.PI;
        }

        while (value - previous < -Math.PI)
        {
            value += 2 * Math.PI;
            offset += 2 * Math.PI;
        }

        return value;
    }

    // Half of peak to peak between the 2nd and 98th percentile about the drift: single outliers and a slow turn do not count as a beat.
    private static double Amplitude(double[] values)
    {
        int n = values.Length;
        double first = values[..Math.Max(1, n / 4)].Average(), last = values[^Math.Max(1, n / 4)..].Average();
        double slope = (last - first) / (0.75 * n);
        double[] flat = new double[n];
        for (int i = 0; i < n; i++) flat[i] = values[i] - (slope * i);
        Array.Sort(flat);
        return 0.5 * (flat[(int)(0.98 * (n - 1))] - flat[(int)(0.02 * (n - 1))]);
    }

    // Upward crossings of the mean with a dead band.
    private static double Frequency(double[] values, double dt, double band)
    {
        double mean = values.Average();
        int count = 0;
        double firstTime = 0, lastTime = 0;
        bool low = false;
        for (int i = 0; i < values.Length; i++)
        {
            double v = values[i] - mean;
            if (v < -band)
            {
                low = true;
            }
            else if (low && v > band)
            {
                low = false;
                lastTime = i * dt;
                if (count++ == 0) firstTime = lastTime;
            }
        }

        return count >= 2 ? (count - 1) / (lastTime - firstTime) : 0;
    }

    private sealed record Measures
    {
        public double Span { get; init; }

        public double Yaw { get; init; }

        public double Roll { get; init; }

        public double Pitch { get; init; }

        public double TailAngle { get; init; }

        public double TailTip { get; init; }

        public double Frequency { get; init; }

        public double Strouhal { get; init; }

        public double MeanYaw { get; init; }

        public double MeanRoll { get; init; }

        public double MeanPitch { get; init; }

        public double Speed { get; init; }

        public double Sink { get; init; }

        public double Side { get; init; }

        public double Course { get; init; }

        public double NoseSwing { get; init; }

        public double Spin { get; init; }

        public double TwistPerMetre { get; init; }

        public double Turns { get; init; }

        public double PitchTurns { get; init; }

        public double DragFactor { get; init; }

        public double Lift { get; init; }

        public double Tension { get; init; }

        public double SpiralRadius { get; init; }

        public double SpiralRate { get; init; }

        public double Drift { get; init; }
    }
}
