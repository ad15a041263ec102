using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Explain;

namespace Lapwise.Server.Http;

/// <summary>Reads a document out of a request: a document, or the refusal that answers the request.</summary>
internal static class Bodies
{
    public static async Task<(T? Document, IResult? Refusal)> Read<T>(HttpRequest request, JsonTypeInfo<T> json, CancellationToken cancel) where T : class
    {
        var voice = Voices.Of(request);
        if (!request.HasJsonContentType())
            return (null, Results.Problem(statusCode: StatusCodes.Status415UnsupportedMediaType, title: "Send application/json"));
        try
        {
            var document = await JsonSerializer.DeserializeAsync(request.Body, json, cancel);
            return document is null ? (null, Refuse(voice, "", "it holds nothing", "no contiene nada")) : (document, null);
        }
        catch (JsonException e)
        {
            var (line, at) = ((e.LineNumber ?? 0) + 1, (e.BytePositionInLine ?? 0) + 1);
            return (null, Refuse(voice, PathOf(e), $"line {line}, position {at}", $"línea {line}, posición {at}"));
        }
        catch (BadHttpRequestException e)
        {
            // Too large, or cut off on the way.
            return (null, Results.Problem(
                statusCode: e.StatusCode,
                title: e.StatusCode == StatusCodes.Status413PayloadTooLarge ? "The document is too large" : "The request was cut off",
                detail: $"A request holds at most {LapwiseServer.MostRequestBytes / (1024 * 1024)} MB."));
        }
    }

    private static IResult Refuse(Voice voice, string path, string en, string es) =>
        Problems.Faults(StatusCodes.Status400BadRequest,
            [new Fault(path, "NotADocument",
                v => v.Say($"This is not a document that can be read: {en}.", $"Este documento no se puede leer: {es}."),
                v => v.Say("Compare it with the published schema.", "Compárelo con el esquema publicado."))],
            voice);

    /// <summary>The serializer's <c>$.tops[0].name</c> without the root sign.</summary>
    private static string PathOf(JsonException e) => (e.Path ?? "").TrimStart('$').TrimStart('.');
}
