using System.Globalization;
using System.Text;

namespace LureSim.Tests.Conventions;

/// <summary>Draws the house: a floor a row, a room a box with its folders, an arrow for the use of one room by another, as thick as it is frequent.</summary>
internal static class HouseDrawing
{
    private const int RoomWidth = 250, RoomHeight = 62, Gap = 40, FloorHeight = 104, Left = 24, Top = 44;

    public static string Of(HouseGraph graph, string[][] floors)
    {
        string[][] rows = [.. floors.Select(f => f.Where(r => graph.Rooms.Any(x => x == r || x.StartsWith(r + ".", StringComparison.Ordinal))).ToArray()).Where(f => f.Length > 0).Reverse()];
        string RoomOf(string space) => rows.SelectMany(f => f).Where(r => space == r || space.StartsWith(r + ".", StringComparison.Ordinal)).MaxBy(r => r.Length)!;
        int widest = rows.Max(f => f.Length);
        int width = (2 * Left) + (widest * RoomWidth) + ((widest - 1) * Gap), height = Top + (rows.Length * FloorHeight);
        Dictionary<string, (int X, int Y)> place = [];
        for (int f = 0; f < rows.Length; f++)
        {
            int row = (rows[f].Length * RoomWidth) + ((rows[f].Length - 1) * Gap);
            for (int i = 0; i < rows[f].Length; i++) place[rows[f][i]] = (((width - row) / 2) + (i * (RoomWidth + Gap)), Top + (f * FloorHeight));
        }

        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" font-family=\"sans-serif\" role=\"img\">\n<title>The rooms of the house and what they use</title>\n");
        text.Append("<defs><marker id=\"a\" viewBox=\"0 0 8 8\" refX=\"7\" refY=\"4\" markerWidth=\"7\" markerHeight=\"7\" markerUnits=\"userSpaceOnUse\" orient=\"auto\"><path d=\"M0 0L8 4L0 8z\" fill=\"#456\"/></marker></defs>\n");
        text.Append(CultureInfo.InvariantCulture, $"<rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\n<text x=\"{Left}\" y=\"26\" font-size=\"15\" fill=\"#111\">A room uses those below it; a thicker line stands for more uses in the compiled types.</text>\n");
        var arrows = graph.Arrows.Where(a => RoomOf(a.From) != RoomOf(a.To)).GroupBy(a => (From: RoomOf(a.From), To: RoomOf(a.To))).Select(g => (g.Key.From, g.Key.To, Count: g.Sum(a => a.Count)));
        foreach ((string from, string to, int count) in arrows.OrderBy(a => a.Count).ThenBy(a => a.From, StringComparer.Ordinal).ThenBy(a => a.To, StringComparer.Ordinal))
        {
            (int fx, int fy) = place[from];
            (int tx, int ty) = place[to];

            // Ends are spread over the edges, so that arrows into one room do not lie on each other.
            double share = 0.5 + (0.42 * Math.Tanh((tx - fx) / 400.0)), back = 0.5 + (0.42 * Math.Tanh((fx - tx) / 400.0));
            double x1 = fx + (share * RoomWidth), y1 = fy + RoomHeight, x2 = tx + (back * RoomWidth), y2 = ty;
            double bend = (y2 - y1) / 2, stroke = 0.8 + (0.7 * Math.Log10(AtLeast(count)));
            text.Append(CultureInfo.InvariantCulture, $"<path d=\"M{x1:0} {y1:0}C{x1:0} {y1 + bend:0} {x2:0} {y2 - bend:0} {x2:0} {y2 - 1:0}\" fill=\"none\" stroke=\"#678\" stroke-opacity=\"0.55\" stroke-width=\"{stroke:0.0}\" marker-end=\"url(#a)\"><title>{from} uses {to}: {AtLeast(count)} times or more</title></path>\n");
        }

        foreach ((string room, (int x, int y)) in place.OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            string[] inside = [.. graph.Rooms.Where(r => r.StartsWith(room + ".", StringComparison.Ordinal) && RoomOf(r) == room).Select(r => r[(room.Length + 1)..])];
            int types = graph.Types.Where(t => RoomOf(t.Key) == room).Sum(t => t.Value);
            text.Append(CultureInfo.InvariantCulture, $"<rect x=\"{x}\" y=\"{y}\" width=\"{RoomWidth}\" height=\"{RoomHeight}\" rx=\"6\" fill=\"#eef3f6\" stroke=\"#246\"/>\n");
            text.Append(CultureInfo.InvariantCulture, $"<text x=\"{x + 10}\" y=\"{y + 22}\" font-size=\"14\" font-weight=\"700\" fill=\"#111\">{(room == "LureSim" ? "LureSim (guards)" : room.Replace("LureSim.", "", StringComparison.Ordinal))}</text><text x=\"{x + RoomWidth - 10}\" y=\"{y + 22}\" font-size=\"11\" text-anchor=\"end\" fill=\"#345\">{AtLeast(types)}+ types</text>\n");
            for (int i = 0; i < Math.Min(2, (inside.Length + 4) / 5); i++)
                text.Append(CultureInfo.InvariantCulture, $"<text x=\"{x + 10}\" y=\"{y + 39 + (14 * i)}\" font-size=\"10\" fill=\"#345\">{string.Join(", ", inside.Skip(5 * i).Take(5))}</text>\n");
        }

        text.Append("</svg>\n");
        return text.ToString();
    }

    // Steps of about three, so that the drawing changes with the house and not with every line of code.
    private static int AtLeast(int count) => new[] { 1000, 300, 100, 30, 10, 3, 1 }.First(step => count >= step);
}
