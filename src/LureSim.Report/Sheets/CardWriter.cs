using System.Text;
using LureSim.Report.Figures;
using LureSim.Report.Rendering;
using LureSim.Report.Words;

namespace LureSim.Report.Sheets;

/// <summary>Writes cards alone: a page for the phone, a paper with two cards to cut out, a text. The same cards give the same bytes; nothing is written to disk here.</summary>
public static class CardWriter
{
    private const double Mark = 14;

    /// <summary>The cards on one page for the phone.</summary>
    /// <param name="cards">The cards; at least one.</param>
    /// <returns>A complete HTML document.</returns>
    /// <exception cref="ArgumentException">There is no card.</exception>
    public static string Html(IReadOnlyList<Card> cards)
    {
        Require(cards);
        return SheetWriter.Render("cards.liquid", new CardsView
        {
            Language = Speller.Language(cards[0].Units),
            Scheme = cards.All(card => card.Night) ? "night" : "",
            Title = cards.Count == 1 ? cards[0].Title : $"Cards, {cards.Count} spots",
            Cards = [.. cards.Select((card, i) => CardView.Of(card, $"card-{i + 1}", card.Title))],
        });
    }

    /// <summary>The cards as plain text, an empty line between two.</summary>
    /// <param name="cards">The cards; at least one.</param>
    /// <returns>The text.</returns>
    /// <exception cref="ArgumentException">There is no card.</exception>
    public static string Text(IReadOnlyList<Card> cards)
    {
        Require(cards);
        return string.Join("\n", cards.Select(card => card.Text));
    }

    /// <summary>The cards as files: cards.html, cards.pdf and cards.txt.</summary>
    /// <param name="cards">The cards; at least one.</param>
    /// <returns>The files, the page first.</returns>
    /// <exception cref="ArgumentException">There is no card.</exception>
    public static IReadOnlyList<SheetFile> Files(IReadOnlyList<Card> cards)
    {
        Require(cards);
        return [new("cards.html", Encoding.UTF8.GetBytes(Html(cards))), new("cards.pdf", Pdf(cards)), new("cards.txt", Encoding.UTF8.GetBytes(Text(cards)))];
    }

    // Two to a page, with marks to cut along.
    private static byte[] Pdf(IReadOnlyList<Card> cards)
    {
        using PdfBook book = new(cards[0].Title);
        const double half = PdfPage.Height / 2;
        for (int i = 0; i < cards.Count; i += 2)
        {
            Card[] pair = [.. cards.Skip(i).Take(2)];
            PdfPage.Add(book, page =>
            {
                for (int n = 0; n < pair.Length; n++)
                {
                    double top = n * half;
                    page.MoveTo(top + PdfPage.Margin);
                    SheetPdf.Card(page, pair[n], pair[n].Title, half - (2 * PdfPage.Margin));
                    Marks(page, top, top + half);
                }
            });
        }

        return book.Close();
    }

    // Corners of the part to cut out.
    private static void Marks(PdfPage page, double top, double bottom)
    {
        const double inset = PdfPage.Margin / 2;
        foreach (double x in (double[])[inset, PdfPage.Width - inset])
        {
            foreach (double y in (double[])[top + inset, bottom - inset])
            {
                page.Line(x - (Mark / 2), y, x + (Mark / 2), y, Palette.Ink);
                page.Line(x, y - (Mark / 2), x, y + (Mark / 2), Palette.Ink);
            }
        }
    }

    private static void Require(IReadOnlyList<Card> cards)
    {
        ArgumentNullException.ThrowIfNull(cards);
        if (cards.Count == 0)
            throw new ArgumentException("There is no card.", nameof(cards));
    }

    private sealed record CardsView : PageFrame
    {
        public required IReadOnlyList<CardView> Cards { get; init; }
    }
}
