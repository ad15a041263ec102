using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Supply;

public sealed class SupplyingTests
{
    private static CoatSupply Supply(Coat coat, IReadOnlyList<double> batchesMl, Tools? tools = null, double flatM2 = 4)
    {
        var job = Invented.Job with { System = [coat], Tools = tools ?? Invented.Tools };
        var materials = Estimating.Estimate(job, Invented.Measured(flatM2));
        IReadOnlyList<Batch> batches = [.. batchesMl.Select((ml, i) => new Batch($"{i + 1}", 0, 0, 0, 0, ml, ml, []))];
        IReadOnlyList<CoatWork> works = batches.Count == 0 ? [] :
        [
            new CoatWork(coat, new OpenTime(600, Origin.DataSheet), new PotLife(2400, Origin.DataSheet), [], [], batches, new Proof(ProofState.Proven, "order", 0), [], 0, []),
        ];
        return Supplying.Supply(job, materials, new JobWork(works)).Coats[0];
    }

    /// <summary>By hand: 4 m² at 165 µm and 60 + 45 + 15 mL of losses are 780 mL: two kits of 24 fl oz (709.8 mL).</summary>
    [Fact]
    public void A_product_that_must_stand_says_so_with_the_ticket()
    {
        var coat = Invented.Coat with { Product = Invented.Clear with { InductionS = 900 } };
        Assert.Contains(Supply(coat, [500]).Reasons, r => r.Code == "WaitInduction" && r.Limit == Limit.Note);
    }

    [Fact]
    public void Without_a_plan_the_estimate_is_bought()
    {
        var supply = Supply(Invented.Coat, []);
        Assert.Equal(780, supply.NeedMl, 1e-9);
        Assert.Empty(supply.Tickets);
        Assert.Equal((2, 168m), (supply.Kits.Single().Count, supply.CostTotal));
        Assert.Equal((48 * Invented.MlPerUsFluidOunce) - 780, supply.LeftOverMl, 1e-6);
    }

    /// <summary>Three batches of 510 mL at 2 : 1 in tens are 340 + 170 each.</summary>
    [Fact]
    public void A_plan_that_mixes_more_than_the_estimate_is_bought_for()
    {
        var supply = Supply(Invented.Coat, [510, 510, 510]);
        Assert.Equal(1530, supply.NeedMl, 5.0);
        Assert.True(supply.NeedMl >= 1530);
        Assert.Equal(3, supply.Kits.Single().Count);
        Assert.Equal(["1", "2", "3"], supply.Tickets.Select(t => t.Batch));
    }

    /// <summary>
    /// By hand: 800 mL at 2 : 1 on steps of 30 g are 570 g of A (548.1 mL at 1.04) and 300 g of B (270.3 mL at 1.11), 1.4 %
    /// rich in A; kits at 2 : 1 must hold 548.1 · 3/2 = 822.1 mL for A to last.
    /// </summary>
    [Fact]
    public void Kits_are_bought_by_the_part_that_runs_out_first()
    {
        var supply = Supply(Invented.Coat, [800], Invented.Tools with { CupStepMl = 1, ScaleStepG = 30 }, flatM2: 1);
        Assert.Equal((570, 300), (supply.Tickets[0].AG, supply.Tickets[0].BG));
        Assert.Equal(570 / 1.04 * 1.5, supply.NeedMl, 1e-9);
    }

    /// <summary>A scale in steps of 100 g cannot read the ratio, so nobody weighs with it and its excess is not bought.</summary>
    [Fact]
    public void A_measure_that_cannot_read_the_ratio_does_not_count()
    {
        var supply = Supply(Invented.Coat, [801], Invented.Tools with { CupStepMl = 1, ScaleStepG = 100 }, flatM2: 1);
        Assert.False(supply.Tickets[0].ScaleReadsRatio);
        Assert.Equal(801, supply.NeedMl, 1e-9);
    }

    [Fact]
    public void Two_like_coats_each_get_their_own_batches()
    {
        var first = Invented.Coat with { Path = "system[0]" };
        var second = Invented.Coat with { Path = "system[1]" };
        var job = Invented.Job with { System = [first, second] };
        var materials = Estimating.Estimate(job, Invented.Measured(4));
        CoatWork Work(Coat coat, string batch) => new(coat, default, default, [], [], [new Batch(batch, 0, 0, 0, 0, 800, 800, [])], new Proof(ProofState.Proven, "order", 0), [], 0, []);

        var supply = Supplying.Supply(job, materials, new JobWork([Work(second, "b"), Work(first, "a")]));

        Assert.Equal(["a", "b"], supply.Coats.Select(c => c.Tickets.Single().Batch));
    }

    [Fact]
    public void A_product_without_kits_says_so_and_costs_nothing()
    {
        var supply = Supply(Invented.Coat with { Product = Invented.Clear with { Kits = [] } }, []);
        Assert.Equal(("NoKitsListed", Limit.Note), supply.Reasons.Select(r => (r.Code, r.Limit)).Single());
        Assert.Equal((0m, 0.0), (supply.CostTotal, supply.LeftOverMl));
    }

    [Theory]
    [InlineData(25, 0.1, "WeighThisBatch", Limit.Note)]
    [InlineData(1, 25, "MeasureThisBatchByCup", Limit.Note)]
    [InlineData(25, 25, "RatioNotReadable", Limit.Never)]
    public void A_ratio_that_cannot_be_read_is_said(double cupMl, double scaleG, string code, Limit limit)
    {
        // 11 : 1, of which marks of 25 make at least a twelfth too much of one part in a small batch.
        var coat = Invented.Coat with { Product = Invented.Clear with { Mix = new MixRatio(MixBasis.Volume, 11, 1) } };
        var supply = Supply(coat, [110], Invented.Tools with { CupStepMl = cupMl, ScaleStepG = scaleG });
        Assert.Equal((code, limit), (supply.Reasons[0].Code, supply.Reasons[0].Limit));
    }

    [Fact]
    public void Thinner_under_the_first_mark_is_to_be_weighed_and_parts_that_settle_stirred()
    {
        var coat = Invented.Coat with { ThinnerFraction = 0.01, Product = Invented.Clear with { StirFirst = "Stir part A." } };
        var supply = Supply(coat, [700], Invented.Tools with { CupStepMl = 20 });
        Assert.Equal(["ThinnerCoarseOnCup", "StirFirst"], supply.Reasons.Select(r => r.Code));
        Assert.Equal(0, supply.Tickets[0].ThinnerMl);
        Assert.Equal(7, supply.Tickets[0].ThinnerG);
    }

    [Fact]
    public void Every_reason_is_said_in_both_languages_and_unit_systems()
    {
        var product = Invented.Clear with { Kits = [], StirFirst = "Stir part A.", Mix = new MixRatio(MixBasis.Volume, 11, 1) };
        var coat = Invented.Coat with { ThinnerFraction = 0.01, Product = product };
        (double Cup, double Scale)[] tools = [(25, 0.1), (1, 25), (25, 25)];
        var reasons = tools.SelectMany(t => Supply(coat, [110], Invented.Tools with { CupStepMl = t.Cup, ScaleStepG = t.Scale }).Reasons).ToList();

        Assert.Equal(6, reasons.Select(r => r.Code).Distinct(StringComparer.Ordinal).Count());
        Said.InEveryVoice([.. reasons.SelectMany(r => new[] { r.Text, r.Remedy }), .. Supply(Invented.Coat, []).Basis.Inputs.Select(i => i.Name)]);
    }
}
