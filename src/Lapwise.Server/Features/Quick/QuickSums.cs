using Lapwise.Core.Explain;
using Lapwise.Core.Quick;
using Lapwise.Server.Http;
using Microsoft.OpenApi;

namespace Lapwise.Server.Features.Quick;

/// <summary>
/// <c>GET /api/quick</c>: every sum that needs no job, with what it asks for. <c>GET /api/quick/film?wet=6mil&amp;solids=62%25</c>
/// works one; <c>POST</c> takes the same names and values as a JSON object, for readings that are too long for an address.
/// </summary>
internal static class QuickSums
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/quick", (HttpRequest request) => QuickSum.All.Select(s => QuickAsk.Of(s, Voices.Of(request))).ToList() as IReadOnlyList<QuickAsk>)
            .WithName("ListQuickSums").WithTags("Quick sums").WithSummary("Every sum that needs no job, with what it asks for.");
        foreach (var sum in QuickSum.All) Map(api, sum);
    }

    private static void Map(IEndpointRouteBuilder api, QuickSum sum)
    {
        Described(api.MapGet("/quick/" + sum.Name, (HttpRequest request) => Answer(sum, InAddress(request), request)), sum, "Quick-" + sum.Name)
            .AddOpenApiOperationTransformer((operation, _, _) =>
            {
                operation.Parameters = [.. sum.Fields.Where(f => !f.IsLines).Select(f => new OpenApiParameter
                {
                    Name = f.Name, In = ParameterLocation.Query, Required = f.Needed, Description = $"{f.Label(Voice.Default)}, as {f.Example(Voice.Default)}", Schema = new OpenApiSchema { Type = JsonSchemaType.String },
                })];
                return Task.CompletedTask;
            });
        Described(api.MapPost("/quick/" + sum.Name, async (HttpRequest request, CancellationToken cancel) =>
        {
            var (written, refusal) = await Bodies.Read(request, QuickJson.Default.DictionaryStringString, cancel);
            return written is null ? refusal! : Answer(sum, written, request);
        }), sum, "QuickBody-" + sum.Name).Accepts<Dictionary<string, string>>("application/json");
    }

    private static RouteHandlerBuilder Described(RouteHandlerBuilder route, QuickSum sum, string name) =>
        route.WithName(name).WithTags("Quick sums").WithSummary(sum.Question(Voice.Default))
            .Produces<QuickAnswer>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static IResult Answer(QuickSum sum, IReadOnlyDictionary<string, string> written, HttpRequest request)
    {
        var voice = Voices.Of(request);
        var (result, faults) = sum.Answer(written, voice.Units);
        return result is null ? Problems.Faults(StatusCodes.Status422UnprocessableEntity, faults, voice) : Results.Ok(QuickAnswer.Of(sum, result, voice));
    }

    /// <summary>What the address says, less how to answer.</summary>
    private static Dictionary<string, string> InAddress(HttpRequest request) =>
        request.Query.Where(q => q.Key is not ("language" or "units")).ToDictionary(q => q.Key, q => q.Value.ToString(), StringComparer.Ordinal);
}
