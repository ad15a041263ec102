using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;

namespace Lapwise.Core.Bases;

/// <summary>What the numbers of the shelf rest on: the log, and what the jobs take.</summary>
public static class ShelfBases
{
    /// <summary>How much is there of each shade, and which are low.</summary>
    public static Basis Levels(IReadOnlyList<StockLevel> levels, IReadOnlyList<Pack> packs) => new("V = Σ min_i (V_i / p_i)",
        [
            .. packs.Select(p => new BasisInput(v => p.Id, v => v.Say($"makes {v.Volume(p.UsableMl)} at the mix ratio", $"da {v.Volume(p.UsableMl)} en la proporción de mezcla"))),
            .. levels.Select(l => new BasisInput(v => v.Say($"{l.Shade.Product} {l.Shade.Color}: to keep, asked for", $"{l.Shade.Product} {l.Shade.Color}: por guardar, pedido"), v => $"{v.Volume(l.KeepMl)}, {v.Volume(l.ComingMl)}")),
        ], Sources.AsEntered);

    /// <summary>What is left in the packs.</summary>
    public static Basis Packs(IReadOnlyList<Pack> packs) => new("V_left = V_in − Σ V_out",
        [
            .. packs.Select(p => new BasisInput(_ => p.Id, v => v.Say("as it came in ", "al entrar ") + v.Volume(p.SizeMl) + ": " + string.Join(", ", p.Parts.Select(x => $"{x.Name} {v.Percent(x.Share, 1)}")))),
            new(v => v.Say("taken and counted", "usado y medido"), v => v.Say("as the log has it", "según el registro")),
        ], Sources.AsEntered);

    /// <summary>What to buy of one shade.</summary>
    public static Basis Purchase(ShadePurchaseAnswer shade, double chanceAsked) => new("min Σ n c; P(V_shelf + Σ n s ≥ V) ≥ p",
        [
            new(v => v.Say("the jobs take V", "los trabajos llevan V"), v => v.Volume(shade.NeedMl)),
            new(v => v.Say("the shelf gives V_shelf", "el estante da V_estante"), v => v.Volume(shade.FromShelfMl)),
            new(v => v.Say("to buy at least, for the chance asked", "por comprar al menos, para la probabilidad pedida"), v => $"{v.Volume(shade.BuyAtLeastMl)}, {v.Percent(chanceAsked, 1)}"),
            .. shade.Kits.Select(k => new BasisInput(v => v.Say($"kit of {v.Volume(k.SizeMl)}", $"juego de {v.Volume(k.SizeMl)}"), v => $"{k.Count} × {v.Number((double)k.Price, 2)}")),
        ], Sources.ExactSearch);
}
