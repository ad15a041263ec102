using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core;

/// <summary>Another way to have the job, planned and priced like the job itself.</summary>
/// <param name="Difference">What it adds to the total with tax; below zero: what it takes off.</param>
public sealed record PricedOption(OtherWay Option, JobPrice Price, MoneyAmount Difference);

/// <summary>A job with its price, its options and what is still open with the customer.</summary>
public sealed record WholePrice(WholeJob Whole, Rates Rates, Agreement Agreement, IReadOnlyList<Chance?> LineChances, JobPrice Price, IReadOnlyList<PricedOption> Options)
{
    /// <summary>Trials for the chance of a line that the floor counts with.</summary>
    public const int Trials = 500;

    /// <summary>Prices a job that is worked already; null with the faults where the price would rest on a misreading.</summary>
    /// <param name="lineChances">For each coat; null: not worked out.</param>
    public static (WholePrice? Priced, IReadOnlyList<Fault> Faults) Of(JobDocument document, WholeJob whole, IReadOnlyList<ProductDocument> library, RatesDocument rates, IReadOnlyList<Chance?> lineChances) =>
        Slices.AtOnce(OfAsync(document, whole, library, rates, lineChances, Effort.AtOnce));

    /// <summary>The same in slices: each option is planned like a job of its own.</summary>
    /// <exception cref="OperationCanceledException">The pause stopped it.</exception>
    public static async ValueTask<(WholePrice? Priced, IReadOnlyList<Fault> Faults)> OfAsync(
        JobDocument document, WholeJob whole, IReadOnlyList<ProductDocument> library, RatesDocument rates, IReadOnlyList<Chance?> lineChances, Effort effort)
    {
        var ratesRead = RatesReading.Read(rates, document.Units);
        if (ratesRead.Rates is not { } read) return (null, [.. ratesRead.Faults.Select(InRates)]);
        var agreed = AgreementReading.Read(document, read.Currency);
        if (agreed.Faults.Count > 0) return (null, agreed.Faults);

        var price = Priced(whole, read, agreed.Agreement, lineChances);
        if (price.Price is not { } own) return (null, price.Faults);

        var options = new List<PricedOption>();
        foreach (var option in agreed.Agreement.Options)
        {
            var (other, faults) = await WholeJob.FromAsync(option.Document, library, effort);
            if (other is null || faults.Count > 0) return (null, [.. faults.Select(f => f with { Path = $"{option.Path}: {f.Path}" })]);
            var with = Priced(other, read, agreed.Agreement, await ChancesOf(other, effort.Pause));
            if (with.Price is not { } priced) return (null, with.Faults);
            options.Add(new PricedOption(option, priced, priced.Total - own.Total));
        }

        return (new WholePrice(whole, read, agreed.Agreement, lineChances, own, options), []);
    }

    /// <summary>The chance of a line of each coat, by trials from a fixed seed.</summary>
    /// <exception cref="OperationCanceledException">The pause stopped it.</exception>
    public static async ValueTask<IReadOnlyList<Chance?>> ChancesOf(WholeJob whole, Pause pause)
    {
        var chances = new List<Chance?>();
        foreach (var coat in whole.Work.Coats)
            chances.Add((await Risking.OfAsync(coat, whole.Job, Trials, Risking.UsualSeed, Spreads.Usual, pause)).Line);
        return chances;
    }

    /// <summary>The same at once.</summary>
    public static IReadOnlyList<Chance?> ChancesOf(WholeJob whole) =>
        Slices.AtOnce(ChancesOf(whole, Effort.AtOnce.Pause));

    /// <summary>What the customer lives with meanwhile, and what is still open.</summary>
    public Terms Terms => Terms.Of(Whole.Job, Whole.Timeline, Agreement);

    /// <summary>The price with the changes counted as signed up to the given one, for whoever is to sign it; the last: with all of them.</summary>
    /// <param name="counted">How many of the changes count; what is signed already counts always.</param>
    /// <returns>Null where the price would fall below zero.</returns>
    public JobPrice? WithChanges(int counted) =>
        Priced(Whole, Rates, Agreement with { Changes = [.. Agreement.Changes.Select((c, i) => i < counted ? c with { SignedOn = c.SignedOn ?? DateOnly.MinValue } : c)] }, LineChances).Price;

    private static PriceRead Priced(WholeJob whole, Rates rates, Agreement agreement, IReadOnlyList<Chance?> lineChances) =>
        Pricing.Price(whole.Supply, Labour.Of(whole.Timeline), Labour.Visits(whole.Timeline), rates, agreement, lineChances);

    private static Fault InRates(Fault fault) => fault with { Path = "rates: " + fault.Path };
}
