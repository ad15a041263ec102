using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Money;

/// <summary><c>GET /api/rates</c>: what the shop charges by; empty where nothing is entered yet.</summary>
internal static class ReadRates
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/rates", Answer).WithName("ReadRates").WithTags("Money").WithSummary("What the shop charges by; empty where nothing is entered yet.").Produces<RatesDocument>();

    private static async Task<IResult> Answer(HttpContext http, RatesShelf rates, CancellationToken cancel)
    {
        if (await rates.Find(RatesShelf.Own, cancel) is not { } stored) return Results.Ok(new RatesDocument());
        Versions.Say(http, stored.Version);
        return Results.Ok(stored.Document);
    }
}
