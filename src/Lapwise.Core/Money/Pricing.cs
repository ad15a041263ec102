using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Money;

/// <summary>What do I charge, and does it pay?</summary>
public static class Pricing
{
    private const decimal CallBackHours = 3;

    /// <summary>
    /// Cost = (labour + material + consumables + travel) · (1 + overhead); price = (cost + expected rework) / (1 − margin),
    /// never under the minimum charge; then signed changes, discount and tax.
    /// </summary>
    /// <param name="labour">Every step that is paid.</param>
    /// <param name="visits">Drives to the house, unless the agreement says otherwise.</param>
    /// <param name="lineChances">For each coat the chance that a line shows; null: not worked out, and the floor says so.</param>
    public static PriceRead Price(JobSupply supply, IReadOnlyList<LabourStep> labour, int visits, Rates rates, Agreement agreement, IReadOnlyList<Chance?> lineChances)
    {
        var faults = Mixed(supply, rates.Currency).ToList();
        if (faults.Count > 0) return new PriceRead(null, faults);

        IReadOnlyList<CostLine> lines = [.. Lines(supply, labour, agreement.Visits ?? visits, rates)];
        var direct = Sum(lines.Select(l => l.Cost), rates.Currency);
        var overhead = (direct * rates.Overhead).Rounded();
        var cost = direct + overhead;
        var rework = Rework(lines, rates, lineChances);
        var floor = cost + rework.Sum;

        var list = MoneyAmount.Larger(JobPrice.AtMargin(floor, rates), rates.MinimumCharge.Rounded());
        IReadOnlyList<PriceLine> quoted = [.. Quoted(supply, lines, list), .. Changes(agreement)];
        var net = Sum(quoted.Select(q => q.Amount), rates.Currency);
        if (net.Value < 0) return new PriceRead(null, [Negative(net)]);

        var taxed = rates.Taxed == Taxed.Everything ? net : MaterialPart(net, lines, direct);
        var tax = (taxed * rates.Tax).Rounded();
        return new PriceRead(
            new JobPrice(
                rates, lines, overhead, cost, rework, floor, quoted, net, taxed, tax, Stages(rates, net, tax),
                [.. PriceReasons.Of(rates, agreement, net, floor, rework), .. PriceReasons.Inserted(labour, rates)],
                BasisOf(rates, cost, rework)),
            []);
    }

    private static IEnumerable<CostLine> Lines(JobSupply supply, IReadOnlyList<LabourStep> labour, int visits, Rates rates)
    {
        foreach (var step in labour)
        {
            yield return new CostLine(CostKind.Labour, step.Coat, step.Name, v => $"{Voice.Span(step.PersonS)} × {v.Money(rates.LabourPerHour)}/h", Labour.Cost(step, rates));
        }

        for (var i = 0; i < supply.Coats.Count; i++)
        {
            yield return Material(supply.Coats[i], i, rates);
            yield return new CostLine(CostKind.Consumables, i, v => v.Say("consumables of the coat", "consumibles de la capa"), v => v.Say("as entered", "según lo anotado"), rates.ConsumablesPerCoat.Rounded());
        }

        yield return new CostLine(CostKind.Consumables, null, v => v.Say("consumables of the job", "consumibles del trabajo"), v => v.Say("as entered", "según lo anotado"), rates.ConsumablesPerJob.Rounded());
        yield return new CostLine(CostKind.Travel, null, v => v.Say("travel", "desplazamientos"), v => $"{visits} × {v.Money(rates.TravelPerVisit)}", (rates.TravelPerVisit * visits).Rounded());
    }

    private static CostLine Material(CoatSupply coat, int i, Rates rates)
    {
        var kits = new MoneyAmount(coat.CostTotal, rates.Currency);
        var share = rates.MaterialCharge == MaterialCharge.WholeKits || coat.BoughtMl is not > 0 ? 1 : Math.Min(1, (decimal)(coat.NeedMl / coat.BoughtMl.Value));
        return new CostLine(CostKind.Material, i, coat.Coat.Title,
            v => v.Say($"{v.Percent((double)share)} of {v.Money(kits)} in kits, and {v.Percent((double)rates.Waste)} waste", $"{v.Percent((double)share)} de {v.Money(kits)} en juegos, y {v.Percent((double)rates.Waste)} de merma"),
            (kits * share * (1 + rates.Waste)).Rounded());
    }

    /// <summary>A coat with a line is sanded and done over: its hours, its material and its consumables again, and a visit.</summary>
    private static ReworkRisk Rework(IReadOnlyList<CostLine> lines, Rates rates, IReadOnlyList<Chance?> lineChances)
    {
        var zero = MoneyAmount.Zero(rates.Currency);
        var over = zero;
        for (var i = 0; i < lineChances.Count; i++)
        {
            if (lineChances[i] is not { } chance) continue;
            var coat = Sum(lines.Where(l => l.Coat == i).Select(l => l.Cost), rates.Currency) + rates.TravelPerVisit;
            over += coat * (1 + rates.Overhead) * ((decimal)chance.Times / chance.Trials);
        }

        var back = rates.CallBacks.CostEach ?? ((rates.LabourPerHour * CallBackHours) + rates.TravelPerVisit) * (1 + rates.Overhead);
        return new ReworkRisk(over.RoundedUp(), (back * rates.CallBacks.Chance).RoundedUp(), lineChances.Count > 0 && lineChances.All(c => c is not null));
    }

