using System.Globalization;
using Lapwise.Core;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;
using Lapwise.Core.Supply.Picking;
using Lapwise.Documents;
using Lapwise.Server.Features.Jobs;
using Lapwise.Server.Http;
using Lapwise.Server.Phones;
using Lapwise.Store;

namespace Lapwise.Server.Features.Sheet;

/// <summary>
/// <c>GET /api/jobs/{id}/papers/{what}.pdf</c>, and without <c>.pdf</c> as a page: tickets, packing, days, care, packet.
/// A ticket's code leads to its slip on the phone; without the door for phones open there is none, for it would lead nowhere.
/// Tickets are kept as they were given out: <c>/papers/given/{coat}-{mark}.pdf</c>, coat from 1, is the paper whose tickets carry that mark.
/// </summary>
internal static class JobPapers
{
    private const string Pdf = ".pdf";

    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/jobs/{id}/papers/given/{coat:int}-{mark}.pdf", (string id, int coat, string mark, GivenPapers given) =>
            given.Find(id, coat - 1, mark) is { } path ? Results.File(path, "application/pdf") : Problems.NotFound())
            .WithName("GivenTickets").WithTags("Sheet").WithSummary("The paper whose tickets of a coat (from 1) carry this mark, as it was given out.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf").ProducesProblem(StatusCodes.Status404NotFound);
        api.MapGet("/jobs/{id}/papers/{what}", Answer).WithName("JobPapers").WithTags("Sheet").WithSummary("A paper of the job: tickets, packing, days, care or packet; with .pdf as a PDF.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf")
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> Answer(
        string id, string what, HttpRequest request, StoredWholeJob stored, JobShelf jobs, RatesShelf rates, ShelfLog log, ProductShelf products, GivenPapers given, PhoneDoor door, TimeProvider time, CancellationToken cancel)
    {
        var isPdf = what.EndsWith(Pdf, StringComparison.Ordinal);
        if (!Enum.TryParse<PaperKind>(isPdf ? what[..^Pdf.Length] : what, ignoreCase: true, out var kind) || !Enum.IsDefined(kind)) return Problems.NotFound();
        var (whole, voice, refusal) = await stored.Of(id, request, cancel);
        if (whole is null) return refusal!;

        var all = JobReading.ReadProducts(new JobDocument(), await products.All(cancel));
        var shelf = ShelfReading.Read(new ShelfDocument { Entries = await log.All(cancel) }, all, voice.Units).Shelf;
        var today = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        IReadOnlyList<string> marks = [.. whole.Work.Coats.Select((work, i) => TicketMark.Of(whole.Supply.Coats[i], work))];
        var basis = new PaperBasis(
            PhoneAddress(door) is { } address ? (coat, batch) => $"{address}/jobs/{Uri.EscapeDataString(id)}/{Phases.Supply.Route}?coat={coat + 1}&batch={Uri.EscapeDataString(batch)}&plan={marks[coat]}" : null,
            shelf.Packs.Count == 0 ? [] : LotPicking.Pick(whole.Supply, shelf, coat => whole.Timeline.CoatedOn(coat) ?? today),
            (await rates.Find(RatesShelf.Own, cancel))?.Document.GivenBy,
            (await jobs.Find(id, cancel))?.Document.Agreement?.Customer);
        if (!isPdf) return Results.Content(Papers.Html(kind, whole, voice, basis), "text/html; charset=utf-8");
        var pdf = Papers.Pdf(kind, whole, voice, basis, time.GetUtcNow());
        if (kind is PaperKind.Tickets or PaperKind.Packet)
            foreach (var (mark, coat) in marks.Select((m, i) => (m, i))) await given.Keep(id, coat, mark, pdf, cancel);
        return Results.File(pdf, "application/pdf", $"lapwise-{id}-{what}");
    }

    private static string? PhoneAddress(PhoneDoor door) =>
        door.IsOpen && LanNames.Now().ForPhones is { } host ? string.Create(CultureInfo.InvariantCulture, $"https://{host}:{door.Port}") : null;
}
