using Lapwise.Core.Explain;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Quick;

/// <summary>VOC of the mix as applied.</summary>
internal static class QuickVoc
{
    private static readonly QuickField A = Asks.Part("a", v => v.Say("parts of A by volume", "partes de A en volumen")) with { Else = "1" };
    private static readonly QuickField B = Asks.Part("b", v => v.Say("parts of B by volume", "partes de B en volumen"));
    private static readonly QuickField VocA = Asks.Voc("vocA", v => v.Say("VOC in A, all of it counted", "COV en A, contando todo")).Must;
    private static readonly QuickField VocB = Asks.Voc("vocB", v => v.Say("VOC in B", "COV en B")) with { Else = "0 g/L" };
    private static readonly QuickField WaterA = Asks.Share("waterA", v => v.Say("water in A by volume", "agua en A en volumen")) with { Finer = true, Else = "0%" };
    private static readonly QuickField WaterB = Asks.Share("waterB", v => v.Say("water in B by volume", "agua en B en volumen")) with { Finer = true, Else = "0%" };
    private static readonly QuickField ExemptA = Asks.Share("exemptA", v => v.Say("exempt solvent in A by volume", "disolvente exento en A en volumen")) with { Finer = true, Else = "0%" };
    private static readonly QuickField ExemptB = Asks.Share("exemptB", v => v.Say("exempt solvent in B by volume", "disolvente exento en B en volumen")) with { Finer = true, Else = "0%" };
    private static readonly QuickField Thinner = Asks.Share("thinner", v => v.Say("thinner, share of A and B", "diluyente, parte de A y B")) with { Else = "0%" };
    private static readonly QuickField ThinnerIs = Asks.OneOf("thinnerIs", v => v.Say("what the thinner is", "qué es el diluyente"), Asks.Word("water", "water", "agua"), Asks.Word("solvent", "solvent", "disolvente"), Asks.Word("exempt", "exempt solvent", "disolvente exento"));
    private static readonly QuickField VocThinner = Asks.Voc("vocThinner", v => v.Say("VOC of a solvent thinner", "COV de un diluyente con disolvente")) with { Finer = true, Else = "850 g/L" };
    private static readonly QuickField Cap = Asks.Voc("limit", v => v.Say("limit to hold, less water and exempt", "límite que hay que respetar, sin agua ni exentos")).CanWait;

    public static readonly QuickSum Sum = new("voc", Phases.Materials, v => v.Say("VOC", "COV"),
        v => v.Say("How much VOC is in the mix as it goes on?", "¿Cuánto COV lleva la mezcla al aplicarse?"),
        [A, B, VocA, VocB, WaterA, WaterB, ExemptA, ExemptB, Thinner, ThinnerIs, VocThinner, Cap], Work);

    private static QuickResult Work(QuickValues values)
    {
        foreach (var (water, exempt) in new[] { (WaterA, ExemptA), (WaterB, ExemptB) }.Where(p => values.Of(p.Item1) + values.Of(p.Item2) >= 1))
        {
            values.Refuse(water, "NothingButWater",
                v => v.Say($"Water and exempt solvent come to {v.Percent(values.Of(water) + values.Of(exempt))}: nothing of the coating is left.", $"El agua y el disolvente exento suman {v.Percent(values.Of(water) + values.Of(exempt))}: no queda nada del producto."),
                v => v.Say("Check the shares by volume.", "Revise las partes en volumen."));
        }

        if (values.Faults.Count > 0) return new QuickResult([]);
        var (a, b) = (values.Of(A), values.Or(B, 0));
        var thinner = values.Of(Thinner) * (a + b);
        List<VocPart> parts = [new(a, values.Of(VocA) * 1000, values.Of(WaterA), values.Of(ExemptA))];
        if (b > 0) parts.Add(new(b, values.Of(VocB) * 1000, values.Of(WaterB), values.Of(ExemptB)));
        if (thinner > 0)
        {
            parts.Add(values.Word(ThinnerIs) switch
            {
                "water" => new VocPart(thinner, 0, WaterShare: 1),
                "exempt" => new VocPart(thinner, 0, ExemptShare: 1),
                _ => new VocPart(thinner, values.Of(VocThinner) * 1000),
            });
        }

        var voc = Voc.AsApplied(parts);
        var basis = new Basis("(Ws − Ww − Wec) / (Vm − Vw − Vec)",
            [
                .. parts.Select((p, i) => new BasisInput(v => i == 0 ? "A" : i == 1 && b > 0 ? "B" : v.Say("thinner", "diluyente"),
                    v => v.Say($"{v.Number(p.VolumeMl, 3)} parts, {v.Voc(p.VocGPerL)}, water {v.Percent(p.WaterShare)}, exempt {v.Percent(p.ExemptShare)}", $"{v.Number(p.VolumeMl, 3)} partes, {v.Voc(p.VocGPerL)}, agua {v.Percent(p.WaterShare)}, exento {v.Percent(p.ExemptShare)}"))),
            ], Sources.Voc40Cfr59);
        return new QuickResult(
        [
            new("actualGPerL", v => v.Say("as applied", "tal como se aplica"), voc.ActualGPerL, v => v.VocOfRules(voc.ActualGPerL), basis),
            new("lessWaterGPerL", v => v.Say("less water and exempt", "sin agua ni exentos"), voc.LessWaterGPerL, v => v.VocOfRules(voc.LessWaterGPerL), basis),
        ])
        {
            Reasons = values.If(Cap) is { } cap && voc.LessWaterGPerL > cap * 1000 ? [Over(voc, cap * 1000)] : [],
        };
    }

    private static Reason Over(Voc voc, double limitGPerL) => new("VocOverLimit", Limit.AtYourWord,
        v => v.Say($"{v.Voc(voc.LessWaterGPerL)} less water and exempt is over the limit of {v.Voc(limitGPerL)}.", $"{v.Voc(voc.LessWaterGPerL)} sin agua ni exentos supera el límite de {v.Voc(limitGPerL)}."),
        v => v.Say("Thin less, or with water or an exempt solvent the product permits; local rules may be stricter still.", "Diluya menos, o con agua o un disolvente exento que el producto admita; las normas locales pueden ser aún más estrictas."));
}
