using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Supply.Buying;
using Lapwise.Core.Tests.Jobs;

namespace Lapwise.Core.Tests.Supply.Buying;

public sealed class PurchasingTests
{
    private static readonly DateOnly Monday = new(2026, 11, 30);
    private static readonly Product Clear = Invented.Clear with { Kits = [new Kit(1000, 40), new Kit(2500, 85), new Kit(5000, 150)] };
    private static readonly Shade Shade = Shade.Of(Clear.Id, null);
    private static readonly Shelf Empty = new([], []);
    private static readonly SampleBoard Unsigned = new("", null);

    private static ComingNeed Need(double net, double loss = 0, int day = 0, string job = "Kitchen") => new(job, Monday.AddDays(day), Shade, net, loss);

    private static Pack Pack(string id, double ml, int? lastDay, Shade? shade = null) =>
        new(id, shade ?? Shade, "L1", ml, lastDay is { } d ? Monday.AddDays(d) : null, null, [new PackPart("A", 2.0 / 3, ml * 2 / 3), new PackPart("B", 1.0 / 3, ml / 3)]);

    private static ShadePurchase Buy(IReadOnlyList<ComingNeed> needs, params IReadOnlyList<Pack> packs) =>
        Assert.Single(Purchasing.Purchase(needs, new Shelf(packs, []), [Clear], Currency.UsDollar).Shades);

    [Fact]
    public void Without_losses_it_is_the_worked_cover()
    {
        // 7 L from 1, 2.5 and 5 L at 40, 85 and 150: worked by hand, 230 = 1 + 1 + 5.
        var bought = Buy([Need(3000), Need(4000, day: 2)]);
        Assert.Equal((new MoneyAmount(230, Currency.UsDollar), 7000.0), (bought.Cost, bought.BoughtMl));
        Assert.Equal(1.0, bought.Enough.Share);
    }

    [Fact]
    public void Of_kits_priced_in_several_currencies_those_in_the_shops_own_are_bought_and_it_is_said()
    {
        var euro = Currency.All.Single(c => c.Code == "EUR");
        var mixed = Clear with { Kits = [new Kit(1000, 40), new Kit(2500, 70) { Currency = euro }] };
        Assert.Contains(Assert.Single(Purchasing.Purchase([Need(1000)], Empty, [mixed], Currency.UsDollar).Shades).Reasons, r => r.Code == "KitsOfSeveralCurrencies");
        var bought = Assert.Single(Purchasing.Purchase([Need(2000)], Empty, [mixed], Currency.UsDollar).Shades);
        Assert.Equal((new MoneyAmount(80, Currency.UsDollar), 2000.0), (bought.Cost, bought.BoughtMl));
        Assert.Empty(Assert.Single(Purchasing.Purchase([Need(1000)], Empty, [mixed], euro).Shades).Reasons);
        var abroad = Clear with { Kits = [.. Clear.Kits.Select(k => k with { Currency = euro })] };
        Assert.Empty(Assert.Single(Purchasing.Purchase([Need(1000)], Empty, [abroad], Currency.UsDollar).Shades).Reasons);
        var own = Clear with { Kits = [new Kit(1000, 40), new Kit(2500, 85) { Currency = Currency.UsDollar }] };
        Assert.Empty(Assert.Single(Purchasing.Purchase([Need(1000)], Empty, [own], Currency.UsDollar).Shades).Reasons);
    }

    [Fact]
    public void Costs_are_in_the_currency_of_the_kits_and_add_up_only_in_one()
    {
        var yen = Currency.All.Single(c => c.Code == "JPY");
        var abroad = Clear with { Id = "abroad", Kits = [.. Clear.Kits.Select(k => k with { Currency = yen })] };
        IReadOnlyList<ComingNeed> needs = [Need(1000), Need(1000) with { Shade = Shade.Of("abroad", null) }];
        var own = Purchasing.Purchase([needs[0]], Empty, [Clear], Currency.UsDollar);
        Assert.Equal(new MoneyAmount(40, Currency.UsDollar), own.Cost);
        var two = Purchasing.Purchase(needs, Empty, [Clear, abroad], Currency.UsDollar);
        Assert.Equal(["USD", "JPY"], two.Shades.OrderBy(s => s.Product.Id == "abroad").Select(s => s.Cost.Currency.Code));
        Assert.Null(two.Cost);
        Assert.Null(Purchasing.Purchase([], Empty, [Clear], Currency.UsDollar).Cost);
        // What is sold in no kits known here costs nothing in any currency.
        var unsold = Purchasing.Purchase(needs, Empty, [Clear with { Kits = [] }, abroad], Currency.UsDollar);
        Assert.Equal(yen, unsold.Cost!.Value.Currency);
    }

