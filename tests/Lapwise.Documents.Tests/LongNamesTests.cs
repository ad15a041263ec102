using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.OnSite;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

/// <summary>Names as long as people make them, one of them without a space, on every paper: no word lies over another or runs off the paper.</summary>
public sealed class LongNamesTests
{
    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);
    private const string House = "Cocina, office y lavadero de la casa nueva junto al molino viejo de los Larkhollow, segunda planta, puerta izquierda";
    private const string Top = "Mesa de la despensa-lavadero-cuartodeplanchardelfondodelpasillolargo";

    private static readonly IReadOnlyList<ProductDocument> Library = [.. Samples.Library.Select(p => p with { Name = $"Producto bicomponente inventado de nombre larguísimo ({p.Name})" })];

    private static readonly JobDocument Job = Samples.Document("l-kitchen") is var job
        ? job with { Name = House, Language = Language.Spanish, Units = UnitSystem.Metric, Tops = [.. job.Tops.Select((t, i) => t with { Name = $"{Top} {i + 1}" })], Agreement = new AgreementDocument { Customer = "Administradores de la finca del molino viejo y de sus dependencias" } }
        : throw new InvalidOperationException();

    private static readonly WholeJob Whole = WholeJob.From(Job, Library).Whole!;

    [Theory]
    [InlineData(nameof(PaperKind.Packing))]
    [InlineData(nameof(PaperKind.Tickets))]
    [InlineData(nameof(PaperKind.Care))]
    public void Papers_keep_their_words_apart(string kind) =>
        Assert.Empty(new PdfRead(Papers.Pdf(Enum.Parse<PaperKind>(kind), Whole, Spanish, new PaperBasis((coat, batch) => $"https://shop.example:5443/jobs/demo/supply?coat={coat}&batch={batch}", []))).Collisions(Paper.MarginPt));

    [Fact]
    public void A_quote_keeps_its_words_apart_and_its_fingerprint_at_the_foot()
    {
        var rates = new RatesDocument { Tax = "7.25 %" };
        var priced = WholePrice.Of(Job, Whole, Library, rates, WholePrice.ChancesOf(Whole)).Priced!;
        var quote = new IssuedQuote
        {
            Number = "0042", On = "2026-11-25", ValidUntil = "2026-12-25", Fingerprint = Fingerprint.Of(Job, Library, rates), Job = Job, Rates = rates, Language = Language.Spanish, Units = UnitSystem.Metric,
            Products = QuoteIssuing.ProductsOf(Job, Library), Price = QuoteIssuing.Sums(priced.Price, [], Spanish),
        };
        // Its drawings are looked at elsewhere.
        var read = new PdfRead(QuoteSheet.Pdf(quote, null, null));

        Assert.Empty(read.Collisions(Paper.MarginPt));
        Assert.All(read.Pages, page => Assert.Contains($"· {Fingerprint.Printed(quote.Fingerprint)}", page, StringComparison.Ordinal));
    }

    [Fact]
    public void A_record_keeps_its_words_apart()
    {
        var plan = new IssuedPlan
        {
            Job = House, Product = Library[0].Name ?? "", Fingerprint = "00c0ffee", Core = "0.1.0", OpenTimeMs = 480_000, PotLifeMs = 2_700_000, Crew = [.. Enumerable.Range(1, 6).Select(i => $"Alba de la Concepción Fernández-Montesinos {i}")],
            Sections = [.. Enumerable.Range(1, 8).Select(i => new IssuedSection { Id = $"{i}", Top = Top, TakesMs = [180_000], StartMs = (i - 1) * 180_000, EndMs = i * 180_000, Batch = "A" })],
            Laps = [.. Enumerable.Range(1, 7).Select(i => new IssuedLap { A = $"{i}", B = $"{i + 1}", LengthM = 0.6 })],
            Batches = [new() { Id = "A", VolumeMl = 300, GivesMl = 280 }],
        };
        var number = 0;
        MarkDocument Mark(int minute, What what) => MarkReading.Write(new Mark(new Stamp($"m{++number}", new DeviceMoment("phone1", "s1", minute * 60_000, minute * 60_000), number, minute % 2 == 0, 0), what));
        var run = Folding.Fold(
        [
            Mark(0, new What.Issued(plan)), Mark(1, new What.BatchMixed("A", 0)), Mark(1, new What.Noted(string.Join(' ', Enumerable.Repeat(Top, 4)))),
            .. plan.Sections.SelectMany((s, i) => new[] { Mark((3 * i) + 2, new What.SectionWet(s.Id, i % 6)), Mark((3 * i) + 4, new What.SectionDry(s.Id, i % 6)) }),
        ])!;

        Assert.Empty(new PdfRead(RecordSheet.Pdf(run, Spanish, TimeZoneInfo.Utc)).Collisions(Paper.MarginPt));
    }
}
