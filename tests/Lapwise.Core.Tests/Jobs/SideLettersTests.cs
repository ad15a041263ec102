using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

public sealed class SideLettersTests
{
    [Theory]
    [InlineData(OutlineShape.Rectangle, "ABCD")]
    [InlineData(OutlineShape.RoundedRectangle, "ABCD")]
    [InlineData(OutlineShape.L, "ABCDEF")]
    [InlineData(OutlineShape.U, "ABCDEFGH")]
    [InlineData(OutlineShape.Circle, "A")]
    [InlineData(OutlineShape.Ellipse, "A")]
    [InlineData(OutlineShape.Walk, "ABC")]
    public void Of_a_shape_gives_its_letters_in_walking_order(OutlineShape shape, string letters)
    {
        var outline = new OutlineDocument { Shape = shape, Sides = [new WalkedSideDocument(), new WalkedSideDocument(), new WalkedSideDocument()] };
        Assert.Equal(letters, string.Concat(SideLetters.Of(outline)));
    }

    [Fact]
    public void A_letter_and_its_place_lead_to_each_other()
    {
        for (var i = 0; i < SideLetters.Most; i++) Assert.Equal(i, SideLetters.IndexOf(SideLetters.At(i)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SideLetters.At(26));
        Assert.Throws<ArgumentOutOfRangeException>(() => SideLetters.IndexOf('a'));
    }
}
