using Lapwise.Documents;
using Lapwise.Server.Http;

namespace Lapwise.Server.Features.Money;

/// <summary><c>GET /api/jobs/{id}/changes.pdf</c> and <c>/changes</c>: the changes of a job with their prices, to sign.</summary>
internal static class ChangePapers
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/jobs/{id}/changes.pdf", (string id, HttpRequest request, StoredWholePrice stored, TimeProvider time, CancellationToken cancel) => Answer(id, isPdf: true, request, stored, time, cancel))
            .WithName("ChangesPdf").WithTags("Money").WithSummary("The changes of a job with their prices, to sign, as a PDF.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf").ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/jobs/{id}/changes", (string id, HttpRequest request, StoredWholePrice stored, TimeProvider time, CancellationToken cancel) => Answer(id, isPdf: false, request, stored, time, cancel))
            .WithName("ChangesPage").WithTags("Money").WithSummary("The changes of a job with their prices, to sign, as a page that prints.")
            .Produces(StatusCodes.Status200OK, contentType: "text/html").ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> Answer(string id, bool isPdf, HttpRequest request, StoredWholePrice stored, TimeProvider time, CancellationToken cancel)
    {
        var (found, refusal) = await stored.Of(id, request, cancel);
        if (found is null) return refusal!;
        var on = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        return isPdf
            ? Results.File(ChangeSheet.Pdf(found.Priced, on, found.Voice, time.GetUtcNow()), "application/pdf", $"lapwise-{id}-changes.pdf")
            : Results.Content(ChangeSheet.Html(found.Priced, on, found.Voice), "text/html; charset=utf-8");
    }
}
