using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests.Conditions;

public sealed class TemperatureLawTests
{
    [Fact]
    public void Two_points_give_the_activation_energy_behind_them() => Assert.All(Rows("general/ten-degree-ratio.txt"), row =>
    {
        var (cold, hot, ratio) = (Number(row[1]), Number(row[2]), Number(row[3]));
        var law = Assert.IsType<TemperatureLaw.ThroughTwoPoints>(TemperatureLaw.Through([new TimeAt(3600 * ratio, cold), new TimeAt(3600, hot)]));
        // The table prints three decimals: half a unit in the last is 0.03 to 0.04 kJ/mol.
        Assert.Equal(Number(row[0]), law.EnergyKJPerMol, 0.04);
    });

    [Fact]
    public void One_point_follows_the_published_rule() => Assert.All(Rows("general/pot-life-by-rule.txt"), row =>
    {
        var law = TemperatureLaw.Through([new TimeAt(Number(row[0]) * 3600, 21)])!;
        Assert.Equal(Number(row[2]), law.SecondsAt(Number(row[1])) / 3600, 0.005);
    });

    [Fact]
    public void No_point_has_no_law() => Assert.Null(TemperatureLaw.Through([]));

    private static readonly Gen<TimeAt> AnyPoint = Gen.Select(Gen.Double[60, 36000], Gen.Double[0, 50]).Select((s, c) => new TimeAt(s, c));

    [Fact]
    public void Hotter_is_never_longer() => Gen.Select(AnyPoint.Array[1, 2], Gen.Double[0, 60], Gen.Double[0.1, 20]).Sample((points, celsius, more) =>
    {
        var law = TemperatureLaw.Through(points)!;
        return law.SecondsAt(celsius + more) <= law.SecondsAt(celsius);
    });

    [Fact]
    public void The_law_passes_through_the_points_of_the_sheet() => Gen.Select(AnyPoint, AnyPoint).Sample((a, b) =>
    {
        var (cold, hot) = a.Celsius < b.Celsius ? (a, b) : (b, a);
        if (cold.Seconds < hot.Seconds || hot.Celsius - cold.Celsius < 2) return;
        var law = TemperatureLaw.Through([a, b])!;
        Assert.Equal(a.Seconds, law.SecondsAt(a.Celsius), a.Seconds * 1e-9);
        Assert.Equal(b.Seconds, law.SecondsAt(b.Celsius), b.Seconds * 1e-9);
    });

    [Fact]
    public void Points_that_contradict_never_give_more_time_than_the_shorter_allows() => Gen.Select(AnyPoint, AnyPoint, Gen.Double[0, 50]).Sample((a, b, celsius) =>
    {
        if (!TemperatureLaw.Contradict([a, b])) return true;
        double ByRule(TimeAt p) => new TemperatureLaw.HalvingEachTenDegrees(p).SecondsAt(celsius);
        return TemperatureLaw.Through([a, b])!.SecondsAt(celsius) <= Math.Min(ByRule(a), ByRule(b)) * (1 + 1e-12);
    });
}
