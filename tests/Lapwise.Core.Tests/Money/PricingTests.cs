using System.Numerics;
using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Tests.Money;

public sealed class PricingTests
{
    private static readonly Currency Dollar = Currency.UsDollar;
    private static readonly Agreement Plain = new("", 2, MoneyAmount.Zero(Dollar), [], new Household(false, false, true), new SampleBoard("", null), null, []);

    private static MoneyAmount Usd(decimal value) => new(value, Dollar);

    private static Rates Rates(decimal margin = 0.2m, decimal tax = 0.0725m, Taxed taxed = Taxed.Everything, params (string Name, decimal Share)[] stages) => new(
        "", Dollar, Usd(30), 0.25m, 0.05m, MaterialCharge.WholeKits, Usd(20), Usd(40), Usd(25), 0.15m, margin, tax, taxed, Usd(0),
        stages.Length > 0 ? [.. stages.Select(s => new Stage(_ => s.Name, s.Share))] : [new Stage(_ => "all", 1)], 30, new CallBacks(0, 0, null), []);

    private static JobSupply Supply(params decimal[] kitCosts) =>
        new([.. kitCosts.Select(c => new CoatSupply(Invented.Coat, 900, 0, [], [new KitCount(1000, 1, c)], c, 100, [], new Basis("", [], Sources.Trade)))]);

    private static readonly IReadOnlyList<LabourStep> TwoHours = [new(null, _ => "mask", 3600), new(0, _ => "coat", 3600)];

    private static JobPrice Price(JobSupply supply, Rates rates, Agreement? agreement = null, params Chance?[] chances)
    {
        var read = Pricing.Price(supply, TwoHours, supply.Coats.Count + 2, rates, agreement ?? Plain, chances.Length > 0 ? chances : [.. supply.Coats.Select(_ => (Chance?)new Chance(0, 100))]);
        Assert.Empty(read.Faults);
        return read.Price!;
    }

    /// <summary>Worked by hand: 2 h · 37.50 = 75; kit 84 · 1.05 = 88.20; consumables 60; travel 50; direct 273.20; overhead 40.98;
    /// cost 314.18; call-back (112.50 + 25) · 1.15 · 1/20 = 7.90625, up to 7.91; floor 322.09; price 322.09 / 0.8 = 402.6125.</summary>
    [Fact]
    public void A_price_worked_by_hand()
    {
        var price = Price(Supply(84), Rates());
        Assert.Equal((75m, 88.20m, 60m, 50m), (price.CostOf(CostKind.Labour).Value, price.CostOf(CostKind.Material).Value, price.CostOf(CostKind.Consumables).Value, price.CostOf(CostKind.Travel).Value));
        Assert.Equal((40.98m, 314.18m, 7.91m, 322.09m), (price.Overhead.Value, price.Cost.Value, price.Rework.Sum.Value, price.Floor.Value));
        Assert.Equal((402.61m, 29.19m, 431.80m), (price.Net.Value, price.Tax.Value, price.Total.Value));
    }

    /// <summary>Two people for 30 min are 1 h · 37.50; with 15 % overhead 43.125, rounded to 43.13.</summary>
    [Fact]
    public void A_step_that_a_missed_window_puts_in_is_said_with_what_it_costs()
    {
        Assert.DoesNotContain(Price(Supply(84), Rates()).Reasons, r => r.Code == "MissedWindowCosts");
        LabourStep sanded = new(1, _ => "sand between coats", 3600) { IsInserted = true };
        var price = Pricing.Price(Supply(84, 84), [.. TwoHours, sanded], 4, Rates(), Plain, [null, null]).Price!;
        Assert.Contains("43.13", Assert.Single(price.Reasons, r => r.Code == "MissedWindowCosts").Text(Voice.Default));
        Assert.Equal(112.50m, price.CostOf(CostKind.Labour).Value);
    }

    [Fact]
    public void A_margin_of_a_fifth_is_a_markup_of_a_quarter()
    {
        var price = Price(Supply(84), Rates(margin: 0.2m));
        Assert.Equal((0.2m, 0.25m), (price.Margin, price.Markup));
    }

