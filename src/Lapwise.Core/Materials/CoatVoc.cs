using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Materials;

/// <summary>VOC of one coat as applied: its parts at the ratio, with the thinner that goes in.</summary>
internal static class CoatVoc
{
    /// <summary>Null where the sheet as entered gives no VOC.</summary>
    public static Voc? Of(Coat coat) => coat.Product.Voc.Count == 0 ? null : Voc.AsApplied(Parts(coat));

    public static IReadOnlyList<Reason> Reasons(Coat coat, Voc? voc, Aims aims)
    {
        if (aims.VocMostGPerL is not { } most) return [];
        if (voc is null)
        {
            return
            [
                new Reason("VocNotGiven", Limit.Note,
                    v => v.Say($"A limit of {v.VocOfRules(most)} is to be held; {coat.Product.Name} gives no VOC as entered.", $"Hay que respetar un límite de {v.VocOfRules(most)}; {coat.Product.Name} no da COV tal como se anotó."),
                    v => v.Say("Enter the VOC of each part from its data sheet.", "Anote el COV de cada parte de su ficha técnica.")),
            ];
        }

        return voc.LessWaterGPerL <= most ? [] :
        [
            new Reason("VocOverLimit", Limit.AtYourWord,
                v => v.Say($"As applied it has {v.VocOfRules(voc.LessWaterGPerL)} of VOC less water and exempt; the limit to hold is {v.VocOfRules(most)}.", $"Tal como se aplica tiene {v.VocOfRules(voc.LessWaterGPerL)} de COV sin agua ni exentos; el límite que hay que respetar es {v.VocOfRules(most)}."),
                v => v.Say("Thin less, or with water or an exempt solvent the product permits, or take a product with less; local rules decide.", "Diluya menos, o con agua o un disolvente exento que el producto admita, o use un producto con menos; deciden las normas locales.")),
        ];
    }

    public static Basis BasisOf(Coat coat) => new(
        "(Ws − Ww − Wec) / (Vm − Vw − Vec)",
        [
            .. Parts(coat).Select((p, i) => new BasisInput(
                v => i < coat.Product.Recipe.Parts.Count
                    ? v.Say($"part {coat.Product.Recipe.Parts[i].Name}", $"parte {coat.Product.Recipe.Parts[i].Name}")
                    : v.Say($"thinner, {coat.Product.Thinner!.Name}", $"diluyente, {coat.Product.Thinner!.Name}"),
                v => v.Say($"{v.Percent(p.VolumeMl, 1)} of the parts, {v.Voc(p.VocGPerL)}, water {v.Percent(p.WaterShare)}, exempt {v.Percent(p.ExemptShare)}",
                    $"{v.Percent(p.VolumeMl, 1)} de las partes, {v.Voc(p.VocGPerL)}, agua {v.Percent(p.WaterShare)}, exento {v.Percent(p.ExemptShare)}"))),
        ], Sources.Voc40Cfr59);

    /// <summary>For 1 mL of all parts together.</summary>
    private static IReadOnlyList<VocPart> Parts(Coat coat)
    {
        var product = coat.Product;
        List<VocPart> parts = [.. product.Recipe.Of(1).Zip(product.Voc, (part, voc) => new VocPart(part.Ml, voc.GPerL, voc.WaterShare, voc.ExemptShare))];
        if (coat.ThinnerFraction > 0 && product.Thinner is { } thinner)
        {
            parts.Add(thinner.Kind switch
            {
                ThinnerKind.Water => new VocPart(coat.ThinnerFraction, 0, WaterShare: 1),
                ThinnerKind.Exempt => new VocPart(coat.ThinnerFraction, 0, ExemptShare: 1),
                _ => new VocPart(coat.ThinnerFraction, thinner.DensityGPerMl * 1000),
            });
        }

        return parts;
    }
}
