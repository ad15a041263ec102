using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;
using UnitsNet;
using UnitSystem = Lapwise.Core.Explain.UnitSystem;

namespace Lapwise.Core.Tests.Explain;

public sealed class VoiceQuantitiesTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    /// <summary>Against UnitsNet, a general-purpose units library.</summary>
    [Fact]
    public void US_units_agree_with_an_independent_library() => Gen.Double[0.1, 5000].Sample(x =>
    {
        Assert.Equal(Us.Number(Area.FromSquareMeters(x).SquareFeet, Area.FromSquareMeters(x).SquareFeet < 10 ? 2 : 1) + " ft²", Us.Area(x));
        Assert.Equal(Us.Number(Mass.FromGrams(x).Ounces, Mass.FromGrams(x).Ounces < 32 ? 2 : 1) + " oz", Us.Mass(x));
        Assert.Equal(Us.Number(Length.FromMicrometers(x).Mils, 1) + " mil", Us.Film(x));
    });

    /// <summary>
    /// 8.345 lb/gal to the g/mL is 453.59237 g and 3785.411784 mL (NIST Handbook 44, Appendix C).
    /// Never three decimals: 1,042 in Spanish reads as a thousand and more.
    /// </summary>
    [Fact]
    public void Densities_are_said_in_pounds_per_gallon()
    {
        Assert.Equal("8.35 lb/gal", Us.Density(1));
        Assert.Equal("1,04 g/mL", Metric.Density(1.042));
    }

    /// <summary>A foot is 0.3048 m, a US fluid ounce 29.5735 mL: 40 mL/m is 0.41 fl oz/ft. Rules for VOC print both units in the US and one elsewhere.</summary>
    [Fact]
    public void What_runs_off_and_VOC_are_said_in_the_units_of_the_place()
    {
        Assert.Equal("0.41 fl oz/ft", Us.VolumePerRun(40));
        Assert.Equal("40 mL/m", Metric.VolumePerRun(40));
        Assert.Equal("71 g/L (0.59 lb/gal)", Us.VocOfRules(71));
        Assert.Equal("71 g/L", Metric.VocOfRules(71));
    }

    [Fact]
    public void Temperatures_to_reach_are_rounded_so_that_they_suffice() => Gen.Double[-40, 60].Sample(celsius =>
    {
        foreach (var voice in new[] { Us, Metric })
        {
            double Read(string text) => Reading.Temperature(text, voice.Units) is Read<double>.Got got ? got.Value : double.NaN;
            Assert.True(Read(voice.TemperatureAtLeast(celsius)) >= celsius - 1e-6);
            Assert.True(Read(voice.TemperatureAtMost(celsius)) <= celsius + 1e-6);
        }
    });

    /// <summary>A quarter of a US fluid ounce is 7.39 mL; a cup marked in quarters must be read to them.</summary>
    [Fact]
    public void Amounts_on_a_ticket_read_to_the_mark()
    {
        Assert.Equal("10.25 fl oz", Us.OnCup(10.25 * Invented.MlPerUsFluidOunce));
        Assert.Equal("303,1 mL", Metric.OnCup(303.13));
        Assert.Equal("640 g (22.58 oz)", Us.OnScale(640));
        Assert.Equal("640,5 g", Metric.OnScale(640.5));
    }

    [Theory]
    [InlineData(0.769, "76 %")]
    [InlineData(0.75, "75 %")]
    public void A_share_not_to_pass_is_rounded_down(double share, string text) => Assert.Equal(text, Us.PercentAtMost(share));

    /// <summary>1604 ft²·mil per US gallon is 1 m² and 1 mm to the litre: 40.75 ft²/gal (geometry).</summary>
    [Fact]
    public void A_square_metre_to_the_litre_is_41_square_feet_to_the_gallon()
    {
        Assert.Equal("41 ft²/gal", Us.SpreadingRate(1));
        Assert.Equal("1 m²/L", Metric.SpreadingRate(1));
    }

    [Fact]
    public void Volumes_that_are_compared_are_shown_in_one_unit_which_none_of_them_is_too_small_for()
    {
        Assert.Equal(["160 fl oz", "52 fl oz", "0 fl oz"], Shown(Us, 160, 52, 0));
        Assert.Equal(["1.25 gal", "2 gal", "0 gal"], Shown(Us, 160, 256, 0));
        Assert.Equal(["2400 mL", "150 mL"], new double[] { 2400, 150 }.Select(Metric.Volumes(2400, 150)));
        Assert.Equal(["2,4 L", "1,15 L"], new double[] { 2400, 1150 }.Select(Metric.Volumes(2400, 1150)));
        Assert.Equal("0 fl oz", Us.Volumes()(0));

        static IEnumerable<string> Shown(Voice voice, params double[] fluidOunces)
        {
            var ml = fluidOunces.Select(o => o * Invented.MlPerUsFluidOunce).ToList();
            return ml.Select(voice.Volumes(ml));
        }
    }
}
