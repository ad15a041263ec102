using System.Globalization;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Supply.Buying;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Shelf;

/// <summary>
/// <c>GET /api/purchase?chance=0.95&amp;job=ID&amp;job=ID</c>: the cheapest kits for the jobs named, or for every job.
/// A job with a fault in it is left out and named.
/// </summary>
internal static class PurchaseForJobs
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/purchase", Answer).WithName("PurchaseForJobs").WithTags("Shelf").WithSummary("The cheapest kits for the jobs named, or for every job, at a chance of not running short.")
            .Produces<PurchaseAnswer>().ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(HttpRequest request, JobShelf jobs, ProductShelf products, ShelfLog log, KeepShelf keeps, CancellationToken cancel)
    {
        var voice = Voices.Of(request);
        var chance = Purchasing.UsualChance;
        if (request.Query["chance"].ToString() is { Length: > 0 } asked
            && (!double.TryParse(asked, NumberStyles.Float, CultureInfo.InvariantCulture, out chance) || chance is not (>= Purchasing.LeastChance and <= Purchasing.MostChance)))
        {
            return Problems.Faults(StatusCodes.Status422UnprocessableEntity, [new Fault("chance", "ChanceOutOfRange",
                v => v.Say($"\"{asked}\" is no chance that can be asked for.", $"«{asked}» no es una probabilidad que se pueda pedir."),
                v => v.Say($"Give {v.Number(Purchasing.LeastChance, 3)} to {v.Number(Purchasing.MostChance, 3)}.", $"Dé de {v.Number(Purchasing.LeastChance, 3)} a {v.Number(Purchasing.MostChance, 3)}."))], voice);
        }

        var wanted = request.Query["job"].Select(id => id ?? "").ToHashSet(StringComparer.Ordinal);
        var library = await products.All(cancel);
        var needs = new List<ComingNeed>();
        foreach (var listed in await jobs.List(cancel))
        {
            if (wanted.Count > 0 && !wanted.Contains(listed.Id)) continue;
            if (await jobs.Find(listed.Id, cancel) is not { } stored || JobReading.Read(stored.Document, library).Job is not { } job) continue;
            needs.AddRange(Purchasing.NeedsOf(job, Estimating.Estimate(job, Measuring.Measure(job)), job.Timeline.Start, AgreementReading.IsBoardSigned(stored.Document)));
        }

        var all = JobReading.ReadProducts(new JobDocument(), library);
        var shelf = ShelfReading.Read(new ShelfDocument { Entries = await log.All(cancel), Keep = (await keeps.Find(RatesShelf.Own, cancel))?.Document.Keep }, all, voice.Units).Shelf;
        return Results.Ok(MoneyAnswering.Purchase(Purchasing.Purchase(needs, shelf, all, chance), voice));
    }
}
