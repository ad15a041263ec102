using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.OnSite;

/// <summary>
/// <c>POST /api/jobs/{id}/runs/{run}/marks?after=N</c>: adds marks and answers those that came in after N, so that one exchange
/// brings a device level. Marks sent twice are there once, so an answer lost on the way is asked for again.
/// </summary>
internal static class AppendMarks
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/jobs/{id}/runs/{run}/marks", Answer).WithName("AppendMarks").WithTags("OnSite")
            .WithSummary("Adds marks to a run and answers those after a place. Twice is once.")
            .Accepts<IReadOnlyList<MarkDocument>>("application/json")
            .Produces<MarksAnswer>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge);

    private static async Task<IResult> Answer(string id, string run, HttpContext http, MarkLog log, TimeProvider time, CancellationToken cancel, long after = 0)
    {
        if (!DocumentId.IsUsable(id)) return Problems.BadId(id);
        if (!DocumentId.IsUsable(run)) return Problems.BadId(run);
        var (marks, refusal) = await Bodies.Read(http.Request, RunJson.Default.IReadOnlyListMarkDocument, cancel);
        if (marks is null) return refusal!;
        var unusable = marks.Select((m, i) => (m, i)).Where(x => x.m is null || !DocumentId.IsUsable(x.m.Id) || !DocumentId.IsUsable(x.m.Device)).Select(x => Unusable(x.i)).Take(20).ToList();
        if (unusable.Count > 0) return Problems.Faults(StatusCodes.Status400BadRequest, unusable, Voices.Of(http.Request));

        await log.Append(id, run, marks, cancel);
        var (newer, upto) = await log.After(id, run, after, cancel);
        return Results.Ok(new MarksAnswer(time.GetUtcNow().ToUnixTimeMilliseconds(), upto, newer));
    }

    private static Fault Unusable(int mark) => new($"[{mark}].id", "MarkWithoutId",
        v => v.Say("A mark needs an id and a device of up to 64 letters, digits, - and _.", "Una marca necesita un identificador y un equipo de hasta 64 letras, cifras, - y _."),
        v => v.Say("Send it as the device made it.", "Envíela como la hizo el equipo."));
}
