using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Products;

/// <summary>
/// <c>DELETE /api/products/{id}</c>: takes a coating off the list at the version named by <c>If-Match</c>; the answer holds it. Jobs
/// and the shelf that name it keep the name and say that it is missing.
/// </summary>
internal static class RemoveProduct
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapDelete("/products/{id}", Answer).WithName("RemoveProduct").WithTags("Products").WithSummary("Takes a coating off the list at the version named by If-Match; the answer holds it.")
            .Produces<ProductDocument>()
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status412PreconditionFailed)
            .ProducesProblem(StatusCodes.Status428PreconditionRequired);

    private static async Task<IResult> Answer(string id, HttpContext http, ProductShelf products, CancellationToken cancel) =>
        Versions.Wanted(http.Request) is { } version
            ? SaveAnswers.Of(http, await products.Remove(id, version, cancel), "/api/products", created: false)
            : Problems.VersionMissing();
}
