using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Jobs;

/// <summary><c>POST /api/jobs</c>: a new job under an id that the server picks.</summary>
internal static class CreateJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/jobs", Answer).WithName("CreateJob").WithTags("Jobs").WithSummary("A new job under an id that the server picks.")
            .Accepts<JobDocument>("application/json")
            .Produces<JobDocument>(StatusCodes.Status201Created)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge);

    private static async Task<IResult> Answer(HttpContext http, JobShelf jobs, TimeProvider time, CancellationToken cancel)
    {
        var (document, refusal) = await JobBodies.Read(http.Request, cancel);
        if (document is null) return refusal!;
        var id = DocumentId.New(time.GetUtcNow());
        return SaveAnswers.Of(http, await jobs.Add(id, document, cancel), "/api/jobs", created: true);
    }
}
