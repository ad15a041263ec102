using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Supply.Buying;
using Lapwise.Documents;
using Lapwise.Server.Features.Jobs;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Shelf;

/// <summary>
/// One order for the jobs that are coming: every one that is not left out of the days, or those named by <c>job=ID</c>. What of a
/// job cannot be read is left out, and the job named.
/// </summary>
internal sealed class ComingPurchase(JobShelf jobs, WorkedJobs worked, DaysShelf planned, ShelfLog log, KeepShelf keeps, RatesShelf rates, SettledShelf settled, TimeProvider time)
{
    /// <summary>Of more than this the order of work is not looked at: a page would not wait for it.</summary>
    public const int MostPlanned = 60;

    /// <summary>The order, at the chance asked for; else the refusal to answer with.</summary>
    public async Task<(ShoppingBasis? Found, IResult? Refusal)> Of(HttpRequest request, Voice voice, CancellationToken cancel)
    {
        var (chance, refusal) = Chance(request, voice);
        if (refusal is not null) return (null, refusal);
        var (library, mark) = await worked.Library(cancel);
        var wanted = request.Query["job"].Select(id => id ?? "").ToHashSet(StringComparer.Ordinal);
        var asked = await Asked(wanted, cancel);
        var days = ((await settled.Find(RatesShelf.Own, cancel))?.Document.Visits ?? []).ToLookup(v => v.Job, StringComparer.Ordinal);
        var (needs, ofJobs, incomplete, outOfDate) = (new List<ComingNeed>(), new List<ProductDocument>(), new List<string>(), new List<string>());
        foreach (var listed in asked)
        {
            if (await jobs.Find(listed.Id, cancel) is not { } stored) continue;
            var read = JobReading.Read(stored.Document, library);
            if (read.Faults.Count > 0) incomplete.Add(stored.Document.Name);
            if (read.Job is not { } job) continue;
            ofJobs.AddRange(stored.Document.Products ?? []);
            var whole = asked.Count > MostPlanned ? null : (await worked.Of(listed, library, mark, cancel)).Whole?.On([.. days[listed.Id]]);
            if (whole?.Timeline.OutOfDate is not null) outOfDate.Add(job.Name);
            needs.AddRange(Purchasing.NeedsOf(job, whole?.Materials ?? Estimating.Estimate(job, Measuring.Measure(job)), whole?.Supply,
                coat => Settling.CoatedOn(days[listed.Id], coat) ?? whole?.Timeline.CoatedOn(coat) ?? job.Timeline.Start, AgreementReading.Board(stored.Document)));
        }

        var on = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        var isPast = needs.ToLookup(n => wanted.Count == 0 && n.On < on);
        IReadOnlyList<ComingNeed> coming = [.. isPast[false]];
        var all = JobReading.ReadProducts(new JobDocument(), [.. library, .. ofJobs]);
        var shelf = ShelfReading.Read(new ShelfDocument { Entries = await log.All(cancel), Keep = (await keeps.Find(RatesShelf.Own, cancel))?.Document.Keep }, all, voice.Units).Shelf;
        var charged = (await rates.Find(RatesShelf.Own, cancel))?.Document ?? new RatesDocument();
        var own = Currency.TryOf(charged.Currency, out var currency) ? currency : Currency.UsDollar;
        return (new ShoppingBasis(Purchasing.Purchase(coming, shelf, all, own, chance), LowStock.Levels(shelf, coming, on), all, on)
        {
            Incomplete = incomplete,
            Notes = [.. Notes(asked.Count, outOfDate, [.. isPast[true].Select(n => n.Job).Distinct(StringComparer.Ordinal)])],
        }, null);
    }

    private static (double Chance, IResult? Refusal) Chance(HttpRequest request, Voice voice)
    {
        var asked = request.Query["chance"].ToString();
        if (asked.Length == 0) return (Purchasing.UsualChance, null);
        return double.TryParse(asked, NumberStyles.Float, CultureInfo.InvariantCulture, out var chance) && chance is >= Purchasing.LeastChance and <= Purchasing.MostChance
            ? (chance, null)
            : (0, Problems.Faults(StatusCodes.Status422UnprocessableEntity, [new Fault("chance", "ChanceOutOfRange",
                v => v.Say($"\"{asked}\" is no chance that can be asked for.", $"«{asked}» no es una probabilidad que se pueda pedir."),
                v => v.Say($"Give {v.Number(Purchasing.LeastChance, 3)} to {v.Number(Purchasing.MostChance, 3)}.", $"Dé de {v.Number(Purchasing.LeastChance, 3)} a {v.Number(Purchasing.MostChance, 3)}."))], voice));
    }

    /// <summary>What is done or not ordered yet is left out of the days.</summary>
    private async Task<IReadOnlyList<Listed>> Asked(HashSet<string> wanted, CancellationToken cancel)
    {
        var leftOut = ((await planned.Find(RatesShelf.Own, cancel))?.Document.Jobs ?? []).Where(j => j.LeaveOut == true).Select(j => j.Job).ToHashSet(StringComparer.Ordinal);
        return [.. (await jobs.List(cancel)).Where(j => wanted.Count > 0 ? wanted.Contains(j.Id) : !leftOut.Contains(j.Id))];
    }

    private static IEnumerable<Reason> Notes(int asked, IReadOnlyList<string> outOfDate, IReadOnlyList<string> past)
    {
        if (asked > MostPlanned) yield return BuyingReasons.NotPlanned(MostPlanned);
        if (outOfDate.Count > 0) yield return BuyingReasons.DaysOutOfDate(outOfDate);
        if (past.Count > 0) yield return BuyingReasons.DayIsPast(past);
    }
}
