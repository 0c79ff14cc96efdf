using LureSim.Decision.Trials;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows the path of one rig.</summary>
internal static class TrackView
{
    /// <summary>Prints the path, its events and where it spent its time.</summary>
    /// <param name="console">Where to print.</param>
    /// <param name="candidate">The rig with its track.</param>
    /// <param name="units">Units.</param>
    /// <param name="every">Time between two lines (s), more than 0.</param>
    public static void Write(IAnsiConsole console, Candidate candidate, UnitFormat units, double every)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(every);
        Track track = candidate.Track;
        console.MarkupLineInterpolated($"[bold]{ChoiceWords.Name(candidate, units)}[/]");

        Table view = Views.NewTable("path");
        foreach (string heading in (string[])["time (s)", $"distance ({units.Length.Symbol})", $"to your left ({units.Length.Symbol})", $"depth ({units.Length.Symbol})", $"speed ({units.Speed.Symbol})", $"line out ({units.Length.Symbol})", $"line tension ({units.Force.Symbol})"])
            view.AddColumn(new TableColumn(Views.Escape(heading)).RightAligned());
        view.AddColumn("what it does");
        foreach (int index in Rows(track, every))
        {
            view.AddRow(
                UnitFormat.Seconds.Number(track.Time[index]),
                units.Length.Number(track.X[index]),
                units.Length.Number(track.Y[index]),
                units.Length.Number(track.Depth(index)),
                units.Speed.Number(track.SpeedThroughWater[index]),
                units.Length.Number(track.LineOut[index]),
                units.Force.Number(track.RodTension[index]),
                Views.Escape(TrackWords.State(track.State[index], ", ")));
        }

        Views.WriteFitted(console, view);
        WriteEvents(console, track, units);
        WriteCoverage(console, candidate, units);
        if (track.End is { } end)
            console.MarkupLineInterpolated($"[yellow]{TrackWords.End(end)}[/]");
    }

    /// <summary>Every sample as CSV.</summary>
    public static string ToCsv(Track track)
    {
        var csv = new Csv("time_s", "x_m", "y_m", "depth_m", "velocity_x_m_s", "velocity_y_m_s", "velocity_z_m_s", "speed_through_water_m_s", "rod_tension_n", "lure_tension_n", "rod_angle_rad", "lure_angle_rad", "line_out_m", "state");
        for (int i = 0; i < track.Count; i++)
            csv.Row(track.Time[i], track.X[i], track.Y[i], track.Depth(i), track.VelocityX[i], track.VelocityY[i], track.VelocityZ[i], track.SpeedThroughWater[i], track.RodTension[i], track.LureTension[i], track.RodAngle[i], track.LureAngle[i], track.LineOut[i], TrackWords.State(track.State[i], "|").Replace(' ', '_'));
        return csv.ToString();
    }

    // The first sample at or after each multiple of the interval, and the last sample.
    private static IEnumerable<int> Rows(Track track, double every)
    {
        double next = double.NegativeInfinity;
        for (int index = 0; index < track.Count; index++)
        {
            if (track.Time[index] < next - 1e-9 && index < track.Count - 1)
                continue;
            yield return index;
            next = (Math.Floor((track.Time[index] / every) + 1e-9) + 1.0) * every;
        }
    }

    private static void WriteEvents(IAnsiConsole console, Track track, UnitFormat units)
    {
        if (track.Events.Count == 0)
            return;
        Table view = Views.NewTable("events");
        view.AddColumn(new TableColumn("time (s)").RightAligned());
        view.AddColumn(new TableColumn(Views.Escape($"depth ({units.Length.Symbol})")).RightAligned());
        view.AddColumn("event");
        foreach (TrackEvent happened in track.Events)
            view.AddRow(UnitFormat.Seconds.Number(happened.Time), units.Length.Number(happened.Depth), TrackWords.Event(happened.Kind));
        console.Write(view);
    }

    private static void WriteCoverage(IAnsiConsole console, Candidate candidate, UnitFormat units)
    {
        foreach (string sentence in TrackWords.Coverage(candidate.Coverage, units))
            console.MarkupLineInterpolated($"{sentence}");
        console.MarkupLineInterpolated($"{Grammar.Sentence(TrackWords.Verdict(candidate))}");
    }
}
