using LureSim.Data;

namespace LureSim.Model;

/// <summary>A ready-made retrieve of the trade.</summary>
/// <param name="Name">Name in the trade.</param>
/// <param name="Meaning">What it is, in a few words.</param>
/// <param name="Fall">How the lure falls; null where it does not matter to the style.</param>
/// <param name="CountDown">Seconds from splash-down until the retrieve begins, infinite to wait until the lure lies on the bottom; null where the angler chooses.</param>
/// <param name="Speed">Speed that the shares of the moves refer to (m/s); null where line comes in only if the angler wants it to.</param>
/// <param name="Moves">The moves.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record RetrieveStyle(string Name, string Meaning, FallMode? Fall, double? CountDown, double? Speed, IReadOnlyList<Move> Moves)
{
    private static readonly Lazy<IReadOnlyList<RetrieveStyle>> Table = new(Read);

    /// <summary>Name in the trade.</summary>
    public string Name { get; init => field = Guard.Given(value); } = Guard.Given(Name);

    /// <summary>What it is, in a few words.</summary>
    public string Meaning { get; init => field = Guard.Given(value); } = Guard.Given(Meaning);

    /// <summary>How the lure falls; null where it does not matter to the style.</summary>
    public FallMode? Fall { get; init => field = value is { } fall ? Guard.Defined(fall) : null; } = Fall is { } fall ? Guard.Defined(fall, nameof(Fall)) : null;

    /// <summary>Seconds from splash-down until the retrieve begins, 0 to 120, or infinite; null where the angler chooses.</summary>
    public double? CountDown { get; init => field = Wait(value); } = Wait(CountDown);

    /// <summary>Speed that the shares of the moves refer to (m/s), 0.02 to 3; null where line comes in only if the angler wants it to.</summary>
    public double? Speed { get; init => field = Limits.LineSpeed.Check(value); } = Limits.LineSpeed.Check(Speed);

    /// <summary>The moves.</summary>
    public IReadOnlyList<Move> Moves { get; init => field = Guard.Items(value, 1); } = Guard.Items(Moves, 1);

    /// <summary>All of them, in the order of Data/tackle/retrieve_styles.csv (names and ways are common practice, figures assumed).</summary>
    public static IReadOnlyList<RetrieveStyle> All => Table.Value;

    /// <summary>The style of a name; null for none.</summary>
    /// <param name="name">Name in the trade.</param>
    public static RetrieveStyle? Find(string name) => All.FirstOrDefault(style => style.Name == name);

    private static double? Wait(double? countDown) =>
        countDown == double.PositiveInfinity ? countDown : Limits.CountDown.Check(countDown, nameof(CountDown));

    private static List<RetrieveStyle> Read()
    {
        ILookup<string, Move> moves = ReferenceTable.Tackle("retrieve_moves").Rows.ToLookup(row => row.Text("style"), row => new Move
        {
            Kind = ReferenceWords.Parse<MoveKind>(row.Text("move")),
            Duration = Number(row, "duration_s") ?? throw new FormatException("A move of retrieve_moves.csv has no duration."),
            ReelShare = row.Number("reel_share"),
            Up = row.Number("up_m"),
            Beats = (int)row.Number("beats"),
        });
        return
        [
            .. ReferenceTable.Tackle("retrieve_styles").Rows.Select(row => new RetrieveStyle(
                row.Text("style"),
                row.Text("meaning"),
                row.Text("fall") is { Length: > 0 } fall ? ReferenceWords.Parse<FallMode>(fall) : null,
                Number(row, "count_down_s"),
                Number(row, "speed_m_s"),
                [.. moves[row.Text("style")]])),
        ];
    }

    // An empty cell is no number; the text "inf" stands for no end.
    private static double? Number(ReferenceRow row, string column) => row.Text(column) switch
    {
        "" => null,
        "inf" => double.PositiveInfinity,
        _ => row.Number(column),
    };
}
