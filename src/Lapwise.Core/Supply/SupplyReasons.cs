using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Work;

namespace Lapwise.Core.Supply;

/// <summary>What speaks against measuring or buying as the tickets say, and what is worth knowing at the bench.</summary>
internal static class SupplyReasons
{
    /// <summary>Hardest first.</summary>
    public static IReadOnlyList<Reason> Of(Coat coat, Tools tools, IReadOnlyList<BatchTicket> tickets, CoatWork? work)
    {
        List<Reason> reasons = [.. tickets.Select(OffRatio).OfType<Reason>()];
        if (ThinnerCoarseOnCup(tools, tickets) is { } thinner) reasons.Add(thinner);
        if (RollersFresh(work, Consumption.Of(coat, tools)) is { } rollers) reasons.Add(rollers);
        if (coat.Product.BeforeMeasuring is { } before)
        {
            reasons.Add(new Reason("StirFirst", Limit.Note, before,
                v => v.Say("Stir to the bottom of each container before every batch.", "Remueva hasta el fondo de cada envase antes de cada mezcla.")));
        }

        if (coat.Product.InductionS > 0)
        {
            reasons.Add(new Reason("WaitInduction", Limit.Note,
                v => v.Say($"{coat.Product.Name} stands {Voice.Span(coat.Product.InductionS)} after mixing before it is used; its pot life runs meanwhile.", $"{coat.Product.Name} reposa {Voice.Span(coat.Product.InductionS)} tras mezclar antes de usarse; mientras tanto corre su vida de mezcla."),
                v => v.Say("The clock of the plan counts it: nothing is used before. Stir once more, then pour out.", "El reloj del plan lo cuenta: nada se usa antes. Remueva otra vez y vierta.")));
        }

        if (coat.Product.Kits.Count == 0)
        {
            reasons.Add(new Reason("NoKitsListed", Limit.Note,
                v => v.Say($"No kit sizes are entered for {coat.Product.Name}: nothing to buy can be named, and the cost leaves it out.",
                    $"No se anotaron tamaños de juego para {coat.Product.Name}: no se puede decir qué comprar, y el coste no lo cuenta."),
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

    /// <summary>The permitted share of thinner of a small batch often falls between the cup's marks, or under the first of them.</summary>
    private static Reason? ThinnerCoarseOnCup(Tools tools, IReadOnlyList<BatchTicket> tickets)
    {
        if (tickets.FirstOrDefault(t => !t.CupReadsThinner) is not { } coarse) return null;
        return new Reason("ThinnerCoarseOnCup", Limit.Note,
            v => v.Say($"Batch {coarse.Batch} wants {v.OnSyringe(coarse.ThinnerWantedMl)} of thinner; the cup, marked every {v.OnCup(tools.CupStepMl)}, cannot show it without passing the limit or missing it by more than {v.Percent(BatchTicket.MostThinnerError)}.",
                $"La mezcla {coarse.Batch} pide {v.OnSyringe(coarse.ThinnerWantedMl)} de diluyente; el vaso, marcado cada {v.OnCup(tools.CupStepMl)}, no lo puede mostrar sin pasar el límite o desviarse más del {v.Percent(BatchTicket.MostThinnerError)}."),
            v => coarse.ScaleReadsThinner
                ? v.Say("Weigh the thinner of every batch, or draw it up in a marked syringe.", "Pese el diluyente de cada mezcla, o mídalo con una jeringa graduada.")
                : v.Say("Draw the thinner of every batch up in a marked syringe; the scale is too coarse for it.", "Mida el diluyente de cada mezcla con una jeringa graduada; la báscula es demasiado gruesa para eso."));
    }

    private static Reason? RollersFresh(CoatWork? work, Consumption takes)
    {
        if (work is null || FreshRollers.Before(work) is not { Count: > 0 } fresh) return null;
        var moreMl = FreshRollers.KeepMl(work, takes);
        return new Reason("FreshRollerNeeded", Limit.Note,
            v => v.Say($"The first mix in roller and tray is past its time before the coat is done: with {(fresh.Count == 1 ? "batch" : "batches")} {v.List(fresh)} fresh ones are taken, which keep {v.Volume(moreMl)} more. The kits count with it; the batches do not.",
                $"La primera mezcla del rodillo y la bandeja pasa de su tiempo antes de acabar la capa: con {(fresh.Count == 1 ? "la mezcla" : "las mezclas")} {v.List(fresh)} se usan nuevos, que retienen {v.Volume(moreMl)} más. Los juegos lo cuentan; las mezclas no."),
            v => v.Say("Have clean covers and liners at hand, and mix so much more there where the container takes it.", "Tenga a mano fundas y forros limpios, y prepare ahí esa cantidad de más si cabe en el recipiente."));
    }
}
