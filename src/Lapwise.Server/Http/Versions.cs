using System.Globalization;

namespace Lapwise.Server.Http;

/// <summary>The version of a stored document as HTTP says it: an entity tag, and the condition of a change.</summary>
internal static class Versions
{
    public static void Say(HttpContext http, long version) => http.Response.Headers.ETag = $"\"{version.ToString(CultureInfo.InvariantCulture)}\"";

    /// <summary>The version that <c>If-Match</c> names; null where there is none or it is not one of ours.</summary>
    public static long? Wanted(HttpRequest request) =>
        long.TryParse(request.Headers.IfMatch.ToString().Trim('"'), NumberStyles.None, CultureInfo.InvariantCulture, out var version) ? version : null;

    /// <summary><c>If-None-Match: *</c>: only if there is none yet.</summary>
    public static bool WantsNone(HttpRequest request) => request.Headers.IfNoneMatch.ToString() == "*";
}
