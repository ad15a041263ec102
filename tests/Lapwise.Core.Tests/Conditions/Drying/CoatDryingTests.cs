using CsCheck;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Conditions.Drying;

public sealed class CoatDryingTests
{
    private static CoatDrying Dry(double humidity, double solids = 0.35, Carrier carrier = Carrier.Water, double thinner = 0, AirMovement air = AirMovement.Still) => CoatDrying.Of(
        Invented.Coat with { ThinnerFraction = thinner, Product = Invented.Clear with { VolumeSolids = solids, Drying = new Core.Jobs.Drying(carrier, 0.6, 0.5), DryToTouch = new TimeAt(2700, 23) } },
        Invented.Room with { RelativeHumidity = humidity, Air = new AirTemperature(23), AirMovement = air }, [new TemperatureAt(0, 23)], holdsLast: true);

    /// <summary>Both stages in closed form: linear to the switch, then exponential to a twentieth of the first water.</summary>
    [Fact]
    public void The_two_stages_add_up_to_the_whole()
    {
        var dry = Dry(0.5);
        var water = dry.Water!;
        Assert.Equal((water.WaterGPerM2 - water.SwitchGPerM2) / water.FluxGPerM2S, water.ConstantRateS, 1e-9);
        Assert.Equal(water.ConstantRateS + (Math.Log(water.SwitchGPerM2 / (0.05 * water.WaterGPerM2)) * water.SwitchGPerM2 / water.LateFluxGPerM2S), dry.DriedS, 1e-6);
        Assert.Equal(water.ConstantRateS / dry.DriedS, dry.ShareHeldByHumidity, 1e-12);
        Assert.Equal((1.0, 0.05), (dry.Curve[0].Share, Math.Round(dry.Curve[^1].Share, 12)));
    }

    [Fact]
    public void More_humid_is_never_sooner_and_past_the_switch_it_makes_no_difference() => Gen.Select(Gen.Double[0.1, 0.9], Gen.Double[0.01, 0.09], Gen.Double[0.2, 0.95]).Sample((humidity, more, solids) =>
    {
        var (dry, humid) = (Dry(humidity, solids), Dry(humidity + more, solids));
        Assert.True(humid.DriedS >= dry.DriedS * (1 - 1e-12));
        Assert.Equal(humid.DriedS - humid.Water!.ConstantRateS, dry.DriedS - dry.Water!.ConstantRateS, 1e-6 * dry.DriedS);
        if (solids > FilmClosing.SwitchShare) Assert.Equal(0, dry.ShareHeldByHumidity);
    });

    [Fact]
    public void Thinner_lengthens_the_stage_that_humidity_holds_back_and_moving_air_shortens_both() => Gen.Select(Gen.Double[0.2, 0.7], Gen.Double[0.01, 0.2]).Sample((humidity, thinner) =>
    {
        Assert.True(Dry(humidity, thinner: thinner).Water!.ConstantRateS > Dry(humidity).Water!.ConstantRateS);
        Assert.True(Dry(humidity, air: AirMovement.Moving).DriedS < Dry(humidity).DriedS);
    });

    [Fact]
    public void A_film_that_gives_off_solvent_claims_nothing_of_water() => Assert.Null(Dry(0.5, carrier: Carrier.Solvent).Water);

    [Fact]
    public void Waits_are_named_as_the_standards_name_their_stages()
    {
        Assert.Equal("dry-to-touch", CoatDrying.StageOf(Dry(0.5).Waits[0].For)!.Id);
        Assert.Null(CoatDrying.StageOf(WaitFor.FullUse));
        Said.InEveryVoice([.. Dry(0.5).WaterBasis!.Inputs.Select(i => i.Name)]);
    }
}
