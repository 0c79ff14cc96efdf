using System.Globalization;
using Microsoft.AspNetCore.Http;

namespace LureSim.Workbench.Server;

/// <summary>Lets in what this program's own page asks, and nothing else.</summary>
internal static class Gate
{
    /// <summary>Path of the link that works once.</summary>
    public const string Open = "/open";

    /// <summary>Path of the socket.</summary>
    public const string Socket = "/live";

    /// <summary>What every answer carries.</summary>
    /// <param name="response">The answer.</param>
    /// <param name="port">Port of the program.</param>
    public static void Headers(HttpResponse response, int port)
    {
        IHeaderDictionary headers = response.Headers;
        string socket = string.Create(CultureInfo.InvariantCulture, $"ws://127.0.0.1:{port}");
        headers.ContentSecurityPolicy = $"default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self' {socket}; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";

        // With "no-referrer" a browser sends "Origin: null" with a form, and the interview could not be told from another page.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers.CacheControl = "no-store";
    }

    /// <summary>Why a request is refused; null where it may go on.</summary>
    /// <param name="request">The request.</param>
    /// <param name="keys">Keys of this program.</param>
    /// <param name="port">Its port.</param>
    public static (int Status, string Words)? Refuses(HttpRequest request, Keys keys, int port)
    {
        string host = string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{port}");

        // A name that leads to this machine is no proof that the page is ours (DNS rebinding): the address itself is asked for.
        if (!string.Equals(request.Host.Value, host, StringComparison.Ordinal)) return (StatusCodes.Status403Forbidden, "This page is at http://" + host + " only.");
        bool open = request.Path == Open;
        string site = request.Headers["Sec-Fetch-Site"].ToString();
        if (!open && site is "cross-site" or "same-site" && !open) return (StatusCodes.Status403Forbidden, "Another site may not ask this.");
        bool reads = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);
        bool upgrades = request.Path == Socket;
        if ((upgrades || !reads) && request.Headers.Origin.ToString() != "http://" + host) return (StatusCodes.Status403Forbidden, "Only this program's own page may ask this.");
        if (open) return null;
        return keys.IsOurs(request.Cookies[keys.CookieName])
            ? null
            : (StatusCodes.Status401Unauthorized, "This page opens by its link only, and a link works once. Press O in the terminal where LureSim runs for a new one.");
    }
}
