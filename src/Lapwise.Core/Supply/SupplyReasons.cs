using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Supply;

/// <summary>What speaks against measuring or buying as the tickets say, and what is worth knowing at the bench.</summary>
internal static class SupplyReasons
{
    /// <summary>Hardest first.</summary>
    public static IReadOnlyList<Reason> Of(Coat coat, Tools tools, IReadOnlyList<BatchTicket> tickets)
    {
        List<Reason> reasons = [.. tickets.Select(OffRatio).OfType<Reason>()];
        if (ThinnerUnderMark(coat, tools, tickets) is { } thinner) reasons.Add(thinner);
        if (coat.Product.StirFirst is { } stir)
        {
            reasons.Add(new Reason("StirFirst", Limit.Note, v => v.Say("Before measuring: ", "Antes de medir: ") + stir,
                v => v.Say("Stir to the bottom of each container before every batch.", "Remueva hasta el fondo de cada envase antes de cada mezcla.")));
        }

        if (coat.Product.InductionS > 0)
        {
            reasons.Add(new Reason("WaitInduction", Limit.Note,
                v => v.Say($"{coat.Product.Name} stands {Voice.Span(coat.Product.InductionS)} after mixing before it is used; its pot life runs meanwhile.", $"{coat.Product.Name} reposa {Voice.Span(coat.Product.InductionS)} tras mezclar antes de usarse; mientras tanto corre su vida de mezcla."),
                v => v.Say("Mix that much earlier, stir once more, then pour out.", "Mezcle con esa antelación, remueva otra vez y vierta.")));
        }

        if (coat.Product.Kits.Count == 0)
        {
            reasons.Add(new Reason("NoKitsListed", Limit.Note,
                v => v.Say($"No kit sizes are entered for {coat.Product.Name}: nothing to buy can be named, and the cost leaves it out.",
                    $"No se anotaron tamaños de juego para {coat.Product.Name}: no se puede decir qué comprar, y el costo no lo cuenta."),
                v => v.Say("Enter the kit sizes and prices it is sold in.", "Anote los tamaños y precios en que se vende.")));
        }

        return [.. reasons.OrderBy(r => r.Limit)];
    }

    private static Reason? OffRatio(BatchTicket ticket)
    {
        var (cup, scale) = (Math.Abs(ticket.RatioError), Math.Abs(ticket.RatioErrorByMass));
        if (ticket.CupReadsRatio && ticket.ScaleReadsRatio) return null;
        if (!ticket.CupReadsRatio && !ticket.ScaleReadsRatio)
        {
            return new Reason("RatioNotReadable", Limit.Never,
                v => v.Say($"Batch {ticket.Batch}: neither cup ({v.Percent(cup, 1)} off) nor scale ({v.Percent(scale, 1)} off) is fine enough to measure {v.Volume(ticket.WantedMl)} at the ratio; at most {v.Percent(BatchTicket.MostRatioError)} is common practice.",
                    $"Mezcla {ticket.Batch}: ni el vaso ({v.Percent(cup, 1)} de error) ni la báscula ({v.Percent(scale, 1)}) son lo bastante finos para medir {v.Volume(ticket.WantedMl)} en la proporción; lo habitual es como máximo {v.Percent(BatchTicket.MostRatioError)}."),
                v => v.Say("Use a scale with a finer step, or mix a larger batch.", "Use una báscula de paso más fino, o haga una mezcla más grande."));
        }

        return ticket.ScaleReadsRatio
            ? new Reason("WeighThisBatch", Limit.Note,
                v => v.Say($"Batch {ticket.Batch}: the cup's marks put the ratio {v.Percent(cup, 1)} off; the scale {v.Percent(scale, 1)}.", $"Mezcla {ticket.Batch}: con las marcas del vaso la proporción se desvía {v.Percent(cup, 1)}; con la báscula, {v.Percent(scale, 1)}."),
                v => v.Say("Weigh this batch; do not measure it by cup.", "Pese esta mezcla; no la mida con el vaso."))
            : new Reason("MeasureThisBatchByCup", Limit.Note,
                v => v.Say($"Batch {ticket.Batch}: the scale's steps put the ratio {v.Percent(scale, 1)} off; the cup {v.Percent(cup, 1)}.", $"Mezcla {ticket.Batch}: con los pasos de la báscula la proporción se desvía {v.Percent(scale, 1)}; con el vaso, {v.Percent(cup, 1)}."),
                v => v.Say("Measure this batch by cup; do not weigh it on this scale.", "Mida esta mezcla con el vaso; no la pese en esta báscula."));
    }

    /// <summary>A permitted share of thinner is often less than the cup's first mark.</summary>
    private static Reason? ThinnerUnderMark(Coat coat, Tools tools, IReadOnlyList<BatchTicket> tickets)
    {
        if (coat.ThinnerFraction <= 0 || coat.Product.Thinner is not { } thinner || tickets.All(t => t.ThinnerMl > 0)) return null;
        return new Reason("ThinnerUnderMark", Limit.Note,
            v => v.Say($"The thinner of a batch is less than the cup can show ({v.Volume(tools.CupStepMl)} marks) without passing the limit of {v.Percent(thinner.LimitFraction, 1)}.",
                $"El diluyente de una mezcla es menos de lo que marca el vaso (marcas de {v.Volume(tools.CupStepMl)}) sin pasar del límite de {v.Percent(thinner.LimitFraction, 1)}."),
            v => v.Say("Weigh the thinner, or draw it up in a marked syringe.", "Pese el diluyente, o mídalo con una jeringa graduada."));
    }
}
