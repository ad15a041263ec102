using Lapwise.Core.OnSite;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.OnSite;

/// <summary><c>GET /api/jobs/{id}/runs</c>: the runs of a job, the one last marked first.</summary>
internal static class ListRuns
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/runs", Answer).WithName("ListRuns").WithTags("OnSite").WithSummary("The runs of a job, the one last marked first.")
            .Produces<IReadOnlyList<RunLine>>()
            .ProducesProblem(StatusCodes.Status400BadRequest);

    private static async Task<IResult> Answer(string id, MarkLog log, CancellationToken cancel) =>
        DocumentId.IsUsable(id) ? Results.Ok(await log.Runs(id, cancel)) : Problems.BadId(id);
}
