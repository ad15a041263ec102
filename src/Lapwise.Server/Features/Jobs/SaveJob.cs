using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Jobs;

/// <summary>
/// <c>PUT /api/jobs/{id}</c>: keeps the document as entered, faults and all, so that nothing typed is lost.
/// <c>If-Match</c> names the version it was made from; <c>If-None-Match: *</c> makes a new one.
/// </summary>
internal static class SaveJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPut("/jobs/{id}", Answer).WithName("SaveJob").WithTags("Jobs")
            .WithSummary("Keeps a job as entered. If-Match names the version it was made from; If-None-Match: * makes a new one.")
            .Accepts<JobDocument>("application/json")
            .Produces<JobDocument>().Produces<JobDocument>(StatusCodes.Status201Created)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status412PreconditionFailed)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status428PreconditionRequired);

    private static async Task<IResult> Answer(string id, HttpContext http, JobShelf jobs, CancellationToken cancel)
    {
        if (!DocumentId.IsUsable(id)) return Problems.BadId(id);
        var (document, refusal) = await JobBodies.Read(http.Request, cancel);
        if (document is null) return refusal!;
        if (Versions.WantsNone(http.Request)) return SaveAnswers.Of(http, await jobs.Add(id, document, cancel), "/api/jobs", created: true);
        return Versions.Wanted(http.Request) is { } version
            ? SaveAnswers.Of(http, await jobs.Replace(id, document, version, cancel), "/api/jobs", created: false)
            : Problems.VersionMissing();
    }
}
