using CsCheck;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Conditions.Drying;

public sealed class BatchAgeingTests
{
    private static readonly OpenTime Open = new(600, Origin.DataSheet);
    private static readonly PotLife Life = new(2400, Origin.DataSheet);

    [Fact] // By hand: 10 min open, 40 min pot life; half of 10/40.
    public void Without_shares_half_the_open_time_is_left_at_the_end_of_the_pot_life()
    {
        var ageing = BatchAgeing.Of(Invented.Clear, Open, Life);
        Assert.Equal((0.125, false), (ageing.Share, ageing.IsStated));
        Assert.Equal(300_000, BatchAgeing.UsedMs(ageing.Share, 2_400_000));
    }

    [Theory] // By hand: what is not evaporation is reaction; never more than leaves nothing at the end of the pot life.
    [InlineData(1, 0)]
    [InlineData(0.9, 0.1)]
    [InlineData(0.75, 0.25)]
    [InlineData(0.5, 0.25)]
    [InlineData(0, 0.25)]
    public void The_sheets_share_of_reaction_counts(double evaporation, double share)
    {
        var ageing = BatchAgeing.Of(Invented.Clear with { Drying = new Core.Jobs.Drying(Carrier.Water, evaporation, 0.5) }, Open, Life);
        Assert.Equal(share, ageing.Share, 1e-12);
        Assert.True(ageing.IsStated);
    }

    [Fact]
    public void A_batch_within_its_pot_life_never_takes_more_than_the_open_time() =>
        Gen.Select(Gen.Double[60, 7200], Gen.Double[60, 14400], Gen.Double[0, 1]).Sample((openS, lifeS, evaporation) =>
        {
            var ageing = BatchAgeing.Of(Invented.Clear with { Drying = new Core.Jobs.Drying(Carrier.Water, evaporation, 0.5) }, new OpenTime(openS, Origin.DataSheet), new PotLife(lifeS, Origin.DataSheet));
            Assert.InRange(ageing.Share, 0, 1);
            Assert.True(BatchAgeing.UsedMs(ageing.Share, (long)(lifeS * 1000)) <= (openS * 1000) + 1000);
        });

    [Theory]
    [InlineData(0.5, 0, 0)]
    [InlineData(0.5, -5000, 0)]
    [InlineData(0, 90_000, 0)]
    [InlineData(0.5, 90_000, 45_000)]
    [InlineData(0.5, 90_001, 46_000)]
    public void What_is_used_is_rounded_up_to_a_whole_second(double share, long ageMs, long usedMs) => Assert.Equal(usedMs, BatchAgeing.UsedMs(share, ageMs));

    [Fact]
    public void The_default_is_marked_as_a_figure_of_this_program()
    {
        var (given, left) = (BatchAgeing.Of(Invented.Clear with { Drying = new Core.Jobs.Drying(Carrier.Water, 0.5, 0.5) }, Open, Life).Basis, BatchAgeing.Of(Invented.Clear, Open, Life).Basis);
        Assert.Equal((Core.Explain.SourceStanding.Entered, Core.Explain.SourceStanding.Assumed), (given.Source.Standing, left.Source.Standing));
        Said.InEveryVoice([.. given.Inputs.Select(i => i.Name), .. left.Inputs.Select(i => i.Name)]);
    }
}
