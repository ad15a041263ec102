using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Documents.Parts;
using Lapwise.Drawings;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

/// <summary>How blocks of any kind are laid on pages, read back by poppler.</summary>
public sealed class PdfWritingTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);

    private static PdfRead Written(params Block[] blocks) => new(PdfWriting.Write(new Document("Sheet", "en", Paper.Letter, "Foot", blocks), DateTimeOffset.UnixEpoch));

    [Fact]
    public void What_is_too_long_for_a_page_goes_on_over_it_and_is_heard_whole()
    {
        var words = string.Join(' ', Enumerable.Range(1, 2000));
        var read = Written(new Block.Heading(1, "Long"), new Block.Paragraph(words), new Block.Items([new(ItemMark.Point, words)]), new Block.Verdict(Tone.Works, "Works."));
        Assert.True(read.Pages.Count > 2);
        Assert.Equal([words], read.Parts.Where(p => p.Kind == "P").Select(p => p.Words).Where(w => w != "Works."));
        Assert.Equal([words], read.Parts.Where(p => p.Kind == "LBody").Select(p => p.Words));
    }

    [Fact]
    public void A_deep_top_is_drawn_higher_and_no_other()
    {
        var job = Samples.Job("l-kitchen");
        Assert.All(Measuring.Measure(job).Tops, top => Assert.Equal(225, FigureSize.For(top, Paper.Letter).MostHeight));

        var u = Measuring.Measure(job with { Tops = [job.Tops[0] with { Outline = new OutlineSpec.U(3.2, 0.62, 3.6, 0.9, 2.6, 0.62), Cutouts = [] }] }).Tops[0];
        var sheet = FigureSize.For(u, Paper.Letter);
        Assert.True(PerMetre(sheet) > 1.3 * PerMetre(sheet with { MostHeight = 225 }));

        double PerMetre(Sheet on) => TopDrawing.Draw(u, Us, on).Plan!.PerMetre;
    }

    [Fact]
    public void A_drawing_stays_on_its_page_where_a_little_lower_it_has_room()
    {
        var whole = Samples.Whole("l-kitchen");
        var lowering = FigureSize.Of("Island", FigureSize.For(whole.Measured.Tops[1], Paper.Letter), sheet => PlanDrawing.Draw(whole.Measured.Tops[1], whole.Work.Coats[0], whole.Job.Crew, Us, sheet));
        // So many lines go before it on the same page.
        int Before(Figure figure) => Enumerable.Range(20, 40).TakeWhile(lines => Written([.. Lead(lines), new Block.Figures([figure])]).Pages.Count == 1).Last();

        var (before, plain) = (Before(lowering), Before(new Figure(lowering.Caption, lowering.Drawing)));
        Assert.InRange(before, plain + 2, plain + 6);

        // It says no less there, in letters no smaller; and a heading that leads in to it stays too.
        var read = Written([.. Lead(before), new Block.Figures([lowering])]);
        foreach (var text in lowering.Drawing.Marks.OfType<Mark.Text>()) Assert.True(read.Says(text.Words), text.Words);
        Assert.Single(Written([.. Lead(before - 3), new Block.Heading(2, "In this order"), new Block.Figures([lowering])]).Pages);
        Assert.Null(lowering.Within(lowering.Drawing.Height / 2));

        static IEnumerable<Block> Lead(int lines) => Enumerable.Range(1, lines).Select(i => new Block.Paragraph($"Line {i}"));
    }
}
