using Lapwise.Core.Explain;

namespace Lapwise.Core.Tests.Explain;

public sealed class NearestTests
{
    private static readonly string[] Known = ["rectangle", "roundedRectangle", "circle", "ellipse", "l", "u", "walk"];

    [Theory]
    [InlineData("rectangel", "rectangle")]
    [InlineData("Circle", "circle")]
    [InlineData("wlak", null)] // two changes of four letters: too far to guess
    [InlineData("wal", "walk")]
    [InlineData("trapezoid", null)]
    [InlineData("", null)]
    public void The_nearest_known_word_is_proposed_and_no_other(string typed, string? word) => Assert.Equal(word, Nearest.To(typed, Known));

    [Fact]
    public void A_text_of_a_megabyte_is_no_word() => Assert.Null(Nearest.To(new string('x', 1_000_000), Known));
}
