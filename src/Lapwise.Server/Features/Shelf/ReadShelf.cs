using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Shelf;

/// <summary><c>GET /api/shelf</c>: the log of the shelf, oldest first, and what is to be kept.</summary>
internal static class ReadShelf
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/shelf", Answer).WithName("ReadShelf").WithTags("Shelf").WithSummary("The log of the shelf, oldest first, and what is to be kept.").Produces<ShelfDocument>();

    private static async Task<IResult> Answer(HttpContext http, ShelfLog log, KeepShelf keeps, CancellationToken cancel)
    {
        var kept = await keeps.Find(RatesShelf.Own, cancel);
        if (kept is not null) Versions.Say(http, kept.Version);
        return Results.Ok(new ShelfDocument { Entries = await log.All(cancel), Keep = kept?.Document.Keep });
    }
}
