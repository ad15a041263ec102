using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Money;

/// <summary>A stored job through every phase and priced by the shop's rates, with the documents it was made from.</summary>
internal sealed record PricedDocuments(JobDocument Job, IReadOnlyList<ProductDocument> Library, RatesDocument Rates, IReadOnlyList<VisitDocument> Settled, WholePrice Priced, Voice Voice);

internal sealed class StoredWholePrice(JobShelf jobs, ProductShelf products, RatesShelf rates, SettledShelf settled)
{
    /// <returns>The priced job, or the refusal that answers the request.</returns>
    public async Task<(PricedDocuments? Priced, IResult? Refusal)> Of(string id, HttpRequest request, CancellationToken cancel)
    {
        if (await jobs.Find(id, cancel) is not { } stored) return (null, Problems.NotFound());
        var voice = Voices.Of(request, stored.Document.Units);
        var library = await products.All(cancel);
        var charged = (await rates.Find(RatesShelf.Own, cancel))?.Document ?? new RatesDocument();
        var (whole, faults) = WholeJob.From(stored.Document, library);
        if (whole is null || faults.Count > 0) return (null, Problems.Faults(StatusCodes.Status422UnprocessableEntity, faults, voice));
        var days = await settled.OfJob(id, cancel);
        var (priced, against) = WholePrice.Of(stored.Document, whole.On(days), library, charged, WholePrice.ChancesOf(whole));
        return priced is null
            ? (null, Problems.Faults(StatusCodes.Status422UnprocessableEntity, against, voice))
            : (new PricedDocuments(stored.Document, library, charged, days, priced, voice), null);
    }
}
