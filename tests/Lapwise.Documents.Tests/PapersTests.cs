using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Supply;
using Lapwise.Shared;
using ZXing;
using ZXing.Common;
using ZXing.Multi.QrCode;

namespace Lapwise.Documents.Tests;

/// <summary>Tickets with codes, lists, care sheet and quote, read back by poppler; the codes by ZXing from the page as printed.</summary>
public sealed class PapersTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    private static readonly PaperBasis WithCodes = new((coat, batch) => $"https://shop.example:5443/jobs/demo/supply?coat={coat + 1}&batch={batch}", []);

    public static TheoryData<string, bool> Every() => new(from kind in Enum.GetNames<PaperKind>() from us in new[] { true, false } select (kind, us));

    [Theory, MemberData(nameof(Every))]
    public void Every_paper_is_named_embeds_its_fonts_and_numbers_its_pages(string kind, bool us)
    {
        var (which, voice) = (Enum.Parse<PaperKind>(kind), us ? Us : Metric);
        var read = new PdfRead(Papers.Pdf(which, Samples.Whole("l-kitchen"), voice, WithCodes));
        Assert.True(read.Says(Papers.Name(which, voice)));
        Assert.Equal("yes", read.Info("Tagged"));
        Assert.All(read.Fonts, line => Assert.Equal("yes", line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^5]));
        Assert.All(read.Pages.Select((p, i) => (p, i)), p => Assert.Contains($"{p.i + 1}/{read.Pages.Count}", PdfRead.Bare(p.p)));
        Assert.DoesNotContain("NaN", string.Concat(read.Pages));
        Assert.StartsWith("<!doctype html>", Papers.Html(which, Samples.Whole("l-kitchen"), voice, WithCodes));
    }

    [Theory]
    [InlineData("l-kitchen")]
    [InlineData("eight-small-pieces")]
    public void The_code_of_every_ticket_is_read_off_the_paper_and_leads_to_its_batch(string sample)
    {
        var whole = Samples.Whole(sample);
        var wanted = whole.Supply.Coats.SelectMany((c, i) => c.Tickets.Select(t => WithCodes.StepAddress!(i, t.Batch))).Order().ToList();
        Assert.NotEmpty(wanted);
        Assert.Equal(wanted, CodesOn(Papers.Pdf(PaperKind.Tickets, whole, Us, WithCodes)).Order());
    }

    [Fact]
    public void Every_ticket_carries_the_mark_of_its_plan_and_it_changes_only_with_what_the_tickets_say()
    {
        var whole = Samples.Whole("l-kitchen");
        IReadOnlyList<string> marks = [.. whole.Work.Coats.Select((w, i) => TicketMark.Of(whole.Supply.Coats[i], w))];
        var read = new PdfRead(Papers.Pdf(PaperKind.Tickets, whole, Us, WithCodes));
        Assert.All(marks, m => Assert.True(read.Says(Fingerprint.Printed(m))));
        var (supply, work) = (whole.Supply.Coats[0], whole.Work.Coats[0]);
        Assert.Equal(marks[0], TicketMark.Of(supply with { CostTotal = supply.CostTotal + 1 }, work));
        Assert.NotEqual(marks[0], TicketMark.Of(supply with { Tickets = [supply.Tickets[0] with { ThinnerMl = 7 }, .. supply.Tickets.Skip(1)] }, work));
        Assert.NotEqual(marks[0], TicketMark.Of(supply, work with { Batches = [work.Batches[0] with { UseByMs = work.Batches[0].UseByMs + 60_000 }, .. work.Batches.Skip(1)] }));
    }

    [Fact]
    public void Without_the_door_for_phones_there_is_no_code_and_the_paper_says_so()
    {
        var pdf = Papers.Pdf(PaperKind.Tickets, Samples.Whole("l-kitchen"), Us, PaperBasis.None);
        Assert.Empty(CodesOn(pdf));
        Assert.True(new PdfRead(pdf).Says("No codes on these tickets"));
    }

    [Theory]
    [InlineData("l-kitchen", true)]
    [InlineData("eight-small-pieces", false)]
    [InlineData("bar-top", true)]
    public void A_ticket_of_the_packet_is_never_split_over_two_pages(string sample, bool us)
    {
        var (whole, voice) = (Samples.Whole(sample), us ? Us : Metric);
        var pages = new PdfRead(Papers.Pdf(PaperKind.Packet, whole, voice, WithCodes)).Pages;
        foreach (var (coat, i) in whole.Supply.Coats.Select((c, i) => (c, i)))
        {
            foreach (var ticket in coat.Tickets)
            {
                var page = Assert.Single(pages, p => p.Contains(voice.Say($"Batch {ticket.Batch}, coat {i + 1}:", $"Mezcla {ticket.Batch}, capa {i + 1}:"), StringComparison.Ordinal));
                Assert.Contains(voice.Say("opens this step", "abre este paso"), page);
                Assert.Contains(voice.Volume(ticket.VolumeMl), page);
            }
        }
    }

    [Theory]
    [InlineData("l-kitchen", true)]
    [InlineData("l-kitchen", false)]
    [InlineData("eight-small-pieces", true)]
    [InlineData("bar-top", true)]
    public void What_leads_in_to_the_tickets_stands_on_the_page_of_the_first(string sample, bool us)
    {
        var voice = us ? Us : Metric;
        var pages = new PdfRead(Papers.Pdf(PaperKind.Packet, Samples.Whole(sample), voice, PaperBasis.None)).Pages;
        Assert.Contains(voice.Say("Batch A, coat 1", "Mezcla A, capa 1"), Assert.Single(pages, p => p.Contains(voice.Say("No codes on these tickets", "Estas boletas no llevan código"), StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("l-kitchen", true)]
    [InlineData("vanity", false)]
    public void What_the_customer_keeps_of_the_packet_has_pages_of_its_own(string sample, bool us)
    {
        var voice = us ? Us : Metric;
        var pages = new PdfRead(Papers.Pdf(PaperKind.Packet, Samples.Whole(sample), voice, WithCodes)).Pages;
        foreach (var heading in new[] { voice.Say("The days of the work", "Los días de la obra"), voice.Say("Care of the new surface", "Cuidado de la superficie nueva") })
            Assert.StartsWith(heading, Assert.Single(pages, p => p.Contains(heading, StringComparison.Ordinal)).TrimStart());
    }

    /// <summary>What products call themselves, in the words of their sheets, is in the units of their sheets; the samples name none.</summary>
    [Theory, MemberData(nameof(Every))]
    public void No_paper_mixes_the_units_of_the_other_system_in(string kind, bool us)
    {
        var others = us ? UnitsOf("°C", "mm", "m", "m²", "m³", "L", "kg") : UnitsOf("°F", "in", "ft", "ft²", "ft³", "mil", "fl oz", "oz", "gal", "lb");
        foreach (var sample in Samples.Names)
        {
            var (whole, voice) = (Samples.Whole(sample), us ? Us : Metric);
            foreach (var page in new PdfRead(Papers.Pdf(Enum.Parse<PaperKind>(kind), whole, voice, WithCodes)).Pages) Assert.DoesNotMatch(others, page);
        }
    }

    private static Regex UnitsOf(params string[] units) => new($@"\d ({string.Join('|', units)})(?![\w²³/])", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));

    /// <summary>What the tickets ask for is in the van: a second container for each, fresh rollers, strainers, a syringe, the wipe.</summary>
    [Theory]
    [InlineData("l-kitchen")]
    [InlineData("eight-small-pieces")]
    [InlineData("bar-top")]
    public void What_the_tickets_ask_for_is_on_the_list_to_load(string sample)
    {
        var whole = Samples.Whole(sample);
        var read = new PdfRead(Papers.Pdf(PaperKind.Packing, whole, Us, PaperBasis.None));
        var lines = whole.Supply.Coats.Zip(whole.Work.Coats).SelectMany(c => c.First.Tickets.SelectMany(t => TicketLines.Of(c.Second, c.First, t))).Select(l => l.Text(Us)).ToList();
        int Asked(string words) => lines.Count(l => l.Contains(words, StringComparison.Ordinal));
        Assert.True(read.Says($"{Us.Count(Asked("second clean container"), ("mixing cup", "mixing cups"), ("", ""))} marked every"));
        var rollers = Asked("take a fresh roller") + whole.Work.Coats.Where(w => w.Coat.Product.Method is ApplicationMethod.Rolled).Sum(w => w.Sections.Select(s => s.Person).Distinct().Count());
        Assert.True(read.Says($"{Us.Count(rollers, ("roller nap", "roller naps"), ("", ""))} and one to spare"), $"{rollers}");
        var strained = Asked("Strain it into the tray");
        Assert.Equal(strained > 0, read.Says($"to strain {Us.Count(strained, ("batch", "batches"), ("", ""))}: "));
        Assert.Equal(whole.Supply.Coats.Any(c => c.Tickets.Any(t => !t.CupReadsThinner)), read.Says("syringe marked in mL"));
        Assert.Equal(whole.Job.System.Any(c => c.Wipe is not null), read.Says(" for the wipe, "));
        Assert.Equal(whole.Work.Coats.Any(c => c.Steps.Count > 0), read.Says("scraper for the drips"));
    }

    [Fact]
    public void A_plan_that_does_not_work_says_so_first_and_on_every_slip_and_promises_no_day()
    {
        var document = Samples.Document("l-kitchen");
        var (whole, _) = WholeJob.From(document with { Room = document.Room! with { Humidity = "93 %" } }, Samples.Library);
        Assert.False(whole!.Timeline.Holds);
        var pages = new PdfRead(Papers.Pdf(PaperKind.Packet, whole, Us, PaperBasis.None)).Pages;
        Assert.Contains("This plan does not work: coat 1, coat 2.", pages[0]);
        var tickets = whole.Supply.Coats.Sum(c => c.Tickets.Count);
        Assert.True(tickets > 1);
        Assert.Equal(tickets, Regex.Count(string.Concat(pages), "do not mix by this ticket", RegexOptions.None, TimeSpan.FromSeconds(5)));
        Assert.Contains("do not promise them", Assert.Single(pages, p => p.Contains("Care of the new surface", StringComparison.Ordinal)));
        Assert.DoesNotContain("do not mix by this ticket", string.Concat(new PdfRead(Papers.Pdf(PaperKind.Tickets, Samples.Whole("jumbo-island"), Us, PaperBasis.None)).Pages));
    }

    /// <summary>The line that ends the cautions is never alone on the next page, wherever they fall.</summary>
    [Fact]
    public void What_ends_a_list_stands_with_its_last_line()
    {
        foreach (var (whole, voice) in Samples.Names.SelectMany(n => new[] { Us, Metric }.Select(v => (Samples.Whole(n), v))))
            foreach (var page in new PdfRead(JobSheet.Pdf(whole, voice)).Pages)
                Assert.DoesNotMatch(voice.Say(@"\A\s*These are the usual cautions", @"\A\s*Estas son las precauciones"), page);
    }

    /// <summary>On the eight small pieces the usual ways have the smaller number, and only because their batches do not age.</summary>
    [Fact]
    public void Where_the_usual_ways_look_younger_the_sheet_says_why()
    {
        var whole = Samples.Whole("eight-small-pieces");
        Assert.Contains(whole.Work.Coats, c => c.Baselines.Any(b => b.WorstAgeMs < c.WorstCountedMs) && c.Baselines.All(b => b.WorstAgeMs >= c.WorstSectionAgeMs));
        Assert.True(new PdfRead(JobSheet.Pdf(whole, Us)).Says("always from a fresh batch"));
    }

    [Fact]
    public void A_note_on_kits_and_batches_says_which_coats_it_is_for()
    {
        var read = new PdfRead(Papers.Pdf(PaperKind.Packing, Samples.Whole("l-kitchen"), Us, PaperBasis.None));
        Assert.True(read.Says("Coat 2. Batch B wants"));
        Assert.True(read.Says("Coat 1. Before measuring:"));
    }

    [Theory, InlineData(PaperKind.Days, true), InlineData(PaperKind.Care, false), InlineData(PaperKind.Packet, true), InlineData(PaperKind.Packet, false)]
    public void Days_go_out_as_they_were_settled_and_loudly_where_they_fit_no_more(PaperKind kind, bool us)
    {
        var voice = us ? Us : Metric;
        var whole = Samples.Whole("l-kitchen");
        var settled = DaysCalendarTests.WeekLater(whole);
        string Light(WholeJob of) => voice.WeekDay(DateOnly.FromDateTime(of.Timeline.UseDates[0].From));
        var on = whole.On(settled);
        var read = new PdfRead(Papers.Pdf(kind, on, voice, PaperBasis.None));
        Assert.True(read.Says(Light(on)) && !read.Says(Light(whole)));

        var loud = voice.Say("settled before the job was changed", "se acordaron otros antes de cambiar el trabajo");
        Assert.False(read.Says(loud));
        Assert.True(new PdfRead(Papers.Pdf(kind, whole.On([.. settled.Skip(1)]), voice, PaperBasis.None)).Says(loud));
    }

    [Fact]
    public void The_quote_prints_the_sums_that_were_frozen_whatever_the_rates_are_now()
    {
        var job = Samples.Document("l-kitchen") with { Agreement = new AgreementDocument { Customer = "M. Otero", Options = [new OptionDocument { Name = "river slate", Coats = [new CoatOptionDocument { Coat = 1, Color = "river slate" }] }] } };
        var (whole, _) = WholeJob.From(job, Samples.Library);
        var rates = new RatesDocument { Tax = "7.25 %", GivenBy = "Two Hills Coating, 12 Mill Lane" };
        var priced = WholePrice.Of(job, whole!, Samples.Library, rates, WholePrice.ChancesOf(whole!)).Priced!;
        var quote = new IssuedQuote
        {
            Number = "0042", On = "2026-11-25", ValidUntil = "2026-12-25", Fingerprint = Fingerprint.Of(job, Samples.Library, rates), Job = job, Rates = rates,
            Products = QuoteIssuing.ProductsOf(job, Samples.Library), Price = QuoteIssuing.Sums(priced.Price, priced.Options.Select(o => (o.Option.Name, o.Difference.Value)), Us),
        };
        var read = new PdfRead(QuoteSheet.Pdf(quote with { Rates = rates with { Margin = "80 %" } }, whole, priced.Terms));
        foreach (var amount in quote.Price.Lines.Select(l => l.Amount).Append(quote.Price.Net).Append(quote.Price.Tax).Append(quote.Price.Total).Concat(quote.Price.Stages.Select(s => s.Amount)))
            Assert.True(read.Says(amount.ToString("N2", System.Globalization.CultureInfo.InvariantCulture)), $"{amount}");
        Assert.True(read.Says("From Two Hills Coating, 12 Mill Lane") && read.Says("M. Otero") && read.Says("0042") && read.Says("Nov 25, 2026, good until Dec 25, 2026") && read.Says("customer, date") && read.Says("river slate"));
        // Twelve digits to read out; the whole is in the file's own data.
        Assert.True(read.Says(Fingerprint.Printed(quote.Fingerprint)) && !read.Says(quote.Fingerprint));
        Assert.Equal(quote.Fingerprint, read.Info("Keywords"));
        Assert.Contains($"content=\"{quote.Fingerprint}\"", QuoteSheet.Html(quote, whole, priced.Terms), StringComparison.Ordinal);
        Assert.Equal(QuoteSheet.Pdf(quote, whole, priced.Terms), QuoteSheet.Pdf(quote, whole, priced.Terms));
    }

    [Fact]
    public void The_packet_for_the_day_has_the_order_of_work_of_every_coat()
    {
        var whole = Samples.Whole("l-kitchen");
        var read = new PdfRead(Papers.Pdf(PaperKind.Packet, whole, Us, PaperBasis.None));
        Assert.Equal(whole.Work.Coats.Count, read.Pages.Sum(p => Regex.Count(p, "In this order")));
    }

    [Theory, InlineData(PaperKind.Days), InlineData(PaperKind.Care)]
    public void What_the_customer_keeps_names_who_gave_it(PaperKind kind)
    {
        var whole = Samples.Whole("l-kitchen");
        var read = new PdfRead(Papers.Pdf(kind, whole, Us, PaperBasis.None with { GivenBy = "Two Hills Coating, 12 Mill Lane", Customer = "M. Otero" }));
        Assert.True(read.Says("From Two Hills Coating, 12 Mill Lane") && read.Says("For M. Otero"));
        Assert.False(new PdfRead(Papers.Pdf(kind, whole, Us, PaperBasis.None)).Says("From "));
    }

    /// <summary>Renders each page as a picture and lets a reader find the codes on it.</summary>
    private static IReadOnlyList<string> CodesOn(byte[] pdf)
    {
        var folder = Directory.CreateTempSubdirectory("lapwise-papers");
        try
        {
            var file = Path.Combine(folder.FullName, "paper.pdf");
            File.WriteAllBytes(file, pdf);
            using var render = Process.Start(new ProcessStartInfo("pdftoppm", ["-gray", "-r", "150", file, Path.Combine(folder.FullName, "page")]))!;
            render.WaitForExit();
            return [.. Directory.GetFiles(folder.FullName, "*.pgm").Order(StringComparer.Ordinal).SelectMany(CodesOnPage)];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static IEnumerable<string> CodesOnPage(string pgm)
    {
        var bytes = File.ReadAllBytes(pgm);
        var (at, words) = (0, new List<string>());
        while (words.Count < 4)
        {
            var word = new StringBuilder();
            while (!char.IsWhiteSpace((char)bytes[at])) word.Append((char)bytes[at++]);
            at++;
            words.Add(word.ToString());
        }

        var source = new RGBLuminanceSource(bytes[at..], int.Parse(words[1]), int.Parse(words[2]), RGBLuminanceSource.BitmapFormat.Gray8);
        var found = new QRCodeMultiReader().decodeMultiple(new BinaryBitmap(new HybridBinarizer(source)), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });
        return (found ?? []).Select(r => r.Text);
    }
}
