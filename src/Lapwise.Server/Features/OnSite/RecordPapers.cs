using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;
using Lapwise.Documents;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.OnSite;

/// <summary><c>GET /api/jobs/{id}/runs/{run}/record.pdf</c> and <c>/record</c>: the record of what was done, on paper or as a page that prints.</summary>
internal static class RecordPapers
{
    public static void Map(IEndpointRouteBuilder api)
    {
        var runs = api.MapGroup("/jobs/{id}/runs/{run}").WithTags("OnSite");
        runs.MapGet("/record.pdf", (string id, string run, HttpRequest request, MarkLog log, JobShelf jobs, CancellationToken cancel) => Answer(id, run, isPdf: true, request, log, jobs, cancel))
            .WithName("RecordPdf").WithSummary("The record of a run as a PDF.").Produces(StatusCodes.Status200OK, contentType: "application/pdf").ProducesProblem(StatusCodes.Status404NotFound);
        runs.MapGet("/record", (string id, string run, HttpRequest request, MarkLog log, JobShelf jobs, CancellationToken cancel) => Answer(id, run, isPdf: false, request, log, jobs, cancel))
            .WithName("RecordPage").WithSummary("The record of a run as a page that prints.").Produces(StatusCodes.Status200OK, contentType: "text/html").ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> Answer(string id, string run, bool isPdf, HttpRequest request, MarkLog log, JobShelf jobs, CancellationToken cancel)
    {
        if (Folding.Fold(await log.All(id, run, cancel)) is not { } told) return Problems.NotFound();
        // The run stands without its job; what the job says is only in which clock and units it is told.
        var job = (await jobs.Find(id, cancel))?.Document;
        var voice = Voices.Of(request, job?.Units ?? UnitSystem.Us);
        var zone = job?.Timeline?.Zone is { Length: > 0 } name && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var known) ? known : TimeZoneInfo.Local;
        return isPdf
            ? Results.File(RecordSheet.Pdf(told, voice, zone), "application/pdf", $"record-{run}.pdf")
            : Results.Content(RecordSheet.Html(told, voice, zone), "text/html; charset=utf-8");
    }
}
