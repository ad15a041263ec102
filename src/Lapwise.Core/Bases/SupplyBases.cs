using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;

namespace Lapwise.Core.Bases;

/// <summary>What kits and tickets rest on.</summary>
public static class SupplyBases
{
    public static Basis Kits(CoatSupply coat) => coat.Basis with
    {
        Formula = "F(v) = min_k (c_k + F(v − s_k))",
        Inputs = [coat.Basis.Inputs[0], .. coat.Coat.Product.Kits.Select(kit => new BasisInput(v => v.Say($"kit of {v.Volume(kit.SizeMl)}, price", $"juego de {v.Volume(kit.SizeMl)}, precio"), v => v.Number((double)kit.Price, 2)))],
    };

    public static Basis Need(CoatSupply coat) => new("V ≥ Σ V_i",
        [
            .. coat.Tickets.Select(t => new BasisInput(v => v.Say($"batch {t.Batch}", $"mezcla {t.Batch}"), v => v.Volume(t.VolumeMl))),
            new(v => v.Say("thinner of all batches", "diluyente de todas las mezclas"), v => v.Volume(coat.ThinnerMl)),
        ], Sources.AsEntered);

    public static Basis LeftOver(CoatSupply coat) => new("V_l = Σ V_k − V",
        [
            new(v => v.Say("in the kits", "en los juegos"), v => v.Volume(coat.BoughtMl ?? 0)),
            new(v => v.Say("needed", "necesario"), v => v.Volume(coat.NeedMl)),
        ], Sources.AsEntered);

    public static Basis Cost(CoatSupply coat) => new("Σ n · c",
        [.. coat.Kits.Select(k => new BasisInput(v => v.Volume(k.SizeMl), v => $"{k.Count} × {v.Number((double)k.Price, 2)}"))], Sources.AsEntered);

    public static Basis Ticket(CoatSupply coat, BatchTicket ticket, Tools tools)
    {
        var product = coat.Coat.Product;
        return new Basis("e = (A/B) / (a/b) − 1",
            [
                new(v => v.Say("the plan asks for", "el plan pide"), v => v.Volume(ticket.WantedMl)),
                new(v => v.Say("mix by volume", "mezcla en volumen"), product.Recipe.Ratio),
                new(v => v.Say("thinner", "diluyente"), v => v.Percent(coat.Coat.ThinnerFraction, 1)),
                .. product.Recipe.Parts.Select(p => new BasisInput(v => v.Say($"density of {p.Name}", $"densidad de {p.Name}"), v => v.Density(p.DensityGPerMl))),
                new(v => v.Say("marks of the cup", "marcas del vaso"), v => v.OnCup(tools.CupStepMl)),
                new(v => v.Say("steps of the scale", "pasos de la báscula"), v => v.OnScale(tools.ScaleStepG)),
            ], Sources.AsEntered);
    }
}
