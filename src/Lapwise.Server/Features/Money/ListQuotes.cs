using Lapwise.Core.Money;
using Lapwise.Store;

namespace Lapwise.Server.Features.Money;

/// <summary><c>GET /api/jobs/{id}/quotes</c>: the quotes given out for a job, newest first.</summary>
internal static class ListQuotes
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/quotes", (string id, QuoteFolder quotes, CancellationToken cancel) => quotes.OfJob(id, cancel))
            .WithName("ListQuotes").WithTags("Money").WithSummary("The quotes given out for a job, newest first.").Produces<IReadOnlyList<IssuedQuote>>();
}
