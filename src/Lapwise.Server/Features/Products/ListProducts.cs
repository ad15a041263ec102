using Lapwise.Core.Jobs;
using Lapwise.Store;

namespace Lapwise.Server.Features.Products;

/// <summary><c>GET /api/products</c>: every coating of the shop, whole, by id.</summary>
internal static class ListProducts
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/products", (ProductShelf products, CancellationToken cancel) => products.All(cancel))
            .WithName("ListProducts").WithTags("Products").WithSummary("Every coating of the shop, whole, by id.")
            .Produces<IReadOnlyList<ProductDocument>>();
}
