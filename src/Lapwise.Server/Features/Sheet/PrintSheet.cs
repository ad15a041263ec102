using Lapwise.Documents;
using Lapwise.Server.Features.Jobs;

namespace Lapwise.Server.Features.Sheet;

/// <summary><c>GET /api/jobs/{id}/sheet</c>: the job sheet as a page that prints.</summary>
internal static class PrintSheet
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/sheet", Answer).WithName("PrintSheet").WithTags("Sheet").WithSummary("The job sheet as a page that prints.")
            .Produces(StatusCodes.Status200OK, contentType: "text/html")
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholeJob stored, CancellationToken cancel)
    {
        var (whole, voice, refusal) = await stored.Of(id, request, cancel);
        return whole is null ? refusal! : Results.Content(JobSheet.Html(whole, voice), "text/html; charset=utf-8");
    }
}
