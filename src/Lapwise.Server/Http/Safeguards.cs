using Lapwise.Wire;

namespace Lapwise.Server.Http;

/// <summary>What every answer carries, whatever it says.</summary>
internal static class Safeguards
{
    /// <summary>
    /// Only this server's own files run and are spoken to. The page computes in WebAssembly, which asks for a word of its own.
    /// Drawings and sheets carry their style inside, so styles may; a style can neither send nor read anything from elsewhere here.
    /// </summary>
    private const string Policy =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' blob: data:; connect-src 'self'; " +
        "worker-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public static Task OnEveryAnswer(HttpContext http, RequestDelegate next)
    {
        var headers = http.Response.Headers;
        headers[WireHeaders.ProgramVersion] = ProgramVersion.Own;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers.XFrameOptions = "DENY";
        headers.ContentSecurityPolicy = Policy;
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(self), screen-wake-lock=(self), geolocation=(), microphone=(), payment=(), usb=()";
        return next(http);
    }
}