    /// <summary>The list price in the customer's words: what surrounds the coats, and each coat with its material; in proportion to cost.</summary>
    private static IEnumerable<PriceLine> Quoted(JobSupply supply, IReadOnlyList<CostLine> lines, MoneyAmount list)
    {
        var names = new List<Phrase> { v => v.Say("Protecting, preparing and handing over, with travel", "Proteger, preparar y entregar, con desplazamientos") };
        names.AddRange(supply.Coats.Select<CoatSupply, Phrase>((c, i) => v => v.Say($"Coat {i + 1}: {c.Coat.Title(v)}", $"Capa {i + 1}: {c.Coat.Title(v)}")));
        var weights = names.Select((_, i) => lines.Where(l => (l.Coat ?? -1) == i - 1).Sum(l => l.Cost.Value)).ToList();
        if (weights.Sum() == 0) weights[0] = 1;
        return list.Split(weights).Zip(names, (amount, name) => new PriceLine(name, amount));
    }

    private static IEnumerable<PriceLine> Changes(Agreement agreement)
    {
        foreach (var change in agreement.Changes.Where(c => c.SignedOn is not null)) yield return new PriceLine(v => v.Say($"Change: {change.What}", $"Cambio: {change.What}"), change.Price);
        if (agreement.Discount.Value != 0) yield return new PriceLine(v => v.Say("Discount", "Descuento"), agreement.Discount * -1);
    }

    private static MoneyAmount MaterialPart(MoneyAmount net, IReadOnlyList<CostLine> lines, MoneyAmount direct)
    {
        var material = Sum(lines.Where(l => l.Kind == CostKind.Material).Select(l => l.Cost), net.Currency);
        return direct.Value == 0 ? MoneyAmount.Zero(net.Currency) : net.Split([material.Value, direct.Value - material.Value])[0];
    }

    private static IReadOnlyList<StagePayment> Stages(Rates rates, MoneyAmount net, MoneyAmount tax)
    {
        IReadOnlyList<decimal> shares = [.. rates.Stages.Select(s => s.Share)];
        return [.. rates.Stages.Zip(net.Split(shares), tax.Split(shares)).Select(s => new StagePayment(s.First.Name, s.First.Share, s.Second, s.Third))];
    }

    private static IEnumerable<Fault> Mixed(JobSupply supply, Currency currency)
    {
        foreach (var product in supply.Coats.Select(c => c.Coat.Product).DistinctBy(p => p.Id, StringComparer.Ordinal))
        {
            for (var k = 0; k < product.Kits.Count; k++)
            {
                if (product.Kits[k].Currency is not { } other || other == currency) continue;
                var why = MoneyReading.Mixed(other, currency);
                yield return new Fault($"{product.Id}: kits[{k}].price", why.Code, why.Text, why.Cure);
            }
        }
    }

    private static Fault Negative(MoneyAmount net) => new("agreement.discount", "PriceBelowZero",
        v => v.Say($"Discount and changes bring the price to {v.Money(net)}.", $"El descuento y los cambios dejan el precio en {v.Money(net)}."),
        v => v.Say("Take less off.", "Descuente menos."));

    private static MoneyAmount Sum(IEnumerable<MoneyAmount> amounts, Currency currency) => amounts.Aggregate(MoneyAmount.Zero(currency), (sum, a) => sum + a);

    private static Basis BasisOf(Rates rates, MoneyAmount cost, ReworkRisk rework) => new(
        "p = (c + r) / (1 − m); u = m / (1 − m)",
        [
            new(v => v.Say("c, cost with overhead", "c, coste con gastos generales"), v => v.Money(cost)),
            new(v => v.Say("r, expected rework", "r, retrabajo esperado"), v => v.Money(rework.Sum)),
            new(v => v.Say("m, margin on the price", "m, margen sobre el precio"), v => v.Percent((double)rates.Margin, 2)),
            new(v => v.Say("u, markup on the cost", "u, recargo sobre el coste"), v => v.Percent((double)(rates.Margin / (1 - rates.Margin)), 2)),
            new(v => v.Say("rounding", "redondeo"), v => v.Say(
                $"each line to {rates.Currency.Step} {rates.Currency}, half a step away from zero; totals are sums of lines; stages by largest remainders",
                $"cada línea a {rates.Currency.Step} {rates.Currency}, medio paso hacia fuera de cero; los totales son sumas de líneas; los pagos por restos mayores")),
        ],
        Sources.AsEntered);
}
