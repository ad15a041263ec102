namespace Lapwise.Documents.Tests;

/// <summary>How blocks of any kind are laid on pages, read back by poppler.</summary>
public sealed class PdfWritingTests
{
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
}
