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

    [Theory]
    [InlineData("waterfalls 0 m², rims 0,04 m²; and so on", "m²,", "m²;")]
    [InlineData("lost of what goes on edges 10 %; cup, each batch 0.5 fl oz (15 mL)", "%;", "fl", "oz", "mL)")]
    [InlineData("hands h 2; ready at 9:53 am; wet-out r_w 0,56 m²/min", "2;", "am;", "m²/min")]
    public void Wrap_leaves_a_number_with_its_unit(string text, params string[] units)
    {
        for (var width = TextWidth.Of("0,56 m²/min"); width < TextWidth.Of(text); width += 0.1)
            Assert.DoesNotContain(TextWidth.Wrap(text, width), line => units.Contains(line.Split(' ')[0]));
    }
}
