using System.Globalization;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Quantities;
using Lapwise.Core.Timeline;
using Lapwise.Documents.Parts;
using Lapwise.Drawings;

namespace Lapwise.Documents;

/// <summary>The quote as it was given out: its sums are those of the day, and nothing on it is worked out again but the drawings.</summary>
public static class QuoteSheet
{
    /// <param name="whole">The job of the quote's own documents, for its drawings; null where this program can no longer read them.</param>
    /// <param name="terms">What the customer is told; null with <paramref name="whole"/>.</param>
    public static byte[] Pdf(IssuedQuote quote, WholeJob? whole, Terms? terms) =>
        PdfWriting.Write(Compose(quote, whole, terms), DateTimeOffset.TryParse(quote.On, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var on) ? on : DateTimeOffset.UnixEpoch);

    /// <inheritdoc cref="Pdf"/>
    public static string Html(IssuedQuote quote, WholeJob? whole, Terms? terms) => HtmlWriting.Write(Compose(quote, whole, terms));

    private static Document Compose(IssuedQuote quote, WholeJob? whole, Terms? terms)
    {
        var voice = new Voice(quote.Language, quote.Units);
        var paper = voice.Units == UnitSystem.Us ? Paper.Letter : Paper.A4;
        var title = voice.Say($"Quote {quote.Number}: {quote.Job.Name}", $"Presupuesto {quote.Number}: {quote.Job.Name}");
        return new Document(title, voice.Say("en", "es"), paper, $"{title} · {Fingerprint.Printed(quote.Fingerprint)}", [.. Blocks(quote, whole, terms, voice, paper)]) { Fingerprint = quote.Fingerprint };
    }

    private static IEnumerable<Block> Blocks(IssuedQuote quote, WholeJob? whole, Terms? terms, Voice voice, Paper paper)
    {
        yield return new Block.Title(quote.Job.Name, voice.Say($"Quote {quote.Number} of {Date(quote.On, voice)}, good until {Date(quote.ValidUntil, voice)}", $"Presupuesto {quote.Number} del {Date(quote.On, voice)}, válido hasta el {Date(quote.ValidUntil, voice)}"));
        foreach (var party in PartiesPart.Blocks(quote.Rates.GivenBy, quote.Job.Agreement?.Customer, voice)) yield return party;
        yield return new Block.Facts([new(voice.Say("total with tax", "total con impuesto"), Money(quote.Price.Total, quote, voice)), new(voice.Say("of which tax", "del cual, impuesto"), Money(quote.Price.Tax, quote, voice))]);

        yield return new Block.Heading(1, voice.Say("Price", "Precio"));
        yield return Sums(quote, voice);
        if (quote.Price.Options.Count > 0)
        {
            yield return new Block.Heading(2, voice.Say("You may also choose", "También puede elegir"));
            yield return new Block.Table(
                [new(voice.Say("option", "opción"), 4), new(voice.Say($"adds to the total, {quote.Price.Currency}", $"suma al total, {quote.Price.Currency}"), 2, Right: true)],
                [.. quote.Price.Options.Select(o => new Row([o.Name, (o.Amount > 0 ? "+" : "") + Bare(o.Amount, quote, voice)]))]);
        }

        yield return new Block.Heading(2, voice.Say("When it is paid", "Cuándo se paga"));
        yield return new Block.Table(
            [new(voice.Say("payment", "pago"), 4), new(quote.Price.Currency, 2, Right: true)],
            [.. quote.Price.Stages.Select(s => new Row([s.Name, Bare(s.Amount, quote, voice)]))]);

        if (whole is not null)
        {
            yield return new Block.Heading(1, voice.Say("What is coated", "Qué se recubre"));
            yield return new Block.Items([.. whole.Job.System.Select((c, i) => new Item(ItemMark.Point, voice.Say($"Coat {i + 1}: {c.Title(voice)}", $"Capa {i + 1}: {c.Title(voice)}")))]);
            yield return new Block.Figures([.. whole.Measured.Tops.Select(t => FigureSize.Of($"{t.Top.Name}, {voice.Area(t.TakeOff.CoatedM2)}", FigureSize.Overview(whole.Measured.Tops.Count, paper), sheet => TopDrawing.Draw(t, voice, sheet)))]);
        }

        yield return new Block.Heading(1, voice.Say("Good to know", "Conviene saber"));
        yield return new Block.Items(
        [
            .. (terms?.Home ?? []).Select(h => new Item(ItemMark.Caution, h(voice))),
            new(ItemMark.Point, voice.Say("The colour is bought once the sample board is signed; the date is fixed once the deposit is in.", "El color se compra cuando la muestra está firmada; la fecha queda fijada cuando entra el anticipo.")),
            new(ItemMark.Point, voice.Say("A change is priced and signed before it is done.", "Un cambio se presupuesta y se firma antes de hacerlo.")),
            .. whole?.Timeline.OutOfDate is { } outOfDate ? [Say.Reason(outOfDate, voice)] : Array.Empty<Item>(),
            .. (terms?.Open ?? []).Where(o => o.Code == "TradeNotInPrice").Select(o => new Item(ItemMark.Point, o.Text(voice))),
        ]);
        yield return new Block.Signatures([voice.Say("customer, date", "cliente, fecha"), voice.Say("finisher, date", "quien aplica, fecha")]);
        yield return new Block.Paragraph(voice.Say(
            $"Made from the job and rates as they stood on {Date(quote.On, voice)}; fingerprint {Fingerprint.Printed(quote.Fingerprint)}.",
            $"Hecho con el trabajo y las tarifas tal como estaban el {Date(quote.On, voice)}; huella {Fingerprint.Printed(quote.Fingerprint)}."));
    }

    private static Block.Table Sums(IssuedQuote quote, Voice voice) => new(
        [new(voice.Say("line", "línea"), 4), new(quote.Price.Currency, 2, Right: true)],
        [
            .. quote.Price.Lines.Select(l => new Row([l.Name, Bare(l.Amount, quote, voice)])),
            new([voice.Say("before tax", "sin impuesto"), Bare(quote.Price.Net, quote, voice)]),
            new([Tax(quote.Rates, voice), Bare(quote.Price.Tax, quote, voice)]),
            new([voice.Say("total", "total"), Bare(quote.Price.Total, quote, voice)], Strong: true),
        ]);

    /// <summary>With its rate, and what it is on where that is not everything.</summary>
    private static string Tax(RatesDocument rates, Voice voice) => rates.Tax is not { IsBlank: false } rate ? voice.Say("tax", "impuesto")
        : rates.Taxed is Taxed.MaterialOnly ? voice.Say($"tax, {rate.Text} on the material", $"impuesto, {rate.Text} sobre el material")
        : voice.Say($"tax, {rate.Text}", $"impuesto, {rate.Text}");

    /// <summary>As it was written down where it is no day of the calendar.</summary>
    private static string Date(string written, Voice voice) =>
        DateOnly.TryParseExact(written, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? voice.Date(date) : written;

    private static string Money(decimal amount, IssuedQuote quote, Voice voice) =>
        Currency.TryOf(quote.Price.Currency, out var currency) ? voice.Money(new MoneyAmount(amount, currency)) : voice.Number((double)amount);

    private static string Bare(decimal amount, IssuedQuote quote, Voice voice) =>
        Currency.TryOf(quote.Price.Currency, out var currency) ? voice.BareMoney(new MoneyAmount(amount, currency)) : voice.Number((double)amount);
}
