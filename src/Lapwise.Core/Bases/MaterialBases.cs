using Lapwise.Core.Explain;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Bases;

/// <summary>What the volumes and films of one coat rest on.</summary>
public static class MaterialBases
{
    public static Basis Need(CoatMaterial coat) => new("V = V_n + Σ V_l",
        [
            new(v => v.Say("net V_n", "neto V_n"), v => v.Volume(coat.NetMl)),
            .. coat.Losses.Select(l => new BasisInput(v => Say(l.Kind, v), v => v.Volume(l.Ml))),
        ], Sources.FilmSpread);

    public static Basis Net(CoatMaterial coat) => coat.Basis;

    public static Basis Loss(CoatMaterial coat) => new("V_l = Σ V_i",
        [
            .. coat.Losses.Select(l => new BasisInput(v => Say(l.Kind, v), v => v.Volume(l.Ml))),
            new(v => v.Say("batches counted with", "mezclas contadas"), v => v.Number(coat.Batches, 0)),
        ], Sources.Trade);

    public static Basis Thinner(CoatMaterial coat) => new("V_f = f · V",
        [
            new(v => v.Say("thinner f, share of A and B", "diluyente f, parte de A y B"), v => v.Percent(coat.Coat.ThinnerFraction, 1)),
            new(v => v.Say("need V", "necesario V"), v => v.Volume(coat.NeedMl)),
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
        var byMass = product.Mix.EnteredBy is Jobs.MixBasis.Mass;
        return new(byMass ? "v = m / ρ" : "v",
            [
                new(v => v.Say("entered by", "anotada por"), v => byMass ? v.Say("mass", "masa") : v.Say("volume", "volumen")),
                .. product.Recipe.Parts.Select(p => new BasisInput(v => v.Say($"{p.Name}, parts by volume", $"{p.Name}, partes en volumen"), v => $"{v.Number(p.ByVolume, 4)}, {v.Density(p.DensityGPerMl)}")),
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
