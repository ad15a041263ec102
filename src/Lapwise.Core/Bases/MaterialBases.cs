using Lapwise.Core.Explain;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Bases;

/// <summary>What the volumes and films of one coat rest on.</summary>
public static class MaterialBases
{
    public static Basis Need(CoatMaterial coat) => new("V_need = V_net + Σ V_loss",
        [
            new(v => v.Say("net V_net", "neto V_net"), v => v.Volume(coat.NetMl)),
            .. coat.Losses.Select(l => new BasisInput(v => Say(l.Kind, v), v => v.Volume(l.Ml))),
        ], Sources.FilmSpread);

    public static Basis Net(CoatMaterial coat) => coat.Basis;

    public static Basis Loss(CoatMaterial coat) => new("V_loss = n_people (roller + tray) + n_batches · cup + edges",
        [
            .. coat.Losses.Select(l => new BasisInput(v => Say(l.Kind, v), v => v.Volume(l.Ml))),
            new(v => v.Say("batches counted with", "mezclas contadas"), v => v.Number(coat.Batches, 0)),
            .. coat.Basis.Inputs.Skip(4),
        ], Sources.Trade);

    public static Basis Thinner(CoatMaterial coat) => new("V_thinner = f · V_need",
        [
            new(v => v.Say("thinner f, share of A and B", "diluyente f, parte de A y B"), v => v.Percent(coat.Coat.ThinnerFraction, 1)),
            new(v => v.Say("need V_need", "necesario V_need"), v => v.Volume(coat.NeedMl)),
        ], Sources.AsEntered);

    public static Basis DryFilm(CoatMaterial coat) => new("DFT = WFT · VS / (1 + f)",
        [
            new(v => v.Say("wet film WFT", "película húmeda WFT"), v => v.Film(coat.Coat.WetFilm.Micrometres)),
            new(v => v.Say("volume solids VS", "sólidos en volumen VS"), v => v.Percent(coat.Coat.Product.VolumeSolids, 1)),
            new(v => v.Say("thinner f", "diluyente f"), v => v.Percent(coat.Coat.ThinnerFraction, 1)),
        ], Sources.FilmSpread);

    /// <summary>The ratio by volume: as entered, or from the masses through the densities.</summary>
    public static Basis Mix(CoatMaterial coat)
    {
        var product = coat.Coat.Product;
        return product.Mix.EnteredBy is Jobs.MixBasis.Volume
            ? new Basis("a : b", [new(v => v.Say("entered by", "anotada por"), v => v.Say("volume", "volumen"))], Sources.AsEntered)
            : new Basis("a : b = (m_a / ρ_a) : (m_b / ρ_b)",
                [
                    new(v => v.Say("entered by", "anotada por"), v => v.Say("mass", "masa")),
                    new(v => v.Say("density of A", "densidad de A"), v => v.Density(product.DensityAGPerMl)),
                    new(v => v.Say("density of B", "densidad de B"), v => v.Density(product.DensityBGPerMl)),
                ], Sources.AsEntered);
    }

    public static string Say(LossKind kind, Voice v) => kind switch
    {
        LossKind.RollerCharge => v.Say("roller", "rodillo"),
        LossKind.TrayResidue => v.Say("tray", "bandeja"),
        LossKind.CupResidue => v.Say("cups", "vasos"),
        LossKind.EdgePass => v.Say("edges", "cantos"),
        LossKind.RunOff => v.Say("run-off", "escurrido"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