    [Fact]
    public void Thinner_and_wiping_solvent_are_bought_beside_the_kits_but_not_for_a_coat_that_waits()
    {
        var thinned = Clear with { Id = "thinned", Thinner = new Thinner("T-1", 0.1, 0.87) };
        ComingNeed With(double thinnerMl, Wipe? wipe, string product = "thinned") => Need(1000) with { Shade = Shade.Of(product, null), ThinnerMl = thinnerMl, Wipe = wipe };
        var acetone = new Wipe(SolventName.Acetone, 200, 600);
        var purchase = Purchasing.Purchase([With(50, acetone), With(30, acetone with { AmountMl = 100 }), With(0, null, Clear.Id), With(500, acetone) with { AwaitsBoard = Unsigned }], Empty, [Clear, thinned], Currency.UsDollar);
        Assert.Equal([(LiquidUse.Thinning, "T-1", 2, 80.0), (LiquidUse.Wiping, "acetone", 2, 300.0)],
            purchase.BesideKits.Select(l => (l.Use, l.Name(new Voice(Language.English, UnitSystem.Metric)), l.Coats, l.NeedMl)));
        Assert.All(purchase.BesideKits, l => Assert.True(l.MayBurn));
        var watered = thinned with { Thinner = thinned.Thinner! with { Kind = ThinnerKind.Water } };
        Assert.False(Assert.Single(Purchasing.Purchase([With(50, null)], Empty, [watered], Currency.UsDollar).BesideKits).MayBurn);
    }

    [Fact]
    public void A_colour_is_bought_only_once_its_sample_board_is_signed()
    {
        var slate = Shade.Of(Clear.Id, "slate");
        var waits = Need(3000) with { Shade = slate, AwaitsBoard = Unsigned };
        var purchase = Purchasing.Purchase([Need(1000), waits], Empty, [Clear], Currency.UsDollar);
        Assert.Equal((Shade, new MoneyAmount(40, Currency.UsDollar)), (Assert.Single(purchase.Shades).Shade, purchase.Cost));
        var held = Assert.Single(purchase.HeldBack);
        Assert.Equal((waits, "BoardNotSigned"), (Assert.Single(held.Needs), held.Reason.Code));
        Assert.Empty(Purchasing.Purchase([waits with { AwaitsBoard = null }], Empty, [Clear], Currency.UsDollar).HeldBack);
    }

    [Fact]
    public void What_waits_for_the_same_is_told_once_with_its_jobs()
    {
        var slate = Shade.Of(Clear.Id, "slate");
        ComingNeed Waits(int job, SampleBoard board) => Need(1000, job: $"Job {job}") with { Shade = slate, AwaitsBoard = board };
        var held = Purchasing.Purchase([.. Enumerable.Range(0, 300).Select(i => Waits(i, Unsigned)), Waits(300, new SampleBoard("warm grey", Monday))], Empty, [Clear], Currency.UsDollar).HeldBack;
        Assert.Equal([300, 1], held.Select(h => h.Needs.Count));
        var text = held[0].Reason.Text(Invented.Voices[0]);
        Assert.Contains("Job 0, Job 1", text, StringComparison.Ordinal);
        Assert.Contains("292 more", text, StringComparison.Ordinal);
        Assert.True(text.Length < 400);
    }

    [Theory]
    [InlineData(null, "", "slate", false)]
    [InlineData("someday", "", "slate", false)]
    [InlineData("2026-11-20", "", "slate", true)]
    [InlineData("2026-11-20", "Slate, satin", "slate", true)]
    [InlineData("2026-11-20", "the warm-grey  board", "Warm grey", true)]
    [InlineData("2026-11-20", "warm grey, satin", "black", false)]
    [InlineData("2026-11-20", "blackberry", "black", false)]
    [InlineData("2026-11-20", "grey, warm", "warm grey", false)]
    [InlineData(null, "slate", "slate", false)]
    public void A_colour_waits_until_a_board_that_shows_it_is_signed(string? signedOn, string shows, string colour, bool isBought)
    {
        var board = AgreementReading.Board(new JobDocument { Agreement = new AgreementDocument { SampleBoard = new SampleBoardDocument { SignedOn = signedOn, Shows = shows } } });
        var job = Invented.Job with { System = [Invented.Coat, Invented.Coat with { Color = colour }] };
        var needs = Purchasing.NeedsOf(job, Lapwise.Core.Materials.Estimating.Estimate(job, Lapwise.Core.Measure.Measuring.Measure(job)), null, _ => null, board);
        Assert.Equal([null, isBought ? null : board], needs.Select(n => n.AwaitsBoard));
    }

