using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Supply.Buying;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

/// <summary>The list for the shop, read back by poppler.</summary>
public sealed class ShoppingListTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);
    private static readonly DateOnly Day = new(2026, 11, 30);
    private static readonly IReadOnlyList<Product> Products = JobReading.ReadProducts(new JobDocument(), Samples.Library);

    private static readonly IReadOnlyList<ComingNeed> Needs =
        [.. Samples.Names.Select(Samples.Whole).SelectMany(w => Purchasing.NeedsOf(w.Job, w.Materials, w.Supply, _ => Day.AddDays(7), new SampleBoard("", Day)))];

    private static ShoppingBasis For(IReadOnlyList<ComingNeed> needs, Shelf? shelf = null)
    {
        var there = shelf ?? new Shelf([], []);
        return new ShoppingBasis(Purchasing.Purchase(needs, there, Products, Currency.UsDollar), LowStock.Levels(there, needs, Day), Products, Day);
    }

    [Theory, InlineData(true), InlineData(false)]
    public void Every_kit_to_buy_is_on_it_with_what_it_is_for_and_what_all_cost_together(bool us)
    {
        var (basis, voice) = (For(Needs), us ? Us : Metric);
        var read = new PdfRead(ShoppingList.Pdf(basis, voice));
        var kit = voice.Volumes(basis.Purchase.Shades.SelectMany(s => s.Kits).Select(k => k.SizeMl));
        Assert.True(basis.Purchase.Shades.Count(s => s.Kits.Count > 0) > 1);
        Assert.All(basis.Purchase.Shades, s => Assert.All(s.Kits, k => Assert.True(read.Says($"{k.Count} × {kit(k.SizeMl)}: {s.Product.Name}"), s.Product.Name)));
        Assert.All(Needs, n => Assert.True(read.Says(n.Job)));
        Assert.True(read.Says(voice.Money(basis.Purchase.Cost!.Value)));
        Assert.True(read.Says(voice.Date(Day)) && read.Says(voice.Date(Day.AddDays(7))));
        Assert.Equal("yes", read.Info("Tagged"));
        Assert.Empty(read.Collisions(Paper.MarginPt));
        Assert.StartsWith("<!doctype html>", ShoppingList.Html(basis, voice));
    }

    [Fact]
    public void What_may_not_be_bought_yet_and_what_the_shop_runs_low_of_stand_apart()
    {
        var shade = Shade.Of(Products[0].Id, "slate");
        var keep = Shade.Of(Products[1].Id, null);
        var basis = For([new ComingNeed("House on the hill", null, shade, 900, 100) { AwaitsBoard = new SampleBoard("", null) }], new Shelf([], [new Keep(keep, 2000)]));
        var read = new PdfRead(ShoppingList.Pdf(basis, Us));
        Assert.True(read.Says("Not to buy yet") && read.Says("House on the hill"));
        Assert.True(read.Says($"{Products[1].Name}: "));
        Assert.True(read.Says("No coming job needs a coating that may be bought yet."));
        Assert.False(read.Says("What it is for"));
    }

    [Theory, InlineData(true), InlineData(false)]
    public void Solvent_for_the_wipe_stands_beside_the_kits_with_its_caution(bool us)
    {
        var voice = us ? Us : Metric;
        var need = Needs[0] with { Wipe = new Wipe(SolventName.Acetone, 300, 600) };
        var read = new PdfRead(ShoppingList.Pdf(For([need]), voice));
        Assert.True(read.Says($"{voice.Say("acetone for the wipe", "acetona para la limpieza")}: {voice.Volume(300)}"));
        Assert.True(read.Says(BuyingWords.OfLiquids(mayBurn: true, voice)));
        Assert.False(new PdfRead(ShoppingList.Pdf(For([need with { Wipe = null }]), voice)).Says(BuyingWords.OfLiquids(mayBurn: true, voice)));
    }

    [Theory, InlineData(true), InlineData(false)]
    public void A_job_that_cannot_be_read_wholly_is_named_before_anything_is_bought(bool us)
    {
        var voice = us ? Us : Metric;
        var tooShort = voice.Say("This list may be too short.", "Esta lista puede quedarse corta.");
        var read = new PdfRead(ShoppingList.Pdf(For(Needs) with { Incomplete = ["House on the hill"] }, voice));
        Assert.True(read.Says(tooShort) && read.Says("House on the hill: "));
        Assert.False(new PdfRead(ShoppingList.Pdf(For(Needs), voice)).Says(tooShort));
    }

    [Fact]
    public void Costs_in_two_currencies_are_not_added_up()
    {
        IReadOnlyList<Product> two = [Products[0] with { Kits = [new Kit(1000, 40)] }, Products[1] with { Kits = [new Kit(1000, 40) { Currency = Currency.All.Single(c => c.Code == "EUR") }] }];
        IReadOnlyList<ComingNeed> needs = [.. two.Select(p => new ComingNeed("Kitchen", Day, Shade.Of(p.Id, null), 900, 0))];
        var purchase = Purchasing.Purchase(needs, new Shelf([], []), two, Currency.UsDollar);
        var read = new PdfRead(ShoppingList.Pdf(new ShoppingBasis(purchase, [], two, Day), Us));
        Assert.True(read.Says("40.00 USD") && read.Says("40.00 EUR"));
        Assert.False(read.Says("80.00"));
    }

    [Fact]
    public void Ten_thousand_coats_are_bought_for_on_a_few_pages()
    {
        var basis = For([.. Enumerable.Range(0, 10_000).Select(i => new ComingNeed($"Kitchen {i}", Day.AddDays(i), Shade.Of(Products[0].Id, null), 900, 0))]) with { Incomplete = [.. Enumerable.Range(0, 10_000).Select(i => $"Bar {i}")] };
        var pdf = ShoppingList.Pdf(basis, Us);
        Assert.True(pdf.Length < 200_000);
        var read = new PdfRead(pdf);
        Assert.True(read.Says("Kitchen 0") && read.Says("9800 more coats") && read.Says("9992 more"));
    }
}
