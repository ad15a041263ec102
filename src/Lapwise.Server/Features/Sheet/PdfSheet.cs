using Lapwise.Documents;
using Lapwise.Server.Features.Jobs;

namespace Lapwise.Server.Features.Sheet;

/// <summary><c>GET /api/jobs/{id}/sheet.pdf</c>: the job sheet as a PDF.</summary>
internal static class PdfSheet
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/sheet.pdf", Answer).WithName("PdfSheet").WithTags("Sheet").WithSummary("The job sheet as a PDF.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholeJob stored, TimeProvider time, CancellationToken cancel)
    {
        var (whole, voice, refusal) = await stored.Of(id, request, cancel);
        return whole is null ? refusal! : Results.File(JobSheet.Pdf(whole, voice, time.GetUtcNow()), "application/pdf", $"lapwise-{id}.pdf");
    }
}