    [Fact]
    public void A_colour_that_the_signed_board_does_not_show_is_held_back_with_both_named()
    {
        var waits = Need(3000) with { Shade = Shade.Of(Clear.Id, "black"), AwaitsBoard = new SampleBoard("warm grey, satin", Monday) };
        var reason = Assert.Single(Purchasing.Purchase([waits], Empty, [Clear], Currency.UsDollar).HeldBack).Reason;
        Assert.Equal("BoardShowsOther", reason.Code);
        Assert.All(Invented.Voices, v => Assert.All(["black", "warm grey, satin"], word => Assert.Contains(word, reason.Text(v), StringComparison.Ordinal)));
    }

    [Fact]
    public void Together_costs_no_more_than_job_by_job() =>
        Gen.Double[100, 6000].Array[1, 6].Sample(nets =>
        {
            var bought = Buy([.. nets.Select((n, i) => Need(n, n / 8, i, $"Job {i}"))]);
            // The sum of what varies is never surer than its parts are alone, so one more of the smallest kits is the most it can cost.
            Assert.True(bought.Cost.Value <= bought.CostJobByJob.Value + 40);
        }, iter: 30);

    [Fact]
    public void The_chance_asked_for_is_reached_and_a_smaller_order_would_not_reach_it()
    {
        IReadOnlyList<ComingNeed> needs = [Need(3000, 600), Need(4000, 800, 1)];
        foreach (var chance in new[] { 0.5, 0.9, 0.99 })
        {
            var bought = Assert.Single(Purchasing.Purchase(needs, Empty, [Clear], Currency.UsDollar, chance).Shades);
            Assert.True(bought.Enough.Share >= chance);
            var smaller = Purchasing.Purchase(needs, Empty, [Clear with { Kits = [new Kit(bought.BuyAtLeastMl - 1, 1)] }], Currency.UsDollar, chance).Shades[0];
            Assert.Equal(2, smaller.Kits.Sum(k => k.Count));
        }
    }

    [Fact]
    public void The_spread_of_losses_is_that_of_the_log_normal_it_is_drawn_from()
    {
        // One coat of loss only: its 97.5 % point is loss · exp(0.25 · 1.96).
        var bought = Assert.Single(Purchasing.Purchase([Need(0.0, 1000)], Empty, [Clear], Currency.UsDollar, 0.975, trials: 20_000).Shades);
        Assert.Equal(1000 * Math.Exp(0.25 * 1.959964), bought.BuyAtLeastMl, 1000 * 0.03);
    }

    /// <summary>Two of whom one rolls while the other mixes: one roller, and what the tickets measure.</summary>
    [Fact]
    public void A_planned_job_is_bought_for_as_its_own_supply_says()
    {
        var document = Written.Job with { Crew = [new PersonDocument { Name = "One" }, new PersonDocument { Name = "Two" }] };
        var whole = WholeJob.From(document, [Written.Clear]).Whole!;
        var need = Assert.Single(Purchasing.NeedsOf(whole.Job, whole.Materials, whole.Supply, whole.Timeline.CoatedOn, Unsigned));
        Assert.Equal((whole.Supply.Coats[0].NeedMl, whole.Supply.Coats[0].ThinnerMl), (need.NeedMl, need.ThinnerMl));
        Assert.Equal(1, whole.Work.Coats[0].Rollers);
        var unplanned = Assert.Single(Purchasing.NeedsOf(whole.Job, Lapwise.Core.Materials.Estimating.Estimate(whole.Job, whole.Measured), null, _ => null, Unsigned));
        Assert.True(need.NeedMl < unplanned.NeedMl);
    }

    [Fact]
    public void A_pack_that_outlasts_every_day_known_is_not_said_to_be_late_but_a_job_without_a_day_is_named()
    {
        var pack = Pack("p", 900, lastDay: 300);
        var codes = Buy([Need(500), Need(400, job: "Bar") with { On = null }], pack).Reasons;
        Assert.Contains("Bar", Assert.Single(codes).Text(Invented.Voices[0]), StringComparison.Ordinal);
        Assert.Equal("NoDayForPacks", codes[0].Code);
        Assert.Empty(Buy([Need(500)], pack).Reasons);
    }

