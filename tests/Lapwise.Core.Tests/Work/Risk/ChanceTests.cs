using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Tests.Work.Risk;

public sealed class ChanceTests
{
    [Theory] // Newcombe, Statistics in Medicine 17 (1998) 857-872, Table I, score method (from memory; worked out again by the formula).
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void Within95_agrees_with_the_published_score_intervals(int times, int trials, double least, double most)
    {
        var (low, high) = new Chance(times, trials).Within95;
        Assert.Equal(least, low, 4);
        Assert.Equal(most, high, 4);
    }

    [Fact]
    public void Within95_never_leaves_0_to_1_and_holds_the_share()
    {
        for (var times = 0; times <= 40; times++)
        {
            var (low, high) = new Chance(times, 40).Within95;
            Assert.InRange(times / 40.0, low, high);
            Assert.True(low >= 0 && high <= 1);
        }
    }
}
