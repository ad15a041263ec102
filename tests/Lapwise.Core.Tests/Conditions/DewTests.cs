using CsCheck;
using Lapwise.Core.Conditions;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests.Conditions;

public sealed class DewTests
{
    [Fact]
    public void PointC_agrees_with_published_values() => Assert.All(Rows("general/dew-point.txt"), row =>
        Assert.Equal(Number(row[2]), Dew.PointC(Number(row[0]), Number(row[1]) / 100), Number(row[3])));

    [Fact]
    public void SaturationHPa_agrees_with_the_psychrometric_table() => Assert.All(Rows("general/saturation-pressure.txt"), row =>
        Assert.Equal(1, Dew.SaturationHPa(Number(row[0])) * 100 / Number(row[1]), Number(row[2])));

    private static readonly Gen<(double Air, double Humidity)> AnyAir = Gen.Select(Gen.Double[-20, 50], Gen.Double[0.01, 1]);

    [Fact]
    public void The_dew_point_is_never_above_the_air() => AnyAir.Sample((air, humidity) => Dew.PointC(air, humidity) <= air + 1e-9);

    [Fact]
    public void Wetter_air_has_the_higher_dew_point() => Gen.Select(AnyAir, Gen.Double[0.01, 1]).Sample((air, other) =>
        other <= air.Humidity || Dew.PointC(air.Air, other) >= Dew.PointC(air.Air, air.Humidity));

    [Fact]
    public void The_inversions_undo_the_dew_point() => AnyAir.Sample((air, humidity) =>
    {
        var dew = Dew.PointC(air, humidity);
        Assert.Equal(humidity, Dew.HumidityAt(air, dew), 1e-9);
        Assert.Equal(air, Dew.AirForHumidityC(dew, humidity), 1e-6);
    });

    [Fact]
    public void The_driest_air_still_has_a_dew_point() => Assert.True(double.IsFinite(Dew.PointC(20, 0)));

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void A_humidity_that_cannot_be_is_a_programmers_slip(double humidity) =>
        Assert.ThrowsAny<ArgumentException>(() => Dew.PointC(20, humidity));
}
