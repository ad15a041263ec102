using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Money;

/// <summary>
/// <c>POST /api/jobs/{id}/quotes</c>: gives out the price as it stands. It is frozen with everything it was made from; the
/// same again gives the one that stands.
/// </summary>
internal static class IssueQuote
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/jobs/{id}/quotes", Answer).WithName("IssueQuote").WithTags("Money").WithSummary("Gives out the price as it stands, frozen with everything it was made from.")
            .Produces<IssuedQuote>(StatusCodes.Status201Created).Produces<IssuedQuote>().ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Answer(string id, HttpRequest request, StoredWholePrice stored, QuoteFolder quotes, TimeProvider time, CancellationToken cancel)
    {
        var (documents, refusal) = await stored.Of(id, request, cancel);
        if (documents is null) return refusal!;
        var (priced, voice) = (documents.Priced, documents.Voice);
        var products = QuoteIssuing.ProductsOf(documents.Job, documents.Library);
        var fingerprint = Fingerprint.Of(documents.Job, products, documents.Rates, documents.Settled);
        var before = await quotes.OfJob(id, cancel);
        var today = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        if (before is [var last, ..] && last.Fingerprint == fingerprint && last.Program == ProgramVersion.Own && last.On == Day(today) && last.Language == voice.Language) return Results.Ok(last);

        var number = await quotes.NextNumber(cancel);
        var quote = new IssuedQuote
        {
            Id = DocumentId.New(time.GetUtcNow()),
            Number = number.ToString("0000", CultureInfo.InvariantCulture),
            JobId = id,
            On = Day(today),
            ValidUntil = Day(today.AddDays(priced.Rates.ValidDays)),
            Fingerprint = fingerprint,
            Program = ProgramVersion.Own,
            Replaces = before is [var replaced, ..] ? replaced.Id : null,
            Price = QuoteIssuing.Sums(priced.Price, priced.Options.Select(o => (o.Option.Name, o.Difference.Value)), voice),
            Job = documents.Job,
            Products = products,
            Rates = documents.Rates,
            Settled = documents.Settled.Count > 0 ? documents.Settled : null,
            Language = voice.Language,
            Units = voice.Units,
        };
        await quotes.Add(quote, cancel);
        return Results.Created($"/api/quotes/{quote.Id}", quote);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
