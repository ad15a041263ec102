using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Tests.Materials;

public sealed class MixingTests
{
    /// <summary>Common practice, no source: clear is mixed 2 : 1 by volume; water at most 2 %, about half an ounce in 24.</summary>
    [Fact]
    public void A_kit_of_24_ounces_is_16_to_8_with_about_half_an_ounce_of_water()
    {
        var mix = Mixing.Of(Invented.Coat with { ThinnerFraction = 0.02 }, 24 * Invented.MlPerUsFluidOunce);

        Assert.Equal(16, mix.AMl / Invented.MlPerUsFluidOunce, 1e-9);
        Assert.Equal(8, mix.BMl / Invented.MlPerUsFluidOunce, 1e-9);
        Assert.InRange(mix.ThinnerMl / Invented.MlPerUsFluidOunce, 0.4, 0.5);
    }

    /// <summary>A mass is its volume times its density: 300 mL at 1.42 g/mL weigh 426 g.</summary>
    [Fact]
    public void Masses_come_from_each_components_own_density()
    {
        var product = Invented.Clear with { Mix = new MixRatio(MixBasis.Volume, 3, 1), DensityAGPerMl = 1.42, DensityBGPerMl = 1.01 };
        var mix = Mixing.Of(Invented.Coat with { Product = product }, 400);

        Assert.Equal((300, 100), (mix.AMl, mix.BMl));
        Assert.Equal(426, mix.AG, 1e-9);
        Assert.Equal(101, mix.BG, 1e-9);
    }

    [Fact]
    public void The_parts_make_the_whole() =>
        Gen.Select(Gen.Double[0.05, 20], Gen.Double[0.05, 20], Gen.Double[1, 5000]).Sample((a, b, volume) =>
        {
            var mix = Mixing.Of(Invented.Coat with { Product = Invented.Clear with { Mix = new MixRatio(MixBasis.Volume, a, b) } }, volume);
            return Math.Abs(mix.AMl + mix.BMl - volume) < 1e-9 * volume && Math.Abs((mix.AMl * b) - (mix.BMl * a)) < 1e-9 * volume * (a + b);
        });
}
