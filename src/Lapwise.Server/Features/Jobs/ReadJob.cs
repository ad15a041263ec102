using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Jobs;

/// <summary><c>GET /api/jobs/{id}</c>: the job document as entered; its version is the ETag.</summary>
internal static class ReadJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}", Answer).WithName("ReadJob").WithTags("Jobs").WithSummary("The job document as entered; its version is the ETag.")
            .Produces<JobDocument>()
            .ProducesProblem(StatusCodes.Status404NotFound);

    private static async Task<IResult> Answer(string id, HttpContext http, JobShelf jobs, CancellationToken cancel)
    {
        if (await jobs.Find(id, cancel) is not { } stored) return Problems.NotFound();
        Versions.Say(http, stored.Version);
        return Results.Ok(stored.Document);
    }
}
