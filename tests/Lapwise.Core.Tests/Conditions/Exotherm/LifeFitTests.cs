using CsCheck;
using Lapwise.Core.Conditions.Exotherm;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Conditions.Exotherm;

public sealed class LifeFitTests
{
    private const double Density = 1.1;

    private static double Life(Reactivity mix, double lossWPerM2K, double massG, double celsius) =>
        new SelfHeating(mix, massG, new Vessel.Bucket().AreaM2(massG / Density), lossWPerM2K).LifeS(celsius, celsius);

    private static readonly Gen<(Reactivity Mix, double Loss)> AnyMix =
        Gen.Select(Gen.Double[5e-5, 1e-3], Gen.Double[5000, 8500], Gen.Double[4, 30]).Select((k, e, u) => (new Reactivity(k, e, LifeFit.DefaultHeatJPerG), u));

    /// <summary>Lives made with a known mix give that mix back, and what the fit says of its misses is what they are.</summary>
    [Fact]
    public void Two_masses_and_two_temperatures_give_the_mix_back() => AnyMix.Sample((mix, loss) =>
    {
        MassLife[] lives = [.. from m in new[] { 100.0, 1000 } from t in new[] { 20.0, 30 } select new MassLife(m, Life(mix, loss, m, t), t)];
        var fit = LifeFit.Through(lives, Density, null);
        Assert.True(fit is { EnergyFitted: true, LossFitted: true });
        for (var i = 0; i < lives.Length; i++)
        {
            var again = Life(fit.Mix, fit.LossWPerM2K, lives[i].MassG, lives[i].Celsius);
            Assert.Equal((again / lives[i].Seconds) - 1, fit.Misses[i], 5e-3);
        }

        Assert.True(fit.WorstMiss < 1e-3, $"{mix} at {loss} is missed by {fit.WorstMiss}");
        Assert.Equal(1, Life(fit.Mix, fit.LossWPerM2K, 400, 25) / Life(mix, loss, 400, 25), 0.01);
    }, iter: 100);

    [Fact]
    public void One_life_is_met_exactly() => Gen.Select(Gen.Double[50, 500], Gen.Double[300, 10_000], Gen.Double[15, 35]).Sample((mass, seconds, celsius) =>
    {
        var fit = LifeFit.Through([new MassLife(mass, seconds, celsius)], Density, null);
        Assert.True(fit.WorstMiss < 1e-6);
        Assert.Equal((false, false), (fit.EnergyFitted, fit.LossFitted));
    }, iter: 50);

    [Fact]
    public void Lives_that_contradict_each_other_leave_a_miss_that_is_shown()
    {
        var fit = LifeFit.Through([new MassLife(100, 1800, 25), new MassLife(100, 3600, 25)], Density, null);
        Assert.Equal(Math.Sqrt(2) - 1, fit.Misses[0], 1e-3);
        Assert.Equal((1 / Math.Sqrt(2)) - 1, fit.Misses[1], 1e-3);
    }

    /// <summary>Of the usual size on data sheets: ten times the mass, six tenths of the life.</summary>
    [Fact]
    public void A_small_and_a_large_life_are_both_met() =>
        Assert.True(LifeFit.Through([new MassLife(100, 2400, 25), new MassLife(1000, 1440, 25)], Density, null).WorstMiss < 0.01);

    [Fact]
    public void An_entered_heat_is_kept() =>
        Assert.Equal(250, LifeFit.Through([new MassLife(100, 1800, 25), new MassLife(800, 900, 25)], Density, 250).Mix.HeatJPerG);
}
