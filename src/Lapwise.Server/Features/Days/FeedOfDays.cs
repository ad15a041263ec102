using System.Globalization;
using System.Text;
using Lapwise.Core.Answers;
using Lapwise.Core.Jobs;
using Lapwise.Documents;
using Lapwise.Server.Http;
using Lapwise.Server.Phones;
using Lapwise.Store;

namespace Lapwise.Server.Features.Days;

/// <summary>
/// <c>/api/days/feed</c>: makes, renews and takes back the private address of the calendar. <c>/api/feed/KEY.ics</c>: the settled
/// days to whoever has the key, paired or not, and nothing else.
/// </summary>
internal static class FeedOfDays
{
    private const string Folder = "/api/feed/";
    private const string Ending = ".ics";

    public static void Map(IEndpointRouteBuilder api)
    {
        var feed = api.MapGroup("/days/feed").WithTags("Days");
        feed.MapGet("", (HttpRequest request, FeedKey key, PhoneDoor door) => Address(request, key, door)).WithName("ReadFeed").WithSummary("The private address of the calendar.").Produces<FeedAnswer>();
        feed.MapPost("", Renew).WithName("RenewFeed").WithSummary("A new private address; the one before leads nowhere from now on.").Produces<FeedAnswer>();
        feed.MapDelete("", TakeBack).WithName("TakeBackFeed").WithSummary("Takes the address back.").Produces<FeedAnswer>();
        api.MapGet("/feed/{file}", Calendar).WithName("Feed").WithTags("Days").WithSummary("The settled days as iCalendar, to whoever has the key.")
            .Produces(StatusCodes.Status200OK, contentType: "text/calendar").ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static readonly System.Buffers.SearchValues<char> KeyLetters = System.Buffers.SearchValues.Create("0123456789abcdef");

    /// <summary>Whether a request asks for a calendar by its key and for nothing else.</summary>
    public static bool IsAsked(HttpRequest request) =>
        (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)) && request.Path.Value is { } path
        && path.StartsWith(Folder, StringComparison.Ordinal) && path.EndsWith(Ending, StringComparison.Ordinal)
        && path.AsSpan(Folder.Length, Math.Max(0, path.Length - Folder.Length - Ending.Length)) is { Length: > 0 } key && !key.ContainsAnyExcept(KeyLetters);

    private static async Task<IResult> Calendar(string file, HttpContext http, FeedKey key, SettledShelf settled, TimeProvider time, CancellationToken cancel)
    {
        if (!file.EndsWith(Ending, StringComparison.Ordinal) || !key.Is(file[..^Ending.Length])) return Problems.NotFound();
        var stored = await settled.Find(RatesShelf.Own, cancel);
        http.Response.Headers.CacheControl = "private, no-cache";
        return Results.File(Encoding.UTF8.GetBytes(DaysCalendar.Write(stored?.Document ?? new SettledDaysDocument(), Voices.Of(http.Request), stored?.ChangedAt ?? time.GetUtcNow())), "text/calendar; charset=utf-8");
    }

    private static IResult Renew(HttpRequest request, FeedKey key, PhoneDoor door)
    {
        key.Renew();
        return Address(request, key, door);
    }

    private static IResult TakeBack(HttpRequest request, FeedKey key, PhoneDoor door)
    {
        key.TakeBack();
        return Address(request, key, door);
    }

    private static IResult Address(HttpRequest request, FeedKey key, PhoneDoor door)
    {
        if (key.Now is not { } now) return Results.Ok(new FeedAnswer(null, null));
        var voice = Voices.Of(request);
        var path = $"{Folder}{now}{Ending}?language={voice.Say("en", "es")}&units={(voice.Units == Core.Explain.UnitSystem.Us ? "us" : "metric")}";
        var host = door.IsOpen ? LanNames.Now().ForPhones?.ToString() : null;
        // By the door a phone came in; the computer itself by the address it asked with.
        return Results.Ok(new FeedAnswer($"{request.Scheme}://{request.Host}{path}", host is null ? null : string.Create(CultureInfo.InvariantCulture, $"https://{host}:{door.Port}{path}")));
    }
}
