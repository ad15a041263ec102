using Lapwise.Core.Answers;

namespace Lapwise.Server.Features.Money;

/// <summary><c>GET /api/jobs/{id}/price</c>: what to charge, and whether it pays.</summary>
internal static class PriceOfJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/price", Answer).WithName("PriceOfJob").WithTags("Money").WithSummary("What to charge, and whether it pays.")
            .Produces<PriceAnswer>().ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholePrice stored, CancellationToken cancel)
    {
        var (priced, refusal) = await stored.Of(id, request, cancel);
        return priced is null ? refusal! : Results.Ok(MoneyAnswering.Price(priced.Priced, priced.Voice));
    }
}
