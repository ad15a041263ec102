using Lapwise.Core.Answers;
using Lapwise.Documents;
using Lapwise.Server.Http;

namespace Lapwise.Server.Features.Shelf;

/// <summary>
/// <c>GET /api/purchase?chance=0.95&amp;job=ID&amp;job=ID</c>: the cheapest kits for the jobs named, or for every coming job;
/// <c>/api/purchase/list.pdf</c> and <c>/list</c>: the same to take to the shop, on paper or as a page that prints.
/// </summary>
internal static class PurchaseForJobs
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/purchase", Answer).WithName("PurchaseForJobs").WithTags("Shelf").WithSummary("The cheapest kits for the jobs named, or for every coming job, at a chance of not running short.")
            .Produces<PurchaseAnswer>().ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/purchase/list.pdf", (HttpRequest request, ComingPurchase coming, TimeProvider time, CancellationToken cancel) => List(isPdf: true, request, coming, time, cancel))
            .WithName("ShoppingListPdf").WithTags("Shelf").WithSummary("What to buy for the jobs named, or for every coming job, as a PDF.")
            .Produces(StatusCodes.Status200OK, contentType: "application/pdf").ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/purchase/list", (HttpRequest request, ComingPurchase coming, TimeProvider time, CancellationToken cancel) => List(isPdf: false, request, coming, time, cancel))
            .WithName("ShoppingList").WithTags("Shelf").WithSummary("What to buy for the jobs named, or for every coming job, as a page that prints.")
            .Produces(StatusCodes.Status200OK, contentType: "text/html").ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> Answer(HttpRequest request, ComingPurchase coming, CancellationToken cancel)
    {
        var voice = Voices.Of(request);
        var (found, refusal) = await coming.Of(request, voice, cancel);
        return found is null ? refusal! : Results.Ok(MoneyAnswering.Purchase(found.Purchase, voice, found.Incomplete, found.Notes));
    }

    private static async Task<IResult> List(bool isPdf, HttpRequest request, ComingPurchase coming, TimeProvider time, CancellationToken cancel)
    {
        var voice = Voices.Of(request);
        var (found, refusal) = await coming.Of(request, voice, cancel);
        if (found is null) return refusal!;
        return isPdf
            ? Results.File(ShoppingList.Pdf(found, voice, time.GetUtcNow()), "application/pdf", $"lapwise-shopping-{found.On:yyyy-MM-dd}.pdf")
            : Results.Content(ShoppingList.Html(found, voice), "text/html; charset=utf-8");
    }
}
