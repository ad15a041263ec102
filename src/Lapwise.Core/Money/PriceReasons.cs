using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Money;

/// <summary>What speaks against a price, and what it still rests on.</summary>
internal static class PriceReasons
{
    public static IEnumerable<Reason> Of(Rates rates, Agreement agreement, MoneyAmount net, MoneyAmount floor, ReworkRisk rework)
    {
        if (net < floor)
        {
            yield return new Reason("PriceUnderFloor", Limit.AtYourWord,
                v => v.Say($"{v.Money(net)} before tax is {v.Money(floor - net)} under the floor of {v.Money(floor)}: with the rework to be expected this job loses money.",
                    $"{v.Money(net)} sin impuesto queda {v.Money(floor - net)} por debajo del mínimo de {v.Money(floor)}: con el retrabajo que cabe esperar, este trabajo pierde dinero."),
                v => v.Say("Take less off, lower the cost, or lower the chance of a line.", "Descuente menos, baje el coste o baje la probabilidad de una línea."));
        }

        if (!rework.IsLineCounted)
        {
            yield return new Reason("LineChanceNotCounted", Limit.Note,
                v => v.Say("The chance of a line is not worked out for every coat; the floor leaves it out there.", "La probabilidad de una línea no está calculada para todas las capas; ahí el mínimo no la cuenta."),
                v => v.Say("Work it out before giving a price.", "Calcúlela antes de dar un precio."));
        }

        if (rates.Assumed.Count > 0)
        {
            yield return new Reason("RatesAssumed", Limit.Note,
                v => v.Say($"Not your own figures yet, but a place to begin: {string.Join("; ", rates.Assumed.Select(a => a(v)))}.", $"Aún no son cifras suyas, sino un punto de partida: {string.Join("; ", rates.Assumed.Select(a => a(v)))}."),
                v => v.Say("Enter your own rates.", "Anote sus propias tarifas."));
        }

        foreach (var change in agreement.Changes.Where(c => c.SignedOn is null))
        {
            yield return new Reason("ChangeNotSigned", Limit.Note,
                v => v.Say($"Change \"{change.What}\", {v.Money(change.Price)}, is not signed and not in the price.", $"El cambio «{change.What}», {v.Money(change.Price)}, no está firmado y no está en el precio."),
                v => v.Say("Have it signed before doing it.", "Haga que lo firmen antes de hacerlo."));
        }
    }

    /// <summary>What a missed window costs, where it puts a step in.</summary>
    public static IEnumerable<Reason> Inserted(IReadOnlyList<LabourStep> labour, Rates rates)
    {
        foreach (var coat in labour.Where(s => s.IsInserted).GroupBy(s => s.Coat))
        {
            var cost = coat.Aggregate(MoneyAmount.Zero(rates.Currency), (sum, step) => sum + Labour.Cost(step, rates));
            var withOverhead = (cost * (1 + rates.Overhead)).Rounded();
            yield return new Reason("MissedWindowCosts", Limit.Note,
                v => v.Say($"A latest recoat that is missed puts in {string.Join(", ", coat.Select(s => s.Name(v)))}: it costs you {v.Money(withOverhead)}, with overhead, and is in this price.",
                    $"Un repintado máximo que no se cumple añade {string.Join(", ", coat.Select(s => s.Name(v)))}: le cuesta {v.Money(withOverhead)}, con gastos generales, y está en este precio."),
                v => v.Say("Work longer that day, warm or cool the room, or take a product with a wider window: then it is not needed.", "Trabaje más ese día, caliente o enfríe la sala, o elija un producto con ventana más ancha: así no hace falta."));
        }
    }
}
