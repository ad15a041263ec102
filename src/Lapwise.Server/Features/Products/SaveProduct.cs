using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Products;

/// <summary><c>PUT /api/products/{id}</c>: keeps a coating; <c>If-Match</c> names the version it was made from, <c>If-None-Match: *</c> makes a new one.</summary>
internal static class SaveProduct
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPut("/products/{id}", Answer).WithName("SaveProduct").WithTags("Products")
            .WithSummary("Keeps a coating. If-Match names the version it was made from; If-None-Match: * makes a new one.")
            .Accepts<ProductDocument>("application/json")
            .Produces<ProductDocument>().Produces<ProductDocument>(StatusCodes.Status201Created)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status412PreconditionFailed)
            .ProducesProblem(StatusCodes.Status428PreconditionRequired);

    private static async Task<IResult> Answer(string id, HttpContext http, ProductShelf products, CancellationToken cancel)
    {
        if (!DocumentId.IsUsable(id)) return Problems.BadId(id);
        var (document, refusal) = await Bodies.Read(http.Request, JobJson.Default.ProductDocument, cancel);
        if (document is null) return refusal!;
        if (document.Id != id) return Problems.Faults(StatusCodes.Status400BadRequest, [OtherId(document.Id, id)], Voices.Of(http.Request));
        if (Versions.WantsNone(http.Request)) return SaveAnswers.Of(http, await products.Add(id, document, cancel), "/api/products", created: true);
        return Versions.Wanted(http.Request) is { } version
            ? SaveAnswers.Of(http, await products.Replace(id, document, version, cancel), "/api/products", created: false)
            : Problems.VersionMissing();
    }

    private static Fault OtherId(string inside, string address) => new("id", "OtherId",
        v => v.Say($"The product calls itself \"{inside}\", the address says \"{address}\".", $"El producto se llama \"{inside}\" y la dirección dice \"{address}\"."),
        v => v.Say("Make them the same.", "Use el mismo en ambos."));
}
