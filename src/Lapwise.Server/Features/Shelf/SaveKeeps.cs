using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Shelf;

/// <summary><c>PUT /api/shelf/keep</c>: what the shop never wants to run out of, as entered.</summary>
internal static class SaveKeeps
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPut("/shelf/keep", Answer).WithName("SaveKeeps").WithTags("Shelf")
            .WithSummary("What the shop never wants to run out of. If-Match names the version it was made from; If-None-Match: * the first.")
            .Accepts<ShelfDocument>("application/json").Produces<ShelfDocument>()
            .ProducesProblem(StatusCodes.Status412PreconditionFailed).ProducesProblem(StatusCodes.Status428PreconditionRequired);

    private static async Task<IResult> Answer(HttpContext http, KeepShelf keeps, CancellationToken cancel)
    {
        var (document, refusal) = await Bodies.Read(http.Request, JobJson.Default.ShelfDocument, cancel);
        if (document is null) return refusal!;
        var kept = document with { Entries = [] };
        if (Versions.WantsNone(http.Request)) return SaveAnswers.Of(http, await keeps.Add(RatesShelf.Own, kept, cancel), "/api/shelf", created: true);
        return Versions.Wanted(http.Request) is { } version ? SaveAnswers.Of(http, await keeps.Replace(RatesShelf.Own, kept, version, cancel), "/api/shelf", created: false) : Problems.VersionMissing();
    }
}
