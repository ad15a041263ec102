using Lapwise.Core.Explain;

namespace Lapwise.Server.Http;

/// <summary>In which language and units an answer is said.</summary>
internal static class Voices
{
    /// <summary><c>?language=es&amp;units=metric</c>; left out: the browser's language, and what the job works in.</summary>
    public static Voice Of(HttpRequest request, UnitSystem units = UnitSystem.Us)
    {
        var asked = request.Query["language"].ToString();
        var language = (asked.Length > 0 ? asked : request.Headers.AcceptLanguage.ToString()).StartsWith("es", StringComparison.OrdinalIgnoreCase)
            ? Language.Spanish
            : Language.English;
        return new Voice(language, request.Query["units"].ToString() switch { "us" => UnitSystem.Us, "metric" => UnitSystem.Metric, _ => units });
    }
}
