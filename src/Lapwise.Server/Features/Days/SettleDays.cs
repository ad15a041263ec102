using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Days;

/// <summary><c>/api/days/settled</c>: the days that hold, and settles on those a search has found. Only then does the feed change.</summary>
internal static class SettleDays
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/days/settled", Read).WithName("ReadSettledDays").WithTags("Days").WithSummary("The days the shop has settled on.").Produces<SettledDaysDocument>();
        api.MapPut("/days/settled", Settle).WithName("SettleDays").WithTags("Days").WithSummary("Settles on the days that the search with this ?input= has found.")
            .Produces<SettledDaysDocument>().ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status412PreconditionFailed);
    }

    private static async Task<IResult> Read(HttpContext http, SettledShelf settled, CancellationToken cancel)
    {
        if (await settled.Find(RatesShelf.Own, cancel) is not { } stored) return Results.Ok(new SettledDaysDocument());
        Versions.Say(http, stored.Version);
        return Results.Ok(stored.Document);
    }

    private static async Task<IResult> Settle(HttpContext http, DaysDesk desk, SettledShelf settled, CancellationToken cancel)
    {
        if (desk.Now is not { } search || search.Input.Mark != http.Request.Query["input"].ToString() || search.Visits is not { Count: > 0 } visits) return Problems.NotFound();
        var stored = await settled.Find(RatesShelf.Own, cancel);
        var document = Next(stored?.Document ?? new SettledDaysDocument(), visits, search.Input);
        return SaveAnswers.Of(http, stored is null
            ? await settled.Add(RatesShelf.Own, document, cancel)
            : await settled.Replace(RatesShelf.Own, document, stored.Version, cancel), "/api/days/settled", created: false);
    }

    /// <summary>Of a job that is no longer planned, what was done stays.</summary>
    private static SettledDaysDocument Next(SettledDaysDocument before, IReadOnlyList<VisitDocument> visits, DaysInput input)
    {
        var (tomorrow, planned) = (input.Tomorrow.ToDateTime(TimeOnly.MinValue), visits.Select(v => v.Job).ToHashSet(StringComparer.Ordinal));
        // A calendar may hold the job's own days already: the settled ones have the same ids and must come after them.
        return Settling.Next(before, before.Visits.Where(v => !planned.Contains(v.Job) && v.Begins < tomorrow), visits, input.Jobs.Where(j => planned.Contains(j.Id)).Max(j => j.Version));
    }
}
