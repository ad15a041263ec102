using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Work;

namespace Lapwise.Core.Supply;

/// <summary>Which kits to buy and what goes into each batch?</summary>
public static class Supplying
{
    public static JobSupply Supply(Job job, JobMaterials materials, JobWork work) =>
        new([.. materials.Coats.Select(material => SupplyCoat(material, job.Tools, work.Coats.FirstOrDefault(w => w.Coat == material.Coat)))]);

    private static CoatSupply SupplyCoat(CoatMaterial material, Tools tools, CoatWork? work)
    {
        var coat = material.Coat;
        IReadOnlyList<BatchTicket> tickets = [.. (work?.Batches ?? []).Where(b => b.VolumeMl > 0).Select(b => Ticketing.Ticket(coat, tools, b.Id, b.VolumeMl))];
        var needMl = Math.Max(material.NeedMl, TicketedMl(tickets, coat.Product)) + (work is null ? 0 : FreshRollers.KeepMl(work, Consumption.Of(coat, tools)));
        var kits = Kits.Cheapest(coat.Product.Kits, needMl);
        var leftOverMl = kits is null ? 0 : Math.Max(0, kits.TotalMl - needMl);

        return new CoatSupply(
            coat,
            needMl,
            Math.Max(material.ThinnerMl, tickets.Sum(t => t.ThinnerMl)),
            tickets,
            kits?.Kits ?? [],
            kits?.Cost ?? 0,
            leftOverMl,
            SupplyReasons.Of(coat, tools, tickets, work),
            BasisOf(coat.Product, tools, needMl));
    }

    /// <summary>Ratio error of the tickets, and the recurrence of the cheapest kits.</summary>
    private static Basis BasisOf(Product product, Tools tools, double needMl) => new(
        "e = (A/B) / (a/b) − 1; F(v) = min_k (c_k + F(v − s_k))",
        [
            new(v => v.Say($"need, {product.Recipe.Names(v)} together", $"necesario, {product.Recipe.Names(v)} juntos"), v => v.Volume(needMl)),
            new(v => v.Say("mix by volume", "mezcla en volumen"), product.Recipe.Ratio),
            .. product.Recipe.Parts.Select(part => new BasisInput(v => v.Say($"density of {part.Name}", $"densidad de {part.Name}"), v => v.Density(part.DensityGPerMl))),
            new(v => v.Say("marks of the cup", "marcas del vaso"), v => v.OnCup(tools.CupStepMl)),
            new(v => v.Say("steps of the scale", "pasos de la báscula"), v => v.OnScale(tools.ScaleStepG)),
            .. product.Kits.Select(kit => new BasisInput(v => v.Say($"kit of {v.Volume(kit.SizeMl)}", $"juego de {v.Volume(kit.SizeMl)}"), v => v.Number((double)kit.Price, 2))),
        ],
        Sources.ExactSearch);

    /// <summary>
    /// What the tickets take out of kits. Kits hold all parts at the mix ratio, so the part that runs out first counts,
    /// measured by cup or by scale, whichever takes more; a way that is off ratio is not used and does not count.
    /// </summary>
    private static double TicketedMl(IReadOnlyList<BatchTicket> tickets, Product product)
    {
        return product.Recipe.MixThatHolds([.. product.Recipe.Parts.Select((part, i) => tickets.Sum(t => More(t, t.Parts[i].Ml, t.Parts[i].G / part.DensityGPerMl)))]);
    }

    private static double More(BatchTicket ticket, double byCupMl, double byScaleMl) => (ticket.CupReadsRatio, ticket.ScaleReadsRatio) switch
    {
        (true, false) => byCupMl,
        (false, true) => byScaleMl,
        _ => Math.Max(byCupMl, byScaleMl),
    };
}
