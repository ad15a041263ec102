using Lapwise.Core.Money;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Money;

/// <summary><c>GET /api/quotes/{id}</c>: a quote as it was given out; <c>/differences</c>: what differs from the one it replaced.</summary>
internal static class ReadQuote
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/quotes/{id}", Answer).WithName("ReadQuote").WithTags("Money").WithSummary("A quote as it was given out.")
            .Produces<IssuedQuote>().ProducesProblem(StatusCodes.Status404NotFound);
        api.MapGet("/quotes/{id}/differences", Differences).WithName("QuoteDifferences").WithTags("Money").WithSummary("What differs from the quote it took the place of; nothing for the first.")
            .Produces<IReadOnlyList<QuoteDifference>>().ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> Answer(string id, QuoteFolder quotes, CancellationToken cancel) =>
        await quotes.Find(id, cancel) is { } quote ? Results.Ok(quote) : Problems.NotFound();

    private static async Task<IResult> Differences(string id, QuoteFolder quotes, CancellationToken cancel)
    {
        if (await quotes.Find(id, cancel) is not { } quote) return Problems.NotFound();
        var before = quote.Replaces is { } replaced ? await quotes.Find(replaced, cancel) : null;
        return Results.Ok(before is null ? [] : QuoteIssuing.Differences(before, quote));
    }
}
