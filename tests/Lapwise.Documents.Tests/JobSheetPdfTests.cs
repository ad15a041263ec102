using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Work;
using Lapwise.Drawings;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

/// <summary>The job sheet as a PDF, read back with poppler's pdftotext, pdffonts and pdfinfo.</summary>
public partial class JobSheetPdfTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    public static TheoryData<string, bool> EverySample()
    {
        var data = new TheoryData<string, bool>();
        foreach (var name in Samples.Names)
        {
            data.Add(name, true);
            data.Add(name, false);
        }
        return data;
    }

    private static PdfRead Sheet(string sample, bool us) => new(JobSheet.Pdf(Samples.Whole(sample), us ? Us : Metric));

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_carries_every_font_inside_it(string sample, bool us)
    {
        var fonts = Sheet(sample, us).Fonts;
        Assert.NotEmpty(fonts);
        // pdffonts ends a line with: emb sub uni object ID.
        Assert.All(fonts, line => Assert.Equal("yes", line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^5]));
        Assert.All(fonts, line => Assert.Contains("DejaVu", line));
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_has_the_paper_of_its_units(string sample, bool us) =>
        // ISO 216 A4 is 210 mm × 297 mm; US Letter 8.5 in × 11 in; a point is 1/72 in.
        Assert.StartsWith(us ? "612 x 792 pts" : "595.276 x 841.89 pts", Sheet(sample, us).Info("Page size"));

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_tells_a_reader_that_speaks_what_each_part_is(string sample, bool us)
    {
        var (whole, voice, read) = (Samples.Whole(sample), us ? Us : Metric, Sheet(sample, us));
        Assert.Equal("yes", read.Info("Tagged"));
        var parts = read.Parts;
        var html = JobSheet.Html(whole, voice);

        // The headings are those of the page, which is read by its own tests.
        Assert.Equal(whole.Job.Name, Assert.Single(parts, p => p.Kind == "H1").Words);
        Assert.Equal(
            Headings().Matches(html).Select(h => PdfRead.Bare(WebUtility.HtmlDecode(h.Groups["words"].Value))),
            parts.Where(p => p.Kind is "H1" or "H2" or "H3").Select(p => PdfRead.Bare(p.Words)));
        Assert.Equal(Occurs(html, "<svg"), parts.Count(p => p.Kind == "Figure"));
        Assert.Equal(Occurs(html, "<th"), parts.Count(p => p.Kind == "TH"));
        Assert.Equal(Occurs(html, "<td"), parts.Count(p => p.Kind == "TD"));

        // Words broken over two lines are heard as words.
        Assert.Contains(parts, p => p.Kind == "LBody" && p.Words.EndsWith(voice.Say("Read the cautions of this sheet and the safety data sheet before opening.", "Lea las precauciones de esta hoja y la hoja de datos de seguridad antes de abrir."), StringComparison.Ordinal));
    }

    private static int Occurs(string html, string element) => html.Split(element + ">").Length + html.Split(element + " ").Length - 2;

    [GeneratedRegex("<h[123][^>]*>(?<words>[^<]*)</h[123]>", RegexOptions.ExplicitCapture, 30_000)]
    private static partial Regex Headings();

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_keeps_every_ticket_on_one_page(string sample, bool us)
    {
        var (whole, pages) = (Samples.Whole(sample), Sheet(sample, us).Pages);
        var voice = us ? Us : Metric;
        for (var coat = 0; coat < whole.Work.Coats.Count; coat++)
        {
            foreach (var ticket in whole.Supply.Coats[coat].Tickets)
            {
                var heading = voice.Say($"Batch {ticket.Batch}, coat {coat + 1}:", $"Mezcla {ticket.Batch}, capa {coat + 1}:");
                var page = Assert.Single(pages, p => p.Contains(heading, StringComparison.Ordinal));
                var slip = page[page.IndexOf(heading, StringComparison.Ordinal)..];
                Assert.Contains(voice.Volume(ticket.AMl), slip);
                Assert.Contains(voice.Volume(ticket.BMl), slip);
                // Its last line.
                Assert.Contains(voice.Say("Can hurt", "Puede dañar"), slip);
            }
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_leaves_no_heading_alone_at_the_foot_of_a_page(string sample, bool us) =>
        NoHeadingAtAFoot(Sheet(sample, us), JobSheet.Html(Samples.Whole(sample), us ? Us : Metric));

    /// <summary>Every heading of the page that prints the same; what comes after it begins on its sheet of paper.</summary>
    internal static void NoHeadingAtAFoot(PdfRead read, string html)
    {
        var headings = Headings().Matches(html).Select(h => PdfRead.Bare(WebUtility.HtmlDecode(h.Groups["words"].Value))).ToHashSet(StringComparer.Ordinal);
        Assert.NotEmpty(headings);
        // The last line of all is the foot.
        Assert.All(read.Pages, page => Assert.DoesNotContain(PdfRead.Bare(page.Split('\n').Where(l => l.Trim().Length > 0).SkipLast(1).LastOrDefault("")), headings));
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_says_a_note_of_the_room_once_and_a_clock_with_what_it_counts(string sample, bool us)
    {
        var (whole, voice) = (Samples.Whole(sample), us ? Us : Metric);
        var text = PdfRead.Bare(string.Concat(Sheet(sample, us).Parts.Select(p => p.Words)));
        foreach (var notes in whole.Conditions.Coats.SelectMany(c => c.Reasons).Where(r => r.Limit == Limit.Note).GroupBy(r => PdfRead.Bare($"{r.Text(voice)} {r.Remedy(voice)}")))
            Assert.Equal(notes.Count(), text.Split(notes.Key).Length - 1);
        Assert.Contains(PdfRead.Bare(voice.Say("The clock of each coat runs from the start of its first mix", "El reloj de cada capa corre desde que empieza su primera mezcla")), text);
    }

    [Fact]
    public void Pdf_sets_a_long_name_over_a_drawing_in_full()
    {
        var document = Samples.Document("eight-small-pieces");
        const string Name = "Shelf under the long window on the landing, to the left of the door to the boiler room and the linen";
        var whole = WholeJob.From(document with { Tops = [document.Tops[0] with { Name = Name }, document.Tops[1]] }, Samples.Library).Whole!;
        Assert.Contains(new PdfRead(JobSheet.Pdf(whole, Us)).Parts, p => p.Kind == "P" && p.Words == Name);
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_says_the_plan_in_its_language(string sample, bool us)
    {
        var (whole, sheet) = (Samples.Whole(sample), Sheet(sample, us));
        var voice = us ? Us : Metric;
        Assert.True(sheet.Says(whole.Job.Name));
        Assert.True(sheet.Says(voice.Say("This plan works", "Este plan funciona")));
        Assert.True(sheet.Says(voice.Say("In this order", "En este orden")));
        foreach (var work in whole.Work.Coats)
            Assert.True(sheet.Says(work switch
            {
                { Steps.Count: > 0 } => voice.Say("The simplest order of pours found", "El orden de vertidos más sencillo que se encontró"),
                { Proof: { State: ProofState.Proven, Of: "order" } } => voice.Say("Best order for these sections, these times and this open time", "El mejor orden para estas secciones, estos tiempos y este tiempo abierto"),
                _ when work.LapMarginMs >= work.TargetMarginMs => voice.Say("The simplest order found that keeps", "El orden más sencillo hallado que reserva"),
                _ => voice.Say("Not proven to be the best", "No se ha demostrado que sea el mejor"),
            }));
        Assert.True(sheet.Says(voice.Area(whole.Measured.Total.CoatedM2)));
        Assert.False(sheet.Says(voice.Say("Hoja de trabajo", "Job sheet")));
        foreach (var hazard in whole.Job.System.SelectMany(c => c.Product.Hazards).Distinct())
            Assert.True(sheet.Says(Cautions.For(hazard)(voice)[..40]));
        Assert.True(sheet.Says(Cautions.Deferral(voice)));
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Pdf_shows_every_section_lap_and_baseline_with_its_numbers(string sample, bool us)
    {
        var (whole, sheet) = (Samples.Whole(sample), Sheet(sample, us));
        var voice = us ? Us : Metric;
        foreach (var work in whole.Work.Coats)
        {
            foreach (var section in work.Sections) Assert.True(sheet.Says(Voice.Clock(section.EndMs / 1000.0)));
            foreach (var lap in work.Laps)
            {
                Assert.True(sheet.Says($"{lap.A} – {lap.B}"));
                Assert.True(sheet.Says(LapMargin.Clock(work.MarginMs(lap))));
            }
            foreach (var baseline in work.Baselines) Assert.True(sheet.Says(baseline.Text(voice)));
        }
    }

    [Fact]
    public void Pdf_numbers_its_pages()
    {
        var sheet = Sheet("l-kitchen", us: true);
        var count = int.Parse(sheet.Info("Pages"), CultureInfo.InvariantCulture);
        Assert.Equal(count, sheet.Pages.Count);
        for (var i = 0; i < count; i++) Assert.Contains($"{i + 1}/{count}", PdfRead.Bare(sheet.Pages[i]));
    }

    [Fact]
    public void Pdf_of_the_same_job_is_the_same_bytes() =>
        Assert.Equal(JobSheet.Pdf(Samples.Whole("vanity"), Metric), JobSheet.Pdf(Samples.Whole("vanity"), Metric));

    [Fact]
    public void Pdf_of_a_plan_that_does_not_work_says_so_first()
    {
        var document = Samples.Document("jumbo-island");
        var whole = WholeJob.From(document with { Room = document.Room with { Surface = "48 °F" } }, Samples.Library).Whole!;
        Assert.False(whole.Conditions.Coats.All(c => c.MayCoat));

        foreach (var (voice, first) in new[] { (Us, "This plan does not work"), (Metric, "Este plan no funciona") })
        {
            var pages = new PdfRead(JobSheet.Pdf(whole, voice)).Pages;
            Assert.Contains(first, pages[0]);
            Assert.DoesNotContain(voice.Say("This plan works", "Este plan funciona"), string.Concat(pages));
        }
    }

    [Fact]
    public void Pdf_of_a_job_with_a_fault_is_no_plan_to_work_from()
    {
        var document = Samples.Document("l-kitchen");
        var whole = WholeJob.From(document with { Tops = [document.Tops[0], document.Tops[1] with { Thickness = "-3 in" }] }, Samples.Library).Whole!;
        Assert.NotEmpty(whole.Faults);
        var first = new PdfRead(JobSheet.Pdf(whole, Us)).Pages[0];
        Assert.Contains("Not a plan to work from", first);
        Assert.Contains(whole.Faults[0].Path, first);
    }
}
