using Lapwise.Wire;

namespace Lapwise.Server.Http;

/// <summary>What every answer carries, whatever it says.</summary>
internal static class Safeguards
{
    public static Task OnEveryAnswer(HttpContext http, RequestDelegate next)
    {
        var headers = http.Response.Headers;
        headers[WireHeaders.ProgramVersion] = ProgramVersion.Own;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers.XFrameOptions = "DENY";
        return next(http);
    }
}
