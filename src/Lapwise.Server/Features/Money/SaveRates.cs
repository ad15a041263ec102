using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Money;

/// <summary><c>PUT /api/rates</c>: keeps the rates as entered, faults and all, so that nothing typed is lost.</summary>
internal static class SaveRates
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPut("/rates", Answer).WithName("SaveRates").WithTags("Money")
            .WithSummary("Keeps the rates as entered. If-Match names the version they were made from; If-None-Match: * the first.")
            .Accepts<RatesDocument>("application/json").Produces<RatesDocument>()
            .ProducesProblem(StatusCodes.Status412PreconditionFailed).ProducesProblem(StatusCodes.Status428PreconditionRequired);

    private static async Task<IResult> Answer(HttpContext http, RatesShelf rates, CancellationToken cancel)
    {
        var (document, refusal) = await Bodies.Read(http.Request, JobJson.Default.RatesDocument, cancel);
        if (document is null) return refusal!;
        if (Versions.WantsNone(http.Request)) return SaveAnswers.Of(http, await rates.Add(RatesShelf.Own, document, cancel), "/api/rates", created: true);
        return Versions.Wanted(http.Request) is { } version ? SaveAnswers.Of(http, await rates.Replace(RatesShelf.Own, document, version, cancel), "/api/rates", created: false) : Problems.VersionMissing();
    }
}
