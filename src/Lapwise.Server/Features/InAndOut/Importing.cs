using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Shop;
using Lapwise.Files.Csv;
using Lapwise.Server.Http;
using Lapwise.Store;
using Lapwise.Wire;
using Microsoft.AspNetCore.Http.Features;

namespace Lapwise.Server.Features.InAndOut;

/// <summary>
/// <c>POST /api/import</c> (JSON), <c>/api/import/prices</c> and <c>/api/import/shelf</c> (CSV): tell what they would change. With
/// <c>?plan=</c> and the mark of what was told, they change that and nothing else; where the shop has changed in between, they
/// tell anew. Nothing is ever taken out.
/// </summary>
internal static class Importing
{
    private const long MostBytes = 1L << 30;
    private const int MostTold = 500;

    public static void Map(IEndpointRouteBuilder api)
    {
        var import = api.MapGroup("/import").WithTags("In and out");
        import.MapPost("", Everything).WithName("Import").WithSummary("What taking in a shop's document would change; with ?plan= it is changed.").Produces<TakingLine>().ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        import.MapPost("/prices", Prices).WithName("ImportPrices").WithSummary("What taking in a table of prices would change; with ?plan= it is changed.").Produces<TakingLine>().ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        import.MapPost("/shelf", Shelf).WithName("ImportShelf").WithSummary("What taking in a table of the shelf would change; with ?plan= it is changed.").Produces<TakingLine>().ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> Everything(HttpContext http, TakingInShop shop, CancellationToken cancel)
    {
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size) size.MaxRequestBodySize = MostBytes;
        var (document, refusal) = await Bodies.Read(http.Request, ShopJson.Default.ShopDocument, cancel);
        if (document is null) return refusal!;
        if (document.Lapwise is < 1 or > ShopDocument.CurrentVersion)
        {
            return Problems.Faults(StatusCodes.Status400BadRequest, [new Fault("lapwise", "VersionNotKnown",
                v => v.Say($"Version {document.Lapwise} of the shop's document is not known.", $"No se conoce la versión {document.Lapwise} del documento del taller."),
                v => v.Say("Update this program.", "Actualice este programa."))], Voices.Of(http.Request));
        }

        return await shop.Answer(http.Request, document, [], MostTold, cancel);
    }

    private static async Task<IResult> Prices(HttpRequest request, TakingInShop shop, ProductShelf products, CancellationToken cancel)
    {
        var (changed, faults) = PricesCsv.Read(await Text(request, cancel), await products.All(cancel));
        return await shop.Answer(request, new ShopDocument { Products = changed }, faults, MostTold, cancel);
    }

    private static async Task<IResult> Shelf(HttpRequest request, TakingInShop shop, ShelfLog log, ProductShelf products, TimeProvider time, CancellationToken cancel)
    {
        var on = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        var (entries, faults) = ShelfCsv.Read(await Text(request, cancel), await Exporting.Standing(log, products, cancel), on);
        return await shop.Answer(request, new ShopDocument { Shelf = new ShelfDocument { Entries = entries } }, faults, MostTold, cancel);
    }

    private static async Task<string> Text(HttpRequest request, CancellationToken cancel)
    {
        using var reader = new StreamReader(request.Body, Encoding.UTF8);
        return await reader.ReadToEndAsync(cancel);
    }
}

