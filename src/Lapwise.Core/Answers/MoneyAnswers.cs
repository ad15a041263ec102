using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Money;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply.Buying;

namespace Lapwise.Core.Answers;

// What money and buying say outside. Amounts are decimals in the currency named once.

/// <param name="Lines">What it costs the shop.</param>
/// <param name="Quoted">What the customer sees, before tax; adds up to the net.</param>
/// <param name="Floor">Under it the job is expected to lose money.</param>
/// <param name="Margin">Profit as a share of the price.</param>
/// <param name="Markup">Profit as a share of what it costs.</param>
/// <param name="Open">What is not settled with the customer.</param>
public sealed record PriceAnswer(
    string Currency,
    IReadOnlyList<CostAnswer> Lines,
    decimal Overhead,
    decimal Cost,
    decimal ReworkForLines,
    decimal ReworkForCallBacks,
    decimal Floor,
    decimal Margin,
    decimal Markup,
    IReadOnlyList<AmountAnswer> Quoted,
    decimal Net,
    decimal Tax,
    decimal Total,
    IReadOnlyList<StageAnswer> Stages,
    IReadOnlyList<AmountAnswer> Options,
    double? DaysWithoutKitchen,
    IReadOnlyList<ReasonAnswer> Reasons,
    IReadOnlyList<ReasonAnswer> Open);

public sealed record CostAnswer(CostKind Kind, int? Coat, string Name, string How, decimal Cost);

public sealed record AmountAnswer(string Name, decimal Amount);

public sealed record StageAnswer(string Name, decimal Share, decimal Net, decimal Tax, decimal Total);

/// <param name="ChanceAsked">Of not running short, for each product and colour.</param>
/// <param name="HeldBack">Needs for which nothing is bought yet, each with its reason.</param>
/// <param name="Cost">Left out where nothing is bought, or where prices in different currencies do not add up.</param>
/// <param name="Currency">Of <paramref name="Cost"/>.</param>
/// <param name="BesideKits">Thinner and wiping solvent, which no kit holds.</param>
/// <param name="Incomplete">Jobs of which something entered cannot be used yet, by name: what they take may be missing.</param>
/// <param name="Notes">What else of the jobs is worth knowing.</param>
public sealed record PurchaseAnswer(
    double ChanceAsked, decimal? Cost, string? Currency, IReadOnlyList<ShadePurchaseAnswer> Shades,
    IReadOnlyList<LiquidAnswer> BesideKits, IReadOnlyList<HeldBackAnswer> HeldBack, IReadOnlyList<string> Incomplete, IReadOnlyList<ReasonAnswer> Notes);

public sealed record LiquidAnswer(LiquidUse Use, string Name, int Coats, double NeedMl, bool MayBurn);

public sealed record HeldBackAnswer(IReadOnlyList<string> Jobs, string Product, string? Color, double NeedMl, ReasonAnswer Reason);

/// <param name="Color">Left out: clear.</param>
/// <param name="Enough">The chance that shelf and kits reach to the end of every job.</param>
/// <param name="Currency">Of both costs.</param>
/// <param name="CostJobByJob">The same bought for each job alone, without the shelf.</param>
public sealed record ShadePurchaseAnswer(
    string Product, string Name, string? Color, int Jobs, double NeedMl, double FromShelfMl, double BuyAtLeastMl,
    IReadOnlyList<KitAnswer> Kits, decimal Cost, string Currency, double Enough, decimal CostJobByJob, IReadOnlyList<ReasonAnswer> Reasons);

/// <summary>Turns money and buying into the shapes that leave the core.</summary>
public static class MoneyAnswering
{
    public static PriceAnswer Price(WholePrice priced, Voice voice)
    {
        var (price, terms) = (priced.Price, priced.Terms);
        return new PriceAnswer(
            price.Rates.Currency.Code,
            [.. price.Lines.Select(l => new CostAnswer(l.Kind, l.Coat, l.Name(voice), l.How(voice), l.Cost.Value))],
            price.Overhead.Value, price.Cost.Value, price.Rework.Lines.Value, price.Rework.CallBacks.Value, price.Floor.Value,
            price.Margin, price.Markup,
            [.. price.Quoted.Select(q => new AmountAnswer(q.Name(voice), q.Amount.Value))],
            price.Net.Value, price.Tax.Value, price.Total.Value,
            [.. price.Stages.Select(s => new StageAnswer(s.Name(voice), s.Share, s.Net.Value, s.Tax.Value, s.Total.Value))],
            [.. priced.Options.Select(o => new AmountAnswer(o.Option.Name, o.Difference.Value))],
            terms.DaysWithoutKitchen,
            ReasonAnswer.Of(price.Reasons, voice), ReasonAnswer.Of(terms.Open, voice));
    }

    public static PurchaseAnswer Purchase(Purchase purchase, Voice voice, IReadOnlyList<string>? incomplete = null, IReadOnlyList<Reason>? notes = null) => new(
        purchase.ChanceAsked, purchase.Cost?.Value, purchase.Cost?.Currency.Code,
        [.. purchase.Shades.Select(s => new ShadePurchaseAnswer(
            s.Product.Id, s.Product.Name, s.Shade.Color.Length > 0 ? s.Shade.Color : null, s.Needs.Count,
            Math.Round(s.NeedMl, 3), Math.Round(s.FromShelfMl, 3), Math.Round(s.BuyAtLeastMl, 3),
            [.. s.Kits.Select(k => new KitAnswer(Math.Round(k.SizeMl, 6), k.Count, k.Price))], s.Cost.Value, s.Cost.Currency.Code, s.Enough.Share, s.CostJobByJob.Value, ReasonAnswer.Of(s.Reasons, voice)))],
        [.. purchase.BesideKits.Select(l => new LiquidAnswer(l.Use, l.Name(voice), l.Coats, Math.Round(l.NeedMl, 3), l.MayBurn))],
        [.. purchase.HeldBack.Select(h => new HeldBackAnswer([.. h.Needs.Select(n => n.Job)], h.Product.Id, h.Needs[0].Shade.Color, Math.Round(h.Needs.Sum(n => n.NeedMl), 3), ReasonAnswer.Of([h.Reason], voice)[0]))],
        incomplete ?? [], ReasonAnswer.Of(notes ?? [], voice));
}
