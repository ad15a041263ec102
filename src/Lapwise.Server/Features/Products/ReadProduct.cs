using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Products;

/// <summary><c>GET /api/products/{id}</c>: one coating as its data sheet gives it; its version is the ETag.</summary>
internal static class ReadProduct
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/products/{id}", Answer).WithName("ReadProduct").WithTags("Products").WithSummary("One coating as its data sheet gives it; its version is the ETag.")
            .Produces<ProductDocument>()
            .ProducesProblem(StatusCodes.Status404NotFound);

    private static async Task<IResult> Answer(string id, HttpContext http, ProductShelf products, CancellationToken cancel)
    {
        if (await products.Find(id, cancel) is not { } stored) return Problems.NotFound();
        Versions.Say(http, stored.Version);
        return Results.Ok(stored.Document);
    }
}
