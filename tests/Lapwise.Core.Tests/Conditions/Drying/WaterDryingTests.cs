using CsCheck;
using Lapwise.Core.Conditions.Drying;

namespace Lapwise.Core.Tests.Conditions.Drying;

public sealed class WaterDryingTests
{
    private static readonly Gen<(double Film, double Solids, double Celsius, double Humidity)> Any =
        Gen.Select(Gen.Double[50, 400], Gen.Double[0.15, 0.6], Gen.Double[10, 35], Gen.Double[0.1, 0.9]);

    private static WaterDrying Of((double Film, double Solids, double Celsius, double Humidity) a) => WaterDrying.Of(a.Film, a.Solids, a.Celsius, a.Celsius, a.Humidity);

    /// <summary>Euler steps of the two stages' own equations come to the closed form.</summary>
    [Fact]
    public void The_curve_is_what_its_two_rates_make() => Any.Sample(any =>
    {
        var drying = Of(any);
        var (water, h) = (drying.WaterGPerM2, drying.SecondsUntil(0.05) / 20_000);
        for (var i = 0; i < 20_000; i++)
            water -= h * (water > drying.SwitchGPerM2 ? drying.FluxGPerM2S : drying.LateFluxGPerM2S * water / drying.SwitchGPerM2);
        Assert.Equal(0.05, water / drying.WaterGPerM2, 2e-4);
    }, iter: 30);

    /// <summary>S. Kiil (2006): the switch comes where polymer fills 74 % of the film.</summary>
    [Fact]
    public void At_the_switch_polymer_fills_74_percent() => Any.Sample(any =>
    {
        var drying = Of(any);
        var polymer = any.Film * any.Solids;
        Assert.Equal(0.74, polymer / (polymer + drying.LeftAt(drying.ConstantRateS)), 1e-9);
    });

    [Fact]
    public void The_late_stage_takes_as_long_in_humid_air() => Any.Sample(any =>
    {
        var (one, humid) = (Of(any), Of(any with { Humidity = 0.9 }));
        Assert.Equal(one.SecondsUntil(0.01) - one.ConstantRateS, humid.SecondsUntil(0.01) - humid.ConstantRateS, 1e-6 * humid.SecondsUntil(0.01));
        Assert.True(humid.ConstantRateS >= one.ConstantRateS - 1e-9);
    });

    [Fact]
    public void Seconds_and_water_left_undo_each_other() => Gen.Select(Any, Gen.Double[0.01, 1]).Sample((any, share) =>
    {
        var drying = Of(any);
        Assert.Equal(share, drying.LeftAt(drying.SecondsUntil(share)) / drying.WaterGPerM2, 1e-9);
    });

    [Fact]
    public void A_surface_below_the_dew_point_never_dries() => Assert.Equal(double.PositiveInfinity, WaterDrying.Of(150, 0.4, 10, 25, 0.8).SecondsUntil(0.5));
}
