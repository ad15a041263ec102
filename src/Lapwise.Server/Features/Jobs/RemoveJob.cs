using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Jobs;

/// <summary><c>DELETE /api/jobs/{id}</c>: takes a job out at the version named by <c>If-Match</c>; the answer holds it, so it can be put back.</summary>
internal static class RemoveJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapDelete("/jobs/{id}", Answer).WithName("RemoveJob").WithTags("Jobs").WithSummary("Takes a job out at the version named by If-Match; the answer holds it.")
            .Produces<JobDocument>()
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status412PreconditionFailed)
            .ProducesProblem(StatusCodes.Status428PreconditionRequired);

    private static async Task<IResult> Answer(string id, HttpContext http, JobShelf jobs, CancellationToken cancel) =>
        Versions.Wanted(http.Request) is { } version
            ? SaveAnswers.Of(http, await jobs.Remove(id, version, cancel), "/api/jobs", created: false)
            : Problems.VersionMissing();
}
