using Lapwise.Core.Answers;
using Lapwise.Server.Http;

namespace Lapwise.Server.Features.Days;

/// <summary><c>/api/days/search</c>: begins to look for the days of all open jobs, tells how far it is, and stops it.</summary>
internal static class SearchDays
{
    public static void Map(IEndpointRouteBuilder api)
    {
        var search = api.MapGroup("/days/search").WithTags("Days");
        search.MapPost("", Begin).WithName("BeginDays").WithSummary("Begins to look for the days of all open jobs; with the same input it goes on with the one that is there. Settled visits move only where they must; with ?afresh they give way to an earlier last end. ?longer looks on where the same input ended with something left open.").Produces<DaysAnswer>();
        search.MapGet("", Look).WithName("LookAtDays").WithSummary("How far the search is, with the best days so far.").Produces<DaysAnswer>();
        search.MapDelete("", Stop).WithName("StopDays").WithSummary("Stops the search; the best days so far stand.").Produces<DaysAnswer>();
    }

    private static async Task<IResult> Begin(HttpRequest request, DaysDesk desk, CancellationToken cancel)
    {
        var voice = Voices.Of(request);
        return Results.Ok((await desk.Begin(voice, request.Query.ContainsKey("afresh"), request.Query.ContainsKey("longer"), cancel)).Say(voice, isOld: false));
    }

    private static async Task<IResult> Look(HttpRequest request, DaysDesk desk, DaysInputs inputs, CancellationToken cancel) =>
        Results.Ok(desk.Now is { } search ? search.Say(Voices.Of(request), (await inputs.Now(search.Input.IsAfresh, cancel)).Mark != search.Input.Mark) : None);

    private static async Task<IResult> Stop(HttpRequest request, DaysDesk desk, CancellationToken cancel)
    {
        if (desk.Now is not { } search) return Results.Ok(None);
        search.Stop();
        // A stop is seen within a moment; an answer that came just before it stays.
        await Task.WhenAny(search.Ended, Task.Delay(TimeSpan.FromSeconds(3), cancel));
        return Results.Ok(search.Say(Voices.Of(request), isOld: false));
    }

    private static readonly DaysAnswer None = new(DaysState.None, "", IsOld: false, 0, 0, 0, 0, null, null, null, IsProven: false, IsRepeatable: false, [], [], [], []);
}
