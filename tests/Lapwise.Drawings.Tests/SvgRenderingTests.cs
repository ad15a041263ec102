using System.Xml.Linq;

namespace Lapwise.Drawings.Tests;

public class SvgRenderingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static Drawing With(string words) => new(100, 50, 1, words, words,
        [new Mark.Text(Lettering.Note, words, new(10, 10), 10, Anchor.Start, Upright: false)]);

    [Fact]
    public void Svg_of_any_text_is_well_formed_and_keeps_the_letters() =>
        CsCheck.Check.Sample(CsCheck.Gen.String, words =>
        {
            var root = XDocument.Parse(With(words).Svg()).Root!;
            var shown = root.Element(Svg + "text")!.Value;
            foreach (var letter in words.Where(char.IsAsciiLetterOrDigit)) Assert.Contains(letter, shown);
        });

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("a & b \" ' ]]>")]
    [InlineData("\u0000\u001f\ud800")]
    public void Svg_of_hostile_names_stays_text(string words)
    {
        var root = XDocument.Parse(With(words).Svg()).Root!;
        Assert.Equal(["title", "desc", "style", "text"], root.Elements().Select(e => e.Name.LocalName));
    }

    [Fact]
    public void Svg_says_what_it_is_to_those_who_listen()
    {
        var root = XDocument.Parse(With("Island").Svg()).Root!;
        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal("Island", root.Element(Svg + "title")!.Value);
    }

    [Fact]
    public void Every_meaning_has_a_look_of_its_own_without_its_colour()
    {
        // Edges and laps are told apart by weight and dash alone.
        foreach (var family in new Ink[][] { [Ink.OpenEdge, Ink.WallEdge, Ink.SplashEdge, Ink.WaterfallEdge], [Ink.LapGood, Ink.LapNarrow, Ink.LapLost, Ink.Break] })
            Assert.Equal(family.Length, family.Select(i => (Pens.Of(i).Width, string.Join(' ', Pens.Of(i).Dash))).Distinct().Count());
    }

    // WCAG 2.2, success criterion 1.4.3: at least 4.5 : 1 for text; relative luminance as defined there.
    [Fact]
    public void Every_lettering_reads_on_every_ground()
    {
        foreach (var lettering in Enum.GetValues<Lettering>())
            foreach (var wash in Enum.GetValues<Wash>().Where(w => w != Wash.Stand))
            {
                var (text, ground) = (Luminance(Pens.Hex(Pens.Of(lettering).Colour)), Luminance(Pens.Hex(Pens.Of(wash).Colour)));
                Assert.True((Math.Max(text, ground) + 0.05) / (Math.Min(text, ground) + 0.05) >= 4.5, $"{lettering} on {wash}");
            }

        static double Luminance(string hex)
        {
            double Channel(int at)
            {
                var c = Convert.ToInt32(hex.Substring(at, 2), 16) / 255.0;
                return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
            }
            return (0.2126 * Channel(1)) + (0.7152 * Channel(3)) + (0.0722 * Channel(5));
        }
    }
}
