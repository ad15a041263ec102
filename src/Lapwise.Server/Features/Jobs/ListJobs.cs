using Lapwise.Store;
using Lapwise.Wire;

namespace Lapwise.Server.Features.Jobs;

/// <summary><c>GET /api/jobs</c>: every job by name, last changed first.</summary>
internal static class ListJobs
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs", Answer).WithName("ListJobs").WithTags("Jobs").WithSummary("Every job by name, last changed first.")
            .Produces<IReadOnlyList<JobLine>>();

    private static async Task<IReadOnlyList<JobLine>> Answer(JobShelf jobs, CancellationToken cancel) =>
        [.. (await jobs.List(cancel)).Select(j => new JobLine(j.Id, j.Name, j.Version, j.ChangedAt))];
}
