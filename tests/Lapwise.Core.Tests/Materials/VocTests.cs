using CsCheck;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Tests.Materials;

public sealed class VocTests
{
    private static readonly Gen<VocPart[]> AnyMix = Gen.Select(Gen.Double[1, 2000], Gen.Double[0, 700], Gen.Double[0, 0.6], Gen.Double[0, 0.3]).Select((ml, voc, w, e) => new VocPart(ml, voc, w, e)).Array[1, 4];

    [Fact]
    public void Water_changes_the_actual_figure_and_not_the_one_less_water() => Gen.Select(AnyMix, Gen.Double[1, 500]).Sample((parts, ml) =>
    {
        var (dry, wet) = (Voc.AsApplied(parts), Voc.AsApplied([.. parts, new VocPart(ml, 0, WaterShare: 1)]));
        Assert.Equal(dry.LessWaterGPerL, wet.LessWaterGPerL, 1e-9 * (1 + dry.LessWaterGPerL));
        Assert.True(wet.ActualGPerL <= dry.ActualGPerL);
    });

    [Fact]
    public void Less_water_is_never_below_the_actual() => AnyMix.Sample(parts => Voc.AsApplied(parts) is var voc && voc.LessWaterGPerL >= voc.ActualGPerL - 1e-9);

    [Fact]
    public void The_most_thinner_comes_to_the_limit_exactly() => Gen.Select(Gen.Double[100, 3000], Gen.Double[50, 400], Gen.Double[10, 100]).Sample((ml, voc, room) =>
    {
        var limit = voc + room;
        var most = Voc.MostThinnerMl([new VocPart(ml, voc)], 800, limit)!.Value;
        Assert.Equal(limit, Voc.AsApplied([new VocPart(ml, voc), new VocPart(most, 800)]).ActualGPerL, 1e-6);
    });

    [Fact]
    public void A_mix_over_its_limit_takes_no_thinner() => Assert.Null(Voc.MostThinnerMl([new VocPart(1000, 500)], 800, 420));
}