    /// <summary>The price is rounded to the cent; of 585.62 the rounding would make 45.0002 % of 45 %.</summary>
    [Theory]
    [InlineData(0.45)]
    [InlineData(0.33333)]
    public void A_margin_typed_is_said_as_typed_where_the_price_is_made_by_it(double typed)
    {
        var price = Price(Supply(84), Rates(margin: (decimal)typed));
        Assert.NotEqual((decimal)typed, price.Profit.Value / price.Net.Value);
        Assert.Equal((decimal)typed, price.Margin);
    }

    [Fact]
    public void A_price_made_otherwise_says_the_margin_that_it_leaves()
    {
        var least = Price(Supply(84), Rates() with { MinimumCharge = Usd(900) });
        Assert.Equal(decimal.Round((900 - 322.09m) / 900, 4), least.Margin);
        Assert.Equal(decimal.Round((402.61m - 100 - 322.09m) / 302.61m, 4), Price(Supply(84), Rates(), Plain with { Discount = Usd(100) }).Margin);
    }

    [Fact]
    public void The_minimum_charge_is_the_least_and_a_discount_under_the_floor_is_said()
    {
        Assert.Equal(900, Price(Supply(84), Rates() with { MinimumCharge = Usd(900) }).Net.Value);
        var under = Price(Supply(84), Rates(), Plain with { Discount = Usd(100) });
        var reason = Assert.Single(under.Reasons, r => r.Code == "PriceUnderFloor");
        Assert.Equal(Limit.AtYourWord, reason.Limit);
        Assert.Contains("19.48 USD", reason.Text(Voice.Default), StringComparison.Ordinal); // 322.09 − 302.61
    }

    [Fact]
    public void A_discount_past_the_price_is_a_fault() =>
        Assert.Equal("PriceBelowZero", Assert.Single(Pricing.Price(Supply(84), TwoHours, 3, Rates(), Plain with { Discount = Usd(9999) }, []).Faults).Code);

    [Fact]
    public void Only_signed_changes_count()
    {
        AgreedChange Change(DateOnly? signed) => new("one more shelf", Usd(80), signed);
        var (open, signed) = (Price(Supply(84), Rates(), Plain with { Changes = [Change(null)] }), Price(Supply(84), Rates(), Plain with { Changes = [Change(new DateOnly(2026, 11, 25))] }));
        Assert.Equal(80, (signed.Net - open.Net).Value);
        Assert.Contains(open.Reasons, r => r.Code == "ChangeNotSigned");
    }

    [Fact]
    public void The_floor_rises_with_the_chance_of_a_line_and_with_every_call_back()
    {
        var sure = Price(Supply(84), Rates());
        // The coat done over: 37.50 + 88.20 + 20 + 25 of travel, with 15 % overhead, at 1 in 10.
        Assert.Equal(sure.Floor.Value + decimal.Round((37.50m + 88.20m + 20 + 25) * 1.15m * 0.1m + 0.005m, 2), Price(Supply(84), Rates(), null, new Chance(10, 100)).Floor.Value);
        Assert.True(Price(Supply(84), Rates() with { CallBacks = new CallBacks(10, 5, null) }).Floor > sure.Floor);
        Assert.True(Price(Supply(84), Rates() with { CallBacks = new CallBacks(200, 0, null) }).Floor < sure.Floor);
        Assert.Contains(Price(Supply(84), Rates(), null, (Chance?)null).Reasons, r => r.Code == "LineChanceNotCounted");
    }

    [Fact]
    public void Two_currencies_are_a_fault_at_the_kit()
    {
        Assert.True(Currency.TryOf("EUR", out var euro));
        var coat = Invented.Coat with { Product = Invented.Clear with { Kits = [new Kit(1000, 84) { Currency = euro }] } };
        var supply = new JobSupply([Supply(84).Coats[0] with { Coat = coat }]);
        var fault = Assert.Single(Pricing.Price(supply, TwoHours, supply.Coats.Count + 2, Rates(), Plain, []).Faults);
        Assert.Equal(("clear: kits[0].price", "CurrencyMixed"), (fault.Path, fault.Code));
    }

    private static readonly Gen<Currency> AnyCurrency = Gen.Int[0, 3].Select(i => Currency.TryOf(new[] { "USD", "JPY", "KWD", "CHF" }[i], out var c) ? c : Dollar);