/// <summary>Tells what taking in would change, and changes it when that has been seen.</summary>
internal sealed class TakingInShop(JobShelf jobs, ProductShelf products, ShelfLog log, KeepShelf keeps, RatesShelf rates, DaysShelf days, SettledShelf settled, QuoteFolder quotes)
{
    public async Task<IResult> Answer(HttpRequest request, ShopDocument other, IReadOnlyList<Fault> faults, int mostTold, CancellationToken cancel)
    {
        var voice = Voices.Of(request);
        var kept = new List<KeptJobDocument>();
        await foreach (var job in jobs.EachStored(cancel)) kept.Add(new KeptJobDocument { Id = job.Id, Job = job.Document });
        var own = new ShopDocument
        {
            Jobs = kept,
            Products = await products.All(cancel),
            Shelf = new ShelfDocument { Entries = await log.All(cancel), Keep = (await keeps.Find(RatesShelf.Own, cancel))?.Document.Keep },
            Rates = (await rates.Find(RatesShelf.Own, cancel))?.Document,
            Days = (await days.Find(RatesShelf.Own, cancel))?.Document,
            Settled = (await settled.Find(RatesShelf.Own, cancel))?.Document,
            Quotes = await quotes.Each(cancel).ToListAsync(cancel),
        };

        IReadOnlyList<Fault> all = [.. faults, .. IdFaults(other), .. SettledFaults(other), .. QuoteFaults(own, other), .. ShelfFaults(own, other, voice)];
        if (all.Count > 0) return Problems.Faults(StatusCodes.Status422UnprocessableEntity, all, voice);

        var plan = ShopTaking.Plan(own, other);
        var mark = Mark(plan);
        var asked = request.Query["plan"].ToString();
        if (asked != mark) return Results.Ok(Told(plan, mark, isDone: false, mostTold));
        await Change(plan, own, other, cancel);
        return Results.Ok(Told(plan, mark, isDone: true, mostTold));
    }

    private async Task Change(IReadOnlyList<TakingStep> plan, ShopDocument own, ShopDocument other, CancellationToken cancel)
    {
        var wanted = plan.Where(s => s.What is TakingIn.New or TakingIn.Changed).Select(s => (s.Part, s.Id)).ToHashSet();
        await products.PutAll([.. other.Products.DistinctBy(p => p.Id, StringComparer.Ordinal).Where(p => wanted.Contains((ShopPart.Product, p.Id))).Select(p => (p.Id, p))], cancel);
        await jobs.PutAll([.. other.Jobs.DistinctBy(j => j.Id, StringComparer.Ordinal).Where(j => wanted.Contains((ShopPart.Job, j.Id))).Select(j => (j.Id, j.Job))], cancel);
        await log.Add(other.Shelf?.Entries ?? [], cancel);
        if (wanted.Any(w => w.Part == ShopPart.Keep)) await Put(keeps, new ShelfDocument { Keep = ShopTaking.Keeps(own.Shelf, other.Shelf) }, cancel);
        await quotes.AddAll([.. (other.Quotes ?? []).DistinctBy(q => q.Id, StringComparer.Ordinal).Where(q => wanted.Contains((ShopPart.Quote, q.Id)))], cancel);
        if (other.Rates is { } charged) await Put(rates, charged, cancel);
        if (other.Days is { } planned) await Put(days, planned, cancel);
        if (other.Settled is { } held && wanted.Any(w => w.Part == ShopPart.Settled)) await Put(settled, Settling.Taken(own.Settled, held), cancel);
    }

    private static async Task Put<T>(DocumentShelf<T> shelf, T document, CancellationToken cancel)
    {
        if (await shelf.Find(RatesShelf.Own, cancel) is { } had) await shelf.Replace(RatesShelf.Own, document, had.Version, cancel);
        else await shelf.Add(RatesShelf.Own, document, cancel);
    }

    private static IEnumerable<Fault> IdFaults(ShopDocument other) =>
        other.Jobs.Select((j, i) => (j.Id, Path: $"jobs[{i}].id")).Concat(other.Products.Select((p, i) => (p.Id, Path: $"products[{i}].id")))
            .Concat((other.Shelf?.Entries ?? []).Select((e, i) => (e.Id, Path: $"shelf.entries[{i}].id")))
            .Concat((other.Quotes ?? []).Select((q, i) => (q.Id, Path: $"quotes[{i}].id")))
            .Where(x => !DocumentId.IsUsable(x.Id))
            .Select(x => new Fault(x.Path, "IdNotUsable",
                v => v.Say($"\"{x.Id}\" cannot be an id.", $"«{x.Id}» no puede ser un id."), v => v.Say("Use up to 64 letters, digits, - and _.", "Use hasta 64 letras, cifras, - y _.")));

