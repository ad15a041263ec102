using System.Text;
using Lapwise.Core.Explain;
using Lapwise.Documents;
using Lapwise.Server.Features.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Timeline;

/// <summary>
/// <c>GET /api/jobs/{id}/days.ics</c>: the job's visits and dates of use as iCalendar; the stored version is the events' sequence.
/// Where days are settled for the job, its visits are those of the feed, to the sequence: whoever has both sees one set of days.
/// </summary>
internal static class DaysFile
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/days.ics", Answer).WithName("DaysFile").WithTags("Timeline").WithSummary("The days of a job as iCalendar.")
            .Produces(StatusCodes.Status200OK, contentType: "text/calendar")
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholeJob stored, JobShelf jobs, SettledShelf settled, TimeProvider time, CancellationToken cancel)
    {
        var (whole, voice, refusal) = await stored.Of(id, request, cancel);
        if (whole is null) return refusal!;
        if (await jobs.Find(id, cancel) is not { } found) return Problems.NotFound();
        if (!DaysCalendar.KnowsZone(whole)) return Problems.Faults(StatusCodes.Status422UnprocessableEntity, [ZoneUnknown(whole.Job.Timeline.Zone!)], voice);
        var job = new CalendarJob(id, (int)Math.Min(found.Version, int.MaxValue), whole);
        return (await Settled(job, settled, voice, cancel) ?? DaysCalendar.Write([job], voice, time.GetUtcNow())) is { } calendar
            ? Results.File(Encoding.UTF8.GetBytes(calendar), "text/calendar; charset=utf-8", $"lapwise-{id}.ics")
            : Problems.Faults(StatusCodes.Status422UnprocessableEntity, [NoFirstDay], voice);
    }

    /// <summary>Null: no days are settled for the job. Where they no longer fit it, no date of use can be told.</summary>
    private static async Task<string?> Settled(CalendarJob job, SettledShelf settled, Voice voice, CancellationToken cancel)
    {
        if (await settled.Find(RatesShelf.Own, cancel) is not { } stored || stored.Document.Visits.Where(v => v.Job == job.Id).ToList() is not { Count: > 0 } visits) return null;
        // Dates of use move with the job and with its days.
        var ofUse = job.Whole.Timeline.IsSettled ? job with { Sequence = job.Sequence + stored.Document.Times } : null;
        return DaysCalendar.Write(stored.Document with { Visits = visits }, voice, stored.ChangedAt, ofUse);
    }

    private static Fault ZoneUnknown(string zone) => new("timeline.zone", "ZoneUnknown",
        v => v.Say($"{zone} is no time zone this server knows.", $"{zone} no es una zona horaria que conozca este servidor."),
        v => v.Say("Write it as America/Chicago or Europe/Madrid.", "Escríbala como America/Chicago o Europe/Madrid."));

    private static readonly Fault NoFirstDay = new("timeline.start", "NoFirstDay",
        v => v.Say("A calendar needs dates, and no first day is set.", "Un calendario necesita fechas, y no hay primer día."),
        v => v.Say("Set the first day on site.", "Fije el primer día en la casa."));
}
