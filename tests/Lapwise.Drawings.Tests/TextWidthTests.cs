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
    public void Wrap_loses_nothing_and_keeps_to_the_width()
    {
        CsCheck.Check.Sample(CsCheck.Gen.Select(CsCheck.Gen.String[CsCheck.Gen.Char["abc mñ"], 0, 80], CsCheck.Gen.Double[5, 20]), t =>
        {
            var (text, width) = t;
            var lines = TextWidth.Wrap(text, width);
            Assert.Equal(text.Replace(" ", ""), string.Concat(lines).Replace(" ", ""));
            Assert.All(lines, line => Assert.True(TextWidth.Of(line) <= width, line));
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

    [Fact]
    public void A_word_wider_than_the_line_is_broken_after_a_hyphen_where_it_has_one()
    {
        Assert.Equal(["despensa-", "lavadero"], TextWidth.Wrap("despensa-lavadero", TextWidth.Of("despensa-lava")));
        Assert.Equal(["planc", "har"], TextWidth.Wrap("planchar", TextWidth.Of("planc")));
    }

    [Fact]
    public void What_is_cut_keeps_its_last_part()
    {
        Assert.Equal("Quote 42", TextWidth.Cut("Quote 42", 100));
        var cut = TextWidth.Cut("Quote 42: a very long name of a job · 70f1 1ebc", 20);
        Assert.StartsWith("Quote 42: a", cut, StringComparison.Ordinal);
        Assert.EndsWith("… · 70f1 1ebc", cut, StringComparison.Ordinal);
        Assert.True(TextWidth.Of(cut) <= 20);
        Assert.EndsWith("…", TextWidth.Cut("a name without an end to it", 5), StringComparison.Ordinal);
    }
}
