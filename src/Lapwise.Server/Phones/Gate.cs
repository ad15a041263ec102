using System.Net;
using Lapwise.Server.Features.Days;
using Lapwise.Server.Http;

namespace Lapwise.Server.Phones;

/// <summary>
/// Stands before everything else and decides who may ask. This computer: as ever. A phone: only with the token it was given
/// when it was paired; without one it sees the pairing page and nothing else. Who may let devices in is only this computer.
/// </summary>
internal sealed class Gate(PhoneDoor door, PhoneBook book, PairingCode code)
{
    /// <summary>The browser itself holds this prefix to an encrypted connection and to this host (RFC 6265bis, 4.1.3.2).</summary>
    public const string TokenCookie = "__Host-lapwise-device";
    public const string CertificatePath = "/lapwise-shop.crt";
    private static readonly TimeSpan TokenLife = TimeSpan.FromDays(400);
    private const int LongestName = 40;

    public Task Pass(HttpContext http, RequestDelegate next)
    {
        var port = http.Connection.LocalPort;
        if (IsFromAnotherSite(http.Request)) return Refuse(http, StatusCodes.Status403Forbidden, "Asked by another site");
        if (port == door.CertificatePort) return HandOutCertificate(http);
        if (port != door.Port) return IsThisMachine(http) ? next(http) : Refuse(http, StatusCodes.Status400BadRequest, "Not this host");
        if (!LanNames.Now().Has(http.Request.Host.Host)) return Refuse(http, StatusCodes.Status400BadRequest, "Not this host");
        if (http.Request.Path == "/pair") return Pair(http);
        // A calendar program has no token; its address is its key.
        if (FeedOfDays.IsAsked(http.Request)) return next(http);
        if (http.Request.Cookies[TokenCookie] is not { } token || book.Find(token) is null) return TurnAway(http);
        return http.Request.Path.StartsWithSegments(PhonesAddress.Path, StringComparison.OrdinalIgnoreCase)
            ? Refuse(http, StatusCodes.Status403Forbidden, "Only at the shop's computer")
            : next(http);
    }

    /// <summary>By where it comes from, and by the name it asks for: a page of another site may resolve its own name to this machine.</summary>
    private static bool IsThisMachine(HttpContext http) =>
        http.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from) && http.Request.Host.Host is ("localhost" or "127.0.0.1" or "[::1]");

    /// <summary>A page of another site may send a form here, but its browser says where it comes from.</summary>
    private static bool IsFromAnotherSite(HttpRequest request)
    {
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)) return false;
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0) return site is not ("same-origin" or "none");
        var origin = request.Headers.Origin.ToString();
        return origin.Length > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
    }

    private Task HandOutCertificate(HttpContext http)
    {
        if (code.Shown is null || !HttpMethods.IsGet(http.Request.Method)) return Refuse(http, StatusCodes.Status404NotFound, "Nothing here");
        if (http.Request.Path == CertificatePath)
        {
            http.Response.ContentType = "application/x-x509-ca-cert";
            http.Response.Headers.ContentDisposition = "attachment; filename=\"lapwise-shop.crt\"";
            return http.Response.Body.WriteAsync(door.Authority.Certificate, http.RequestAborted).AsTask();
        }

        if (http.Request.Path != "/") return Refuse(http, StatusCodes.Status404NotFound, "Nothing here");
        return Page(http, StatusCodes.Status200OK, PairingPages.Certificate(Voices.Of(http.Request), door.Authority.Fingerprint, $"https://{http.Request.Host.Host}:{door.Port}/pair"));
    }

    private async Task Pair(HttpContext http)
    {
        var voice = Voices.Of(http.Request);
        if (!HttpMethods.IsPost(http.Request.Method) || !http.Request.HasFormContentType)
        {
            await Page(http, StatusCodes.Status200OK, PairingPages.Code(voice, null));
            return;
        }

        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var answer = code.Try(form["code"].ToString());
        if (answer != CodeAnswer.Right)
        {
            await Page(http, StatusCodes.Status403Forbidden, PairingPages.Code(voice, answer));
            return;
        }

        var name = form["name"].ToString().Trim();
        var token = book.Add(name.Length == 0 ? voice.Say("A phone", "Un teléfono") : name[..Math.Min(name.Length, LongestName)]);
        http.Response.Cookies.Append(TokenCookie, token, new CookieOptions { Secure = true, HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", MaxAge = TokenLife, IsEssential = true });
        http.Response.StatusCode = StatusCodes.Status303SeeOther;
        http.Response.Headers.Location = "/";
    }

    private static Task TurnAway(HttpContext http) =>
        http.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal)
            ? Page(http, StatusCodes.Status401Unauthorized, PairingPages.Code(Voices.Of(http.Request), null))
            : Refuse(http, StatusCodes.Status401Unauthorized, "This device is not let in");

    private static Task Refuse(HttpContext http, int status, string title) =>
        Results.Problem(type: "urn:lapwise:problem:gate", statusCode: status, title: title).ExecuteAsync(http);

    private static Task Page(HttpContext http, int status, string html)
    {
        http.Response.StatusCode = status;
        http.Response.Headers.ContentSecurityPolicy = PairingPages.Policy;
        http.Response.Headers.CacheControl = "no-store";
        http.Response.ContentType = "text/html; charset=utf-8";
        return http.Response.WriteAsync(html, http.RequestAborted);
    }
}

/// <summary>Where this computer's page asks about phones.</summary>
internal static class PhonesAddress
{
    public const string Path = "/api/phones";
}
