using Lapwise.Core;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Quantities;
using Lapwise.Documents;
using Lapwise.Server.Http;
using Lapwise.Store;

namespace Lapwise.Server.Features.Money;

/// <summary><c>GET /api/quotes/{id}/quote.pdf</c> and <c>/quote</c>: a quote as it was given out, on paper or as a page that prints.</summary>
internal static class QuotePapers
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/quotes/{id}/quote.pdf", (string id, QuoteFolder quotes, CancellationToken cancel) => Answer(id, isPdf: true, quotes, cancel)).WithName("QuotePdf").WithTags("Money")
            .WithSummary("A quote as it was given out, as a PDF.").Produces(StatusCodes.Status200OK, contentType: "application/pdf").ProducesProblem(StatusCodes.Status404NotFound);
        api.MapGet("/quotes/{id}/quote", (string id, QuoteFolder quotes, CancellationToken cancel) => Answer(id, isPdf: false, quotes, cancel)).WithName("QuotePage").WithTags("Money")
            .WithSummary("A quote as it was given out, as a page that prints.").Produces(StatusCodes.Status200OK, contentType: "text/html").ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> Answer(string id, bool isPdf, QuoteFolder quotes, CancellationToken cancel)
    {
        if (await quotes.Find(id, cancel) is not { } quote) return Problems.NotFound();
        // Drawings and terms come from the quote's own documents, never from the job as it stands now.
        var whole = WholeJob.From(quote.Job, quote.Products).Whole?.On(quote.Settled ?? []);
        var terms = whole is not null && Currency.TryOf(quote.Rates.Currency, out var currency) ? Terms.Of(whole.Job, whole.Timeline, AgreementReading.Read(quote.Job, currency).Agreement) : null;
        return isPdf
            ? Results.File(QuoteSheet.Pdf(quote, whole, terms), "application/pdf", $"quote-{quote.Number}.pdf")
            : Results.Content(QuoteSheet.Html(quote, whole, terms), "text/html; charset=utf-8");
    }
}
