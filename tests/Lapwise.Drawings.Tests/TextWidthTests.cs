namespace Lapwise.Drawings.Tests;

public class TextWidthTests
{
    [Fact]
    public void Of_a_longer_text_is_wider_and_bold_is_wider_than_regular()
    {
        Assert.True(TextWidth.Of("island") < TextWidth.Of("islands"));
        Assert.True(TextWidth.Of("island") < TextWidth.Of("island", bold: true));
    }

    [Fact]
    public void Wrap_loses_no_word_and_keeps_to_the_width()
    {
        CsCheck.Check.Sample(CsCheck.Gen.Select(CsCheck.Gen.String[CsCheck.Gen.Char["abc mñ"], 0, 80], CsCheck.Gen.Double[5, 20]), t =>
        {
            var (text, width) = t;
            var lines = TextWidth.Wrap(text, width);
            Assert.Equal(string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries)), string.Join(' ', lines));
            Assert.All(lines, line => Assert.True(!line.Contains(' ') || TextWidth.Of(line) <= width));
        });
    }
}
