using System.Xml.Linq;
using Lapwise.Core.Explain;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

public class JobSheetHtmlTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    public static TheoryData<string> EverySample() => [.. Samples.Names];

    // The page is written so that an XML reader can check it too; only the document type and the two void tags are HTML's own.
    private static XElement Read(string html) => XDocument.Parse(html
        .Replace("<!doctype html>", "", StringComparison.Ordinal)
        .Replace("<meta charset=\"utf-8\">", "", StringComparison.Ordinal)
        .Replace("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">", "", StringComparison.Ordinal)).Root!;

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Html_is_well_formed_and_holds_every_ticket_and_drawing(string sample)
    {
        foreach (var voice in new[] { Us, Metric })
        {
            var whole = Samples.Whole(sample);
            var page = Read(JobSheet.Html(whole, voice));
            Assert.Equal(voice.Say("en", "es"), page.Attribute("lang")!.Value);
            Assert.Equal(whole.Supply.Coats.Sum(c => c.Tickets.Count), page.Descendants("section").Count(s => (string?)s.Attribute("class") == "ticket"));
            // Each top as measured and under every coat, once how a section is rolled, once the days, and the hours for each product where the room swings.
            var hours = whole.Job.Timeline.DaySwingK > 0 ? whole.Job.System.DistinctBy(c => c.Product.Id).Count() : 0;
            Assert.Equal((whole.Measured.Tops.Count * (1 + whole.Work.Coats.Count)) + 2 + hours, page.Descendants("figure").Count());
            Assert.Single(page.Descendants("h1"));
        }
    }

    [Fact]
    public void Html_prints_on_the_paper_of_its_units_and_never_splits_a_ticket()
    {
        Assert.Contains("@page { size: letter;", JobSheet.Html(Samples.Whole("vanity"), Us));
        var metric = JobSheet.Html(Samples.Whole("vanity"), Metric);
        Assert.Contains("@page { size: A4;", metric);
        Assert.Matches(@"\.ticket \{[^}]*break-inside: avoid", metric);
    }

    [Fact]
    public void Html_needs_nothing_from_elsewhere()
    {
        var page = Read(JobSheet.Html(Samples.Whole("l-kitchen"), Us));
        Assert.DoesNotContain(page.Descendants().Attributes(), a => a.Name.LocalName is "src" or "href");
        Assert.Empty(page.Descendants("script"));
    }

    [Fact]
    public void Html_of_hostile_names_stays_text()
    {
        var document = Samples.Document("vanity") with { Name = "<script>alert(1)</script> & \"co\"" };
        var whole = Core.WholeJob.From(document, Samples.Library).Whole!;
        var page = Read(JobSheet.Html(whole, Us));
        Assert.Empty(page.Descendants("script"));
        Assert.Equal(document.Name, page.Descendants("h1").Single().Value);
    }

    [Fact]
    public void Html_and_pdf_say_the_same()
    {
        var whole = Samples.Whole("vanity");
        var html = Read(JobSheet.Html(whole, Metric));
        var pdf = new PdfRead(JobSheet.Pdf(whole, Metric));
        foreach (var cell in html.Descendants("td").Concat(html.Descendants("dd")).Select(e => e.Value).Where(v => v.Length is > 0 and < 24))
            Assert.True(pdf.Says(cell), cell);
    }
}
