using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Supply.Buying;
using Lapwise.Documents;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Shelf;

/// <summary>One order for the jobs that are kept: those named by <c>job=ID</c>, or every one. What of a job cannot be read is left out, and the job named.</summary>
internal sealed class ComingPurchase(JobShelf jobs, ProductShelf products, ShelfLog log, KeepShelf keeps, RatesShelf rates, SettledShelf settled, TimeProvider time)
{
    /// <summary>The order, at the chance asked for; else the refusal to answer with.</summary>
    public async Task<(ShoppingBasis? Found, IResult? Refusal)> Of(HttpRequest request, Voice voice, CancellationToken cancel)
    {
        var chance = Purchasing.UsualChance;
        if (request.Query["chance"].ToString() is { Length: > 0 } asked
            && (!double.TryParse(asked, NumberStyles.Float, CultureInfo.InvariantCulture, out chance) || chance is not (>= Purchasing.LeastChance and <= Purchasing.MostChance)))
        {
            return (null, Problems.Faults(StatusCodes.Status422UnprocessableEntity, [new Fault("chance", "ChanceOutOfRange",
                v => v.Say($"\"{asked}\" is no chance that can be asked for.", $"«{asked}» no es una probabilidad que se pueda pedir."),
                v => v.Say($"Give {v.Number(Purchasing.LeastChance, 3)} to {v.Number(Purchasing.MostChance, 3)}.", $"Dé de {v.Number(Purchasing.LeastChance, 3)} a {v.Number(Purchasing.MostChance, 3)}."))], voice));
        }

        var wanted = request.Query["job"].Select(id => id ?? "").ToHashSet(StringComparer.Ordinal);
        var library = await products.All(cancel);
        var days = ((await settled.Find(RatesShelf.Own, cancel))?.Document.Visits ?? []).ToLookup(v => v.Job, StringComparer.Ordinal);
        var (needs, ofJobs, incomplete) = (new List<ComingNeed>(), new List<ProductDocument>(), new List<string>());
        foreach (var listed in await jobs.List(cancel))
        {
            if (wanted.Count > 0 && !wanted.Contains(listed.Id)) continue;
            if (await jobs.Find(listed.Id, cancel) is not { } stored) continue;
            var read = JobReading.Read(stored.Document, library);
            if (read.Faults.Count > 0) incomplete.Add(stored.Document.Name);
            if (read.Job is not { } job) continue;
            ofJobs.AddRange(stored.Document.Products ?? []);
            needs.AddRange(Purchasing.NeedsOf(job, Estimating.Estimate(job, Measuring.Measure(job)), coat => Settling.CoatedOn(days[listed.Id], coat) ?? job.Timeline.Start, AgreementReading.Board(stored.Document)));
        }

        var all = JobReading.ReadProducts(new JobDocument(), [.. library, .. ofJobs]);
        var shelf = ShelfReading.Read(new ShelfDocument { Entries = await log.All(cancel), Keep = (await keeps.Find(RatesShelf.Own, cancel))?.Document.Keep }, all, voice.Units).Shelf;
        var on = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        var charged = (await rates.Find(RatesShelf.Own, cancel))?.Document ?? new RatesDocument();
        var own = Currency.TryOf(charged.Currency, out var currency) ? currency : Currency.UsDollar;
        return (new ShoppingBasis(Purchasing.Purchase(needs, shelf, all, own, chance), LowStock.Levels(shelf, needs, on), all, on) { Incomplete = incomplete }, null);
    }
}
