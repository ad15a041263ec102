using Lapwise.Core.OnSite;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.OnSite;

/// <summary><c>GET /api/jobs/{id}/runs/{run}/marks?after=N</c>: the marks that came in after N.</summary>
internal static class ReadMarks
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/runs/{run}/marks", Answer).WithName("ReadMarks").WithTags("OnSite").WithSummary("The marks of a run that came in after a place.")
            .Produces<MarksAnswer>()
            .ProducesProblem(StatusCodes.Status400BadRequest);

    private static async Task<IResult> Answer(string id, string run, MarkLog log, TimeProvider time, CancellationToken cancel, long after = 0)
    {
        if (!DocumentId.IsUsable(id)) return Problems.BadId(id);
        if (!DocumentId.IsUsable(run)) return Problems.BadId(run);
        var (marks, upto) = await log.After(id, run, after, cancel);
        return Results.Ok(new MarksAnswer(time.GetUtcNow().ToUnixTimeMilliseconds(), upto, marks));
    }
}
