using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows cards.</summary>
internal static class CardView
{
    /// <summary>Prints cards, an empty line between two.</summary>
    public static void Write(IAnsiConsole console, IReadOnlyList<Card> cards)
    {
        for (int i = 0; i < cards.Count; i++)
        {
            if (i > 0)
                console.WriteLine();
            Write(console, cards[i]);
        }
    }

    /// <summary>Prints a card; a row that is longer than the screen goes on under its text.</summary>
    public static void Write(IAnsiConsole console, Card card)
    {
        console.MarkupLineInterpolated($"[bold]{card.Title}[/]");
        var grid = new Grid();
        grid.AddColumn(new GridColumn { NoWrap = true, Padding = new Padding(0, 0, 2, 0) });
        grid.AddColumn(new GridColumn { Padding = new Padding(0, 0, 0, 0) });
        foreach (CardRow row in card.Rows)
            grid.AddRow($"[bold]{Views.Escape(row.Label)}[/]", Views.Escape(row.Text));
        console.Write(grid);
    }
}

/// <summary>Cards in JSON.</summary>
internal sealed record CardsJson(IReadOnlyList<CardsJson.One> Cards)
{
    public static CardsJson Of(IReadOnlyList<Card> cards) => new([.. cards.Select(card => new One(card.Title, card.Words, card.Rows))]);

    internal sealed record One(string Title, int Words, IReadOnlyList<CardRow> Rows);
}
