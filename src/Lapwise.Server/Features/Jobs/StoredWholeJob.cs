using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Jobs;

/// <summary>A stored job taken through every phase, on the days settled for it; a job with a fault in it is refused with its faults.</summary>
internal sealed class StoredWholeJob(JobShelf jobs, ProductShelf products, SettledShelf settled)
{
    /// <returns>The whole job with the voice to answer in, or the refusal that answers the request.</returns>
    public async Task<(WholeJob? Whole, Voice Voice, IResult? Refusal)> Of(string id, HttpRequest request, CancellationToken cancel)
    {
        if (await jobs.Find(id, cancel) is not { } stored) return (null, Voice.Default, Problems.NotFound());
        var voice = Voices.Of(request, stored.Document.Units);
        var (whole, faults) = WholeJob.From(stored.Document, await products.All(cancel));
        return faults.Count > 0
            ? (null, voice, Problems.Faults(StatusCodes.Status422UnprocessableEntity, faults, voice))
            : (whole!.On(await settled.OfJob(id, cancel)), voice, null);
    }
}