    private static readonly Gen<(JobSupply Supply, List<LabourStep> Labour, Rates Rates, Agreement Agreement, Chance?[] Chances)> AnyQuote =
        from currency in AnyCurrency
        from kits in Gen.Decimal[0, 2000].Array[0, 4]
        from hours in Gen.Double[0, 30].Array[0, 6]
        from shares in Gen.Select(Gen.Decimal[0, 2], Gen.Decimal[0, 0.5m], Gen.Decimal[0, 1], Gen.Decimal[0, 0.9m], Gen.Decimal[0, 0.35m])
        from money in Gen.Decimal[0, 300].Array[5]
        from cuts in Gen.Int[1, 99].Array[0, 5]
        from changes in Gen.Decimal[0, 200].Array[0, 3]
        from onMaterial in Gen.Bool
        from chance in Gen.Int[0, 100]
        select Quote(currency, kits, hours, shares, money, cuts, changes, onMaterial, chance);

    private static (JobSupply, List<LabourStep>, Rates, Agreement, Chance?[]) Quote(
        Currency currency, decimal[] kits, double[] hours, (decimal Burden, decimal Waste, decimal Overhead, decimal Margin, decimal Tax) shares, decimal[] money, int[] cuts, decimal[] changes, bool onMaterial, int chance)
    {
        // Cuts of a hundred give stages that come to a whole.
        var ends = cuts.Distinct().Order().Append(100).ToList();
        var stages = ends.Select((e, i) => new Stage(_ => $"stage {i}", (e - (i == 0 ? 0 : ends[i - 1])) / 100m)).ToList();
        MoneyAmount M(int i) => new(money[i], currency);
        var rates = new Rates("", currency, M(0), shares.Burden, shares.Waste, MaterialCharge.WholeKits, M(1), M(2), M(3), shares.Overhead, shares.Margin, shares.Tax,
            onMaterial ? Taxed.MaterialOnly : Taxed.Everything, M(4), stages, 30, new CallBacks(0, 0, null), []);
        var agreement = Plain with { Discount = MoneyAmount.Zero(currency), Changes = [.. changes.Select(c => new AgreedChange("change", new MoneyAmount(c, currency).Rounded(), new DateOnly(2026, 1, 1)))] };
        return (Supply(kits), [.. hours.Select((h, i) => new LabourStep(i < kits.Length ? i : null, _ => "work", h * 3600))], rates, agreement, [.. kits.Select(_ => (Chance?)new Chance(chance, 100))]);
    }

    /// <summary>
    /// A hundred thousand quotes: every sum worked again in whole coins (BigInteger, no decimals) from the lines alone.
    /// </summary>
    [Fact]
    public void Cents_agree_to_the_last_between_lines_net_tax_and_stages() => AnyQuote.Sample(q =>
    {
        var price = Pricing.Price(q.Supply, q.Labour, q.Supply.Coats.Count + 2, q.Rates, q.Agreement, q.Chances).Price!;
        var currency = q.Rates.Currency;
        BigInteger Coins(MoneyAmount amount)
        {
            var coins = amount.Value / currency.Step;
            Assert.Equal(decimal.Truncate(coins), coins); // nothing smaller than a coin anywhere
            return (BigInteger)coins;
        }

        BigInteger All(IEnumerable<MoneyAmount> amounts) => amounts.Aggregate(BigInteger.Zero, (sum, a) => sum + Coins(a));

        Assert.Equal(Coins(price.Net), All(price.Quoted.Select(l => l.Amount)));
        Assert.Equal(Coins(price.Total), Coins(price.Net) + Coins(price.Tax));
        Assert.Equal(Coins(price.Net), All(price.Stages.Select(s => s.Net)));
        Assert.Equal(Coins(price.Tax), All(price.Stages.Select(s => s.Tax)));
        Assert.Equal(Coins(price.Total), All(price.Stages.Select(s => s.Total)));
        Assert.Equal(Coins(price.Cost), All(price.Lines.Select(l => l.Cost)) + Coins(price.Overhead));
        Assert.Equal(Coins(price.Floor), Coins(price.Cost) + Coins(price.Rework.Sum));
        // The tax is the rate on its base, off by no more than half a coin; each stage off its share by less than one.
        Assert.True(Math.Abs(price.Tax.Value - (price.TaxedPart.Value * q.Rates.Tax)) <= currency.Step / 2);
        Assert.All(price.Stages, s => Assert.True(Math.Abs(s.Net.Value - (price.Net.Value * s.Share)) < currency.Step));
        Assert.True(price.Net >= q.Rates.MinimumCharge.Rounded());
    }, iter: 100_000);
}
