using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Tests.Work.Risk;

public sealed class DrawsTests
{
    [Fact] // The first outputs for seed 1234567 as published for SplitMix64 (from memory).
    public void Bits_are_those_of_SplitMix64() => Assert.Equal(
        [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821],
        Enumerable.Range(0, 5).Select(i => new Draws(1234567).Bits((ulong)i)));

    [Theory] // Standard tables; 10⁻²⁰ is the check value of the far tail given with AS 241 (from memory).
    [InlineData(0.5, 0)]
    [InlineData(0.25, -0.6744897501960817)]
    [InlineData(0.975, 1.959963984540054)]
    [InlineData(0.001, -3.090232306167813)]
    [InlineData(1e-20, -9.262340089798408)]
    public void The_normal_law_agrees_with_its_tables(double share, double value) => Assert.Equal(value, NormalLaw.At(share), 13);

    [Fact]
    public void Normal_draws_have_mean_0_and_variance_1()
    {
        var draws = new Draws(99);
        var values = Enumerable.Range(0, 100_000).Select(i => draws.Normal((ulong)i)).ToList();
        Assert.Equal(0, values.Average(), 0.015);
        Assert.Equal(1, values.Average(v => v * v), 0.02);
    }
}
