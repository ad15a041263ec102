using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;

namespace Lapwise.Documents.Tests;

/// <summary>The record of an invented run, read back by poppler.</summary>
public sealed class RecordSheetTests
{
    private const long Minute = 60_000;
    // 14 September 2026, 09:00 UTC.
    private static readonly long Nine = new DateTimeOffset(2026, 9, 14, 9, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();
    private static readonly Voice English = new(Language.English, UnitSystem.Us);
    private static readonly Voice Spanish = new(Language.Spanish, UnitSystem.Metric);

    private static readonly IssuedPlan Plan = new()
    {
        Job = "Tidemill house", Product = "Invented clear", Fingerprint = "00c0ffee", Core = "0.1.0", OpenTimeMs = 8 * Minute, PotLifeMs = 45 * Minute, Crew = ["Alba"],
        Sections = [.. Enumerable.Range(1, 4).Select(i => new IssuedSection { Id = $"{i}", Top = "Island", TakesMs = [3 * Minute], StartMs = (i - 1) * 3 * Minute, EndMs = i * 3 * Minute, Batch = "A" })],
        Laps = [.. Enumerable.Range(1, 3).Select(i => new IssuedLap { A = $"{i}", B = $"{i + 1}", LengthM = 0.6 })],
        Against = [new() { Code = "HumidityHigh", En = "The air is at 80 %; the sheet allows 75 %.", Es = "El aire está al 80 %; la hoja admite 75 %." }],
        Batches = [new() { Id = "A", VolumeMl = 300, GivesMl = 280 }],
    };

    private static Run Told(double thirdAt, bool stops)
    {
        var number = 0;
        MarkDocument Mark(double minute, What what, bool assumed = false) => MarkReading.Write(new Mark(
            new Stamp($"m{++number}", new DeviceMoment("phone1", "s1", Nine + (long)(minute * Minute), (long)(minute * Minute)), number, assumed, 0), what));
        return Folding.Fold(
        [
            Mark(0, new What.Issued(Plan)), Mark(0.5, new What.Reading("air", 21.5)), Mark(0.6, new What.TakenUp("HumidityHigh", "two heaters on")), Mark(1, new What.BatchMixed("A", 0)),
            Mark(3, new What.SectionWet("1", 0)), Mark(6, new What.SectionDry("1", 0), assumed: true), Mark(6, new What.SectionWet("2", 0)), Mark(9, new What.SectionDry("2", 0)),
            Mark(thirdAt, new What.SectionWet("3", 0)), Mark(thirdAt + 3, new What.SectionDry("3", 0)), Mark(thirdAt + 3.2, new What.Noted("Hair picked out of 3")),
            .. stops ? [Mark(thirdAt + 4, new What.StoppedBefore(["4"]))] : new[] { Mark(thirdAt + 3.5, new What.SectionWet("4", 0)), Mark(thirdAt + 6.5, new What.SectionDry("4", 0)) },
        ])!;
    }

    [Fact]
    public void What_was_done_stands_on_paper_with_its_hours_and_what_was_assumed()
    {
        var run = Told(9, stops: false);
        Assert.Empty(LinesLeft.Of(run));
        var read = new PdfRead(RecordSheet.Pdf(run, English, TimeZoneInfo.Utc));
        foreach (var words in new[] { "Record of what was done", "Tidemill house", "Every section is done, and every lap was joined in time", "Sep 14, 2026", "Coat 1: Invented clear", "9:03:00 am", "assumed", "against “The air is at 80 %; the sheet allows 75 %.”: two heaters on", "Hair picked out of 3", "70.7 °F", "10.14 fl oz" })
            Assert.True(read.Says(words), words);
        Assert.False(read.Says("Lines left, and their mend"));
        var spanish = new PdfRead(RecordSheet.Pdf(run, Spanish, TimeZoneInfo.Utc));
        Assert.True(spanish.Says("Registro de lo hecho. Capa 1: Invented clear"));
        Assert.True(spanish.Says("9:03:00") && !spanish.Says("9:03:00 am"));
        Assert.StartsWith("<!doctype html>", RecordSheet.Html(run, Spanish, TimeZoneInfo.Utc));
    }

    [Fact]
    public void A_lap_joined_late_and_a_stop_are_lines_with_their_mend()
    {
        var run = Told(15, stops: true);
        Assert.Equal([("2", "3", false), ("3", "4", true)], LinesLeft.Of(run).Select(l => (l.Lap.A, l.Lap.B, l.IsStop)));
        var read = new PdfRead(RecordSheet.Pdf(run, English, TimeZoneInfo.Utc));
        foreach (var words in new[] { "Lines left to be seen: 2.", "Between sections 2–3: joined too late.", "Between sections 3–4: the work stopped here.", "Sand the line flush" })
            Assert.True(read.Says(words), words);
    }

    /// <summary>Twelve digits, as on every other paper.</summary>
    [Fact]
    public void The_inputs_of_the_plan_are_named_alike_all_over_the_record()
    {
        var inputs = string.Concat(Enumerable.Repeat("0a1b2c3d", 8));
        var run = Told(9, stops: false);
        var read = new PdfRead(RecordSheet.Pdf(run with { Plan = run.Plan with { Fingerprint = inputs }, Log = [run.Log[0] with { Mark = run.Log[0].Mark with { What = new What.Issued(Plan with { Fingerprint = inputs }) } }, .. run.Log.Skip(1)] }, English, TimeZoneInfo.Utc));
        Assert.Equal(2, string.Concat(read.Pages).Split(Core.Jobs.Fingerprint.Printed(inputs)).Length - 1);
        Assert.False(read.Says(inputs));
    }

    /// <summary>Laps whose last column breaks in a half of the paper and not in the whole of it.</summary>
    [Theory]
    [InlineData(16)]
    [InlineData(18)]
    [InlineData(20)]
    public void No_heading_stands_alone_at_the_foot_of_a_page(int sections)
    {
        var plan = Plan with
        {
            Sections = [.. Enumerable.Range(1, sections).Select(i => new IssuedSection { Id = $"{i}", Top = "Island", TakesMs = [Minute], StartMs = (i - 1) * Minute, EndMs = i * Minute, Batch = "A" })],
            Laps = [.. Enumerable.Range(1, sections - 1).Select(i => new IssuedLap { A = $"{i}", B = $"{i + 1}", LengthM = 0.6 })],
        };
        var number = 0;
        MarkDocument Mark(int minute, What what, bool assumed) => MarkReading.Write(new Mark(new Stamp($"m{++number}", new DeviceMoment("phone1", "s1", Nine + (minute * Minute), minute * Minute), number, assumed, 0), what));
        var run = Folding.Fold(
        [
            Mark(0, new What.Issued(plan), false), Mark(1, new What.BatchMixed("A", 0), false),
            .. plan.Sections.SelectMany((s, i) => new[] { Mark(i + 2, new What.SectionWet(s.Id, 0), false), Mark(i + 3, new What.SectionDry(s.Id, 0), true) }),
        ])!;
        foreach (var voice in new[] { English, Spanish })
            JobSheetPdfTests.NoHeadingAtAFoot(new PdfRead(RecordSheet.Pdf(run, voice, TimeZoneInfo.Utc)), RecordSheet.Html(run, voice, TimeZoneInfo.Utc));
    }

    [Fact]
    public void A_stop_where_nothing_was_begun_beside_it_leaves_no_line() =>
        Assert.Empty(LinesLeft.Of(Folding.Fold([.. Told(9, stops: false).Log.Select(l => l.Document).Where(d => d.Kind is "issued"), MarkReading.Write(new Mark(new Stamp("s", new DeviceMoment("phone1", "s1", Nine + Minute, Minute), 99, false, 0), new What.StoppedBefore(["3", "4"])))])!));
}
