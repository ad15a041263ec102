using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Money;

// Result records of the price. Everything in the shop's one currency; what is rounded is rounded once, by the rule of
// MoneyAmount.Rounded, and every total is a sum of rounded amounts.

[JsonConverter(typeof(CamelCaseEnumConverter<CostKind>))]
public enum CostKind { Labour, Material, Consumables, Travel }

/// <summary>One line of what the job costs the shop.</summary>
/// <param name="Coat">Place of the coat it belongs to, from 0; null: none.</param>
/// <param name="How">How it was reckoned, in numbers.</param>
public sealed record CostLine(CostKind Kind, int? Coat, Phrase Name, Phrase How, MoneyAmount Cost);

/// <summary>One line of what the customer pays, before tax.</summary>
public sealed record PriceLine(Phrase Name, MoneyAmount Amount);

/// <summary>What going wrong is expected to cost: chance times cost.</summary>
/// <param name="Lines">Coats done over because a line shows.</param>
/// <param name="CallBacks">Going back after handover.</param>
/// <param name="IsLineCounted">False: the chance of a line is not worked out, and the floor leaves it out.</param>
public sealed record ReworkRisk(MoneyAmount Lines, MoneyAmount CallBacks, bool IsLineCounted)
{
    public MoneyAmount Sum => Lines + CallBacks;
}

/// <summary>One payment; its net and tax are shares of the quote's, to the last cent.</summary>
public sealed record StagePayment(Phrase Name, decimal Share, MoneyAmount Net, MoneyAmount Tax)
{
    public MoneyAmount Total => Net + Tax;
}

/// <summary>What to charge for a job, and whether it pays.</summary>
/// <param name="Lines">What it costs the shop, line by line.</param>
/// <param name="Cost">Lines and overhead.</param>
/// <param name="Floor">Cost and what going wrong is expected to cost: under it the job is expected to lose money.</param>
/// <param name="Quoted">What the customer sees: lines, discount and signed changes; they add up to <paramref name="Net"/>.</param>
/// <param name="TaxedPart">The part of the net that the tax is on.</param>
public sealed record JobPrice(
    Rates Rates,
    IReadOnlyList<CostLine> Lines,
    MoneyAmount Overhead,
    MoneyAmount Cost,
    ReworkRisk Rework,
    MoneyAmount Floor,
    IReadOnlyList<PriceLine> Quoted,
    MoneyAmount Net,
    MoneyAmount TaxedPart,
    MoneyAmount Tax,
    IReadOnlyList<StagePayment> Stages,
    IReadOnlyList<Reason> Reasons,
    Basis Basis)
{
    public MoneyAmount Total => Net + Tax;

    /// <summary>What is left of the net after cost and risk.</summary>
    public MoneyAmount Profit => Net - Cost - Rework.Sum;

    /// <summary>
    /// Profit as a share of the price. Where the price is the one that the margin asks for it is that margin as typed, whatever
    /// rounding the price to its smallest coin made of it; else to a hundredth of a per cent.
    /// </summary>
    public decimal Margin => Net.Value > 0 && Net == AtMargin(Floor, Rates) ? Rates.Margin : Share(Profit, Net);

    /// <summary>Profit as a share of cost and risk: what is put on top. A margin of 20 % is a markup of 25 %.</summary>
    public decimal Markup => Share(Profit, Cost + Rework.Sum);

    /// <summary>The price of which the margin is left over the floor.</summary>
    internal static MoneyAmount AtMargin(MoneyAmount floor, Rates rates) => new MoneyAmount(floor.Value / (1 - rates.Margin), rates.Currency).Rounded();

    private static decimal Share(MoneyAmount profit, MoneyAmount whole) => whole.Value > 0 ? decimal.Round(profit.Value / whole.Value, 4) : 0;

    public MoneyAmount CostOf(CostKind kind) => Lines.Where(l => l.Kind == kind).Aggregate(MoneyAmount.Zero(Rates.Currency), (sum, l) => sum + l.Cost);
}

/// <summary>What pricing gave; null with every fault where the price would rest on a misreading.</summary>
public sealed record PriceRead(JobPrice? Price, IReadOnlyList<Fault> Faults);
