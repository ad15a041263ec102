using Lapwise.Core.Answers;
using Lapwise.Server.Features.Jobs;

namespace Lapwise.Server.Features.Work;

/// <summary><c>GET /api/jobs/{id}/plan</c>: the order of work of every coat.</summary>
internal static class PlanOfJob
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/jobs/{id}/plan", Answer).WithName("PlanOfJob").WithTags("Work").WithSummary("The order of work of every coat.")
            .Produces<PlanAnswer>()
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholeJob stored, CancellationToken cancel)
    {
        var (whole, voice, refusal) = await stored.Of(id, request, cancel);
        return whole is null ? refusal! : Results.Ok(Answering.Plan(whole, voice));
    }
}
