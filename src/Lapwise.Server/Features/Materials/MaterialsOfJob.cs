using Lapwise.Core.Answers;
using Lapwise.Server.Features.Jobs;

namespace Lapwise.Server.Features.Materials;

/// <summary><c>GET /api/jobs/{id}/materials</c>: how much of each product, and from which kits.</summary>
internal static class MaterialsOfJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/materials", Answer).WithName("MaterialsOfJob").WithTags("Materials").WithSummary("How much of each product, and from which kits.")
            .Produces<MaterialsAnswer>()
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholeJob stored, CancellationToken cancel)
    {
        var (whole, _, refusal) = await stored.Of(id, request, cancel);
        return whole is null ? refusal! : Results.Ok(Answering.Materials(whole));
    }
}
