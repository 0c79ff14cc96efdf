using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>A flexible body as two stiff ones, each in its own axes, so that each force is reckoned on each of them as on a whole body.</summary>
/// <param name="Front">What the shank holds: nose, hook, eye; origin as the body's.</param>
/// <param name="Rear">What lies behind the joint with the tail; origin in the joint.</param>
internal sealed record BodyHalves(ActionBody Front, ActionBody Rear)
{
    /// <summary>Parts a body at its joint.</summary>
    /// <param name="body">A body with a <see cref="ActionBody.Rear"/>.</param>
    public static BodyHalves Of(ActionBody body)
    {
        FlexibleRear rear = body.Rear ?? throw new ArgumentException("The body is stiff.", nameof(body));
        double joint = rear.JointPosition, mass = body.Mass - rear.Mass, volume = body.Volume - rear.Volume;
        Vector3d origin = new(joint, 0, 0);
        List<BodySection> ahead = [], behind = [];
        foreach (BodySection s in body.Sections)
        {
            double fore = s.Position + (s.Length / 2), aft = s.Position - (s.Length / 2);
            double cut = Math.Clamp(joint, aft, fore);
            if (fore > cut) ahead.Add(s with { Position = (fore + cut) / 2, Length = fore - cut });
            if (cut > aft) behind.Add(s with { Position = ((cut + aft) / 2) - joint, Length = cut - aft });
        }

        return new(
            body with
            {
                Mass = mass,
                Volume = volume,
                CentreOfMass = (1 / mass) * ((body.Mass * body.CentreOfMass) - (rear.Mass * rear.CentreOfMass)),
                CentreOfBuoyancy = (1 / volume) * ((body.Volume * body.CentreOfBuoyancy) - (rear.Volume * rear.CentreOfBuoyancy)),
                Sections = ahead,
                TrailingEdges = [.. body.TrailingEdges.Where(e => e.Position.X >= joint)],
                Appendages = [.. body.Appendages.Where(a => a.Position.X >= joint)],
                Tail = null,
                Bend = null,
                Rear = null,
            },
            body with
            {
                Mass = rear.Mass,
                Volume = rear.Volume,
                CentreOfMass = rear.CentreOfMass - origin,
                CentreOfBuoyancy = rear.CentreOfBuoyancy - origin,
                Sections = behind,
                TrailingEdges = [.. body.TrailingEdges.Where(e => e.Position.X < joint).Select(e => e with { Position = e.Position - origin })],
                Appendages = [.. body.Appendages.Where(a => a.Position.X < joint).Select(a => a with { Position = a.Position - origin })],
                Tail = body.Tail is { } tail ? tail with { HingePosition = tail.HingePosition - joint } : null,
                Bend = null,
                Rear = null,
                Head = null,
                Lip = null,
            });
    }

    /// <summary>Share of the strips' length that the front has, 0 to 1.</summary>
    public double FrontShare
    {
        get
        {
            double front = Front.Sections.Sum(s => s.Length), rear = Rear.Sections.Sum(s => s.Length);
            return front + rear > 0 ? front / (front + rear) : 1;
        }
    }
}