    [Fact]
    public void What_expires_before_its_day_is_not_counted()
    {
        Assert.Equal(0, Buy([Need(500, day: 3)], Pack("p", 900, lastDay: 3)).BuyAtLeastMl);
        var late = Buy([Need(500, day: 4)], Pack("p", 900, lastDay: 3));
        Assert.Equal(500, late.BuyAtLeastMl, 9);
        Assert.Contains(late.Reasons, r => r.Code == "ExpiresBeforeUse");
    }

    [Fact]
    public void A_job_without_a_day_takes_only_what_never_expires()
    {
        var need = Need(500) with { On = null };
        Assert.Equal(500, Buy([need], Pack("p", 900, lastDay: 300)).BuyAtLeastMl, 9);
        Assert.Equal(0, Buy([need], Pack("p", 900, lastDay: null)).BuyAtLeastMl);
    }

    [Fact]
    public void First_expired_first_leaves_as_little_to_buy_as_any_way_of_sharing_out_the_shelf() =>
        Gen.Select(
            Gen.Select(Gen.Int[0, 6], Gen.Int[1, 5]).Array[1, 5],
            Gen.Select(Gen.Int[0, 7], Gen.Int[1, 5]).Array[0, 4]).Sample((jobs, packs) =>
        {
            var needs = jobs.Select(j => Need(j.Item2, day: j.Item1)).OrderBy(n => n.On).ToList();
            var shelf = packs.Select((p, i) => Pack($"p{i}", p.Item2, p.Item1)).OrderBy(p => p.Expires).ToList();
            var missing = Purchasing.Missing(needs, new double[needs.Count], shelf);
            Assert.Equal(LeastMissing([.. needs.Select(n => (int)n.NetMl)], [.. packs.OrderBy(p => p.Item1).Select(p => p.Item2)], needs, shelf, 0), missing, 6);
        }, iter: 300);

    [Fact]
    public void Half_a_pack_of_one_part_counts_by_the_part_that_runs_out()
    {
        var pack = Pack("p", 900, null).With([600, 100]);
        Assert.Equal(500 - 300, Buy([Need(500)], pack).BuyAtLeastMl, 9);
    }

    [Fact]
    public void Another_colour_is_another_shelf()
    {
        var bought = Buy([Need(500)], Pack("p", 900, null, Shade.Of(Clear.Id, "harbour blue")));
        Assert.Equal(500, bought.BuyAtLeastMl, 9);
    }

    [Fact]
    public void Ten_thousand_jobs_are_one_order()
    {
        var needs = Enumerable.Range(0, 10_000).Select(i => Need(1000 + i, 100, i % 300, $"Job {i}")).ToList();
        var bought = Assert.Single(Purchasing.Purchase(needs, Empty, [Clear], Currency.UsDollar, trials: 50).Shades);
        Assert.Equal(10_000, bought.Needs.Count);
        Assert.True(bought.BoughtMl >= needs.Sum(n => n.NetMl));
    }

    /// <summary>Every way of pouring the shelf into the jobs, unit by unit.</summary>
    private static double LeastMissing(int[] need, int[] left, List<ComingNeed> needs, List<Pack> packs, int job)
    {
        if (job == need.Length) return 0;
        if (need[job] == 0) return LeastMissing(need, left, needs, packs, job + 1);
        var best = need[job] + LeastMissing(need, left, needs, packs, job + 1);
        for (var p = 0; p < left.Length; p++)
        {
            if (left[p] == 0 || packs[p].IsExpired(needs[job].On!.Value)) continue;
            var amount = Math.Min(need[job], left[p]);
            for (var take = 1; take <= amount; take++)
            {
                (need[job], left[p]) = (need[job] - take, left[p] - take);
                best = Math.Min(best, LeastMissingAfter(need, left, needs, packs, job, p + 1));
                (need[job], left[p]) = (need[job] + take, left[p] + take);
            }
        }

        return best;
    }

    private static double LeastMissingAfter(int[] need, int[] left, List<ComingNeed> needs, List<Pack> packs, int job, int from)
    {
        var best = need[job] + LeastMissing(need, left, needs, packs, job + 1);
        for (var p = from; p < left.Length; p++)
        {
            if (left[p] == 0 || packs[p].IsExpired(needs[job].On!.Value)) continue;
            for (var take = 1; take <= Math.Min(need[job], left[p]); take++)
            {
                (need[job], left[p]) = (need[job] - take, left[p] - take);
                best = Math.Min(best, LeastMissingAfter(need, left, needs, packs, job, p + 1));
                (need[job], left[p]) = (need[job] + take, left[p] + take);
            }
        }

        return best;
    }
}
