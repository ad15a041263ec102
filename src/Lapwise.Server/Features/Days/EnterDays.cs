using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Days;

/// <summary><c>/api/days</c>: crews, gear, days lost and visits that stay, kept as entered, faults and all, so that nothing typed is lost.</summary>
internal static class EnterDays
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/days", Read).WithName("ReadDays").WithTags("Days").WithSummary("Crews, gear, days lost and visits that stay, as entered.").Produces<DaysDocument>();
        api.MapPut("/days", Save).WithName("SaveDays").WithTags("Days")
            .WithSummary("Keeps them as entered. If-Match names the version they were made from; If-None-Match: * the first.")
            .Accepts<DaysDocument>("application/json").Produces<DaysDocument>()
            .ProducesProblem(StatusCodes.Status412PreconditionFailed).ProducesProblem(StatusCodes.Status428PreconditionRequired);
    }

    private static async Task<IResult> Read(HttpContext http, DaysShelf days, CancellationToken cancel)
    {
        if (await days.Find(RatesShelf.Own, cancel) is not { } stored) return Results.Ok(new DaysDocument());
        Versions.Say(http, stored.Version);
        return Results.Ok(stored.Document);
    }

    private static async Task<IResult> Save(HttpContext http, DaysShelf days, CancellationToken cancel)
    {
        var (document, refusal) = await Bodies.Read(http.Request, JobJson.Default.DaysDocument, cancel);
        if (document is null) return refusal!;
        if (Versions.WantsNone(http.Request)) return SaveAnswers.Of(http, await days.Add(RatesShelf.Own, document, cancel), "/api/days", created: true);
        return Versions.Wanted(http.Request) is { } version ? SaveAnswers.Of(http, await days.Replace(RatesShelf.Own, document, version, cancel), "/api/days", created: false) : Problems.VersionMissing();
    }
}
