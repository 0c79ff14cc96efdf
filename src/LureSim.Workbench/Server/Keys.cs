using System.Security.Cryptography;
using System.Text;

namespace LureSim.Workbench.Server;

/// <summary>What a browser must know to get in: a link that works once, a cookie, and a key for each page. Thread-safe.</summary>
internal sealed class Keys
{
    private const int Bytes = 32;
    private const int MostPages = 32;

    private readonly Lock gate = new();
    private readonly Queue<string> pages = new();
    private readonly string session = New();
    private string? link;

    /// <summary>Name of the cookie. All ports of a machine share their cookies: it is this program's alone.</summary>
    public string CookieName { get; } = "luresim-" + Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(4));

    /// <summary>Value of the cookie.</summary>
    public string Cookie => session;

    /// <summary>A new link; the one before is no longer good.</summary>
    public string NewLink()
    {
        lock (gate) return link = New();
    }

    /// <summary>Uses the link up.</summary>
    /// <param name="given">Key of the link.</param>
    public bool Burn(string? given)
    {
        lock (gate)
        {
            if (link is null || !Same(link, given)) return false;
            link = null;
            return true;
        }
    }

    /// <summary>Whether a cookie is the one of this program.</summary>
    /// <param name="given">Value of the cookie.</param>
    public bool IsOurs(string? given) => Same(session, given);

    /// <summary>A key for a page.</summary>
    public string NewPage()
    {
        string key = New();
        lock (gate)
        {
            pages.Enqueue(key);
            while (pages.Count > MostPages) pages.Dequeue();
        }

        return key;
    }

    /// <summary>Whether a page was served by this program.</summary>
    /// <param name="given">Key of the page.</param>
    public bool Knows(string? given)
    {
        lock (gate)
        {
            bool known = false;
            foreach (string page in pages) known |= Same(page, given);
            return known;
        }
    }

    // In a time that does not tell how much of it was right.
    private static bool Same(string expected, string? given) =>
        given is not null && CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(expected), Encoding.UTF8.GetBytes(given));

    private static string New() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));
}