    private static IEnumerable<Fault> SettledFaults(ShopDocument other) =>
        (other.Settled?.Visits ?? []).Select((v, i) => (v.From, Path: $"settled.visits[{i}].from"))
            .Where(x => !DateTime.TryParseExact(x.From, DaysReading.Moment, CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
            .Select(x => new Fault(x.Path, "TimeNotRead",
                v => v.Say($"\"{x.From}\" is no day with its hour.", $"«{x.From}» no es un día con su hora."), v => v.Say("Write it as 2026-12-08T08:00.", "Escríbalo como 2026-12-08T08:00.")));

    /// <summary>A number on paper is one quote's for good.</summary>
    private static IEnumerable<Fault> QuoteFaults(ShopDocument own, ShopDocument other)
    {
        var taken = own.Quotes!.ToDictionary(q => q.Number, q => q.Id, StringComparer.Ordinal);
        foreach (var (quote, place) in (other.Quotes ?? []).Select((q, i) => (q, i)))
        {
            if (!int.TryParse(quote.Number, NumberStyles.None, CultureInfo.InvariantCulture, out _))
            {
                yield return new Fault($"quotes[{place}].number", "NumberNotRead",
                    v => v.Say($"\"{quote.Number}\" is no number of a quote.", $"«{quote.Number}» no es un número de presupuesto."), v => v.Say("Write digits only, as on the paper.", "Escriba solo cifras, como en el papel."));
            }
            else if (!taken.TryAdd(quote.Number, quote.Id) && taken[quote.Number] != quote.Id)
            {
                yield return new Fault($"quotes[{place}].number", "NumberTaken",
                    v => v.Say($"Quote {quote.Number} was given out here with other words.", $"El presupuesto {quote.Number} ya se entregó aquí con otro contenido."),
                    v => v.Say("Leave the quotes out of the file: the rest can be taken in.", "Quite los presupuestos del archivo: el resto se puede traer."));
            }

            if (!DateOnly.TryParseExact(quote.On, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
            {
                yield return new Fault($"quotes[{place}].on", "DayNotRead",
                    v => v.Say($"\"{quote.On}\" is no day.", $"«{quote.On}» no es un día."), v => v.Say("Write it as 2026-11-25.", "Escríbalo como 2026-11-25."));
            }
        }
    }

    /// <summary>Faults that only the new entries bring.</summary>
    private static IEnumerable<Fault> ShelfFaults(ShopDocument own, ShopDocument other, Voice voice)
    {
        var had = own.Shelf!.Entries;
        var known = had.Select(e => e.Id).ToHashSet(StringComparer.Ordinal);
        IReadOnlyList<ShelfEntryDocument> added = [.. (other.Shelf?.Entries ?? []).Where(e => !known.Contains(e.Id))];
        if (added.Count == 0 && other.Shelf?.Keep is null) return [];
        var all = JobReading.ReadProducts(new JobDocument(), [.. other.Products, .. own.Products]);
        var before = ShelfReading.Read(new ShelfDocument { Entries = had }, all, voice.Units).Faults.Count;
        return ShelfReading.Read(new ShelfDocument { Entries = [.. had, .. added], Keep = other.Shelf?.Keep }, all, voice.Units).Faults.Skip(before);
    }

    private static string Mark(IReadOnlyList<TakingStep> plan) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        string.Join('\n', plan.Where(s => s.What != TakingIn.Same).Select(s => $"{s.Part} {s.Id} {s.What} {string.Join(';', s.Differences.Select(d => $"{d.Path}={d.Mine}>{d.Other}"))}")))));

    private static TakingLine Told(IReadOnlyList<TakingStep> plan, string mark, bool isDone, int mostTold) => new(
        mark, isDone,
        plan.Count(s => s.What == TakingIn.New), plan.Count(s => s.What == TakingIn.Changed), plan.Count(s => s.What == TakingIn.Same), plan.Count(s => s.What == TakingIn.Kept),
        [.. plan.Where(s => s.What != TakingIn.Same).Take(mostTold).Select(s => new TakingStepLine(
            Word(s.Part), s.Id, s.Name, Word(s.What), [.. s.Differences.Take(20).Select(d => new TakingDifferenceLine(d.Path, d.Mine, d.Other))]))]);

    private static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}
