using Lapwise.Core.Answers;
using Lapwise.Server.Features.Jobs;

namespace Lapwise.Server.Features.Measure;

/// <summary><c>GET /api/jobs/{id}/takeoff</c>: what there is to coat, top by top.</summary>
internal static class TakeOffOfJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/takeoff", Answer).WithName("TakeOffOfJob").WithTags("Measure").WithSummary("What there is to coat, top by top.")
            .Produces<TakeOffAnswer>()
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholeJob stored, CancellationToken cancel)
    {
        var (whole, _, refusal) = await stored.Of(id, request, cancel);
        return whole is null ? refusal! : Results.Ok(Answering.TakeOff(whole.Measured));
    }
}
