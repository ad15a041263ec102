using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Quick;

/// <summary>Two or three parts by volume and by mass, and what an opened kit still makes.</summary>
internal static class QuickMix
{
    private static readonly QuickField By = Asks.OneOf("by", v => v.Say("ratio by volume or mass", "proporción en volumen o masa"), Asks.Word("volume", "volume", "volumen"), Asks.Word("mass", "mass", "masa"));
    private static readonly QuickField A = Asks.Part("a", v => v.Say("parts of A", "partes de A")).Must;
    private static readonly QuickField B = Asks.Part("b", v => v.Say("parts of B", "partes de B")).Must;
    private static readonly QuickField C = Asks.Part("c", v => v.Say("parts of C, of a three-part product", "partes de C, de un producto de tres")).CanWait;
    private static readonly QuickField DensityA = Asks.Density("densityA", v => v.Say("density of A", "densidad de A")) with { Finer = true, Else = "1 g/mL" };
    private static readonly QuickField DensityB = Asks.Density("densityB", v => v.Say("density of B", "densidad de B")) with { Finer = true, Else = "1 g/mL" };
    private static readonly QuickField DensityC = Asks.Density("densityC", v => v.Say("density of C", "densidad de C")) with { Finer = true, Else = "1 g/mL" };
    private static readonly QuickField Total = Asks.Volume("total", v => v.Say("mix wanted", "mezcla deseada"));
    private static readonly QuickField Thinner = Asks.Share("thinner", v => v.Say("thinner, share of the mix", "diluyente, parte de la mezcla")) with { Else = "0%" };
    private static readonly QuickField LeftA = Asks.Volume("leftA", v => v.Say("A left in the kit", "A que queda en el juego"));
    private static readonly QuickField LeftB = Asks.Volume("leftB", v => v.Say("B left in the kit", "B que queda en el juego"));
    private static readonly QuickField LeftC = Asks.Volume("leftC", v => v.Say("C left in the kit", "C que queda en el juego")).CanWait;

    public static readonly QuickSum Sum = new("mix", Phases.Materials, v => v.Say("Mix", "Mezcla"),
        v => v.Say("How much of each part, and what does an opened kit still make?", "¿Cuánto de cada parte, y qué da aún un juego empezado?"),
        [By, A, B, C, DensityA, DensityB, DensityC, Total, Thinner, LeftA, LeftB, LeftC], Work);

    private static QuickResult Work(QuickValues values)
    {
        var parts = new[] { ("A", A, DensityA, LeftA), ("B", B, DensityB, LeftB), ("C", C, DensityC, LeftC) }.Where(p => values.Has(p.Item2)).ToList();
        var byMass = values.Word(By) == "mass";
        var recipe = new Recipe([.. parts.Select(p => byMass ? MixPart.ByMass(p.Item1, values.Of(p.Item2), values.Of(p.Item3)) : new MixPart(p.Item1, values.Of(p.Item2), values.Of(p.Item3)))]);
        var hasLeft = parts.All(p => values.Has(p.Item4));
        if (!values.Has(Total) && !hasLeft)
        {
            values.Refuse(Total, "TotalOrLeft", v => v.Say("Neither the mix wanted nor what is left of every part is given.", "No se da ni la mezcla deseada ni lo que queda de cada parte."),
                v => v.Say("Give the mix wanted, or how much of every part is left.", "Dé la mezcla deseada, o cuánto queda de cada parte."));
            return new QuickResult([]);
        }

        var remainder = hasLeft ? recipe.From([.. parts.Select(p => values.Of(p.Item4))]) : null;
        var mixMl = values.If(Total) is { } total ? remainder is null ? total : Math.Min(total, remainder.MixMl) : remainder!.MixMl;
        var basis = new Basis("V_i = V · p_i / Σ p; m_i = V_i · ρ_i",
            [
                .. recipe.Parts.Select(p => new BasisInput(v => v.Say($"{p.Name}, parts by volume", $"{p.Name}, partes en volumen"), v => v.Number(p.ByVolume, 4) + " × " + v.Density(p.DensityGPerMl))),
                new(v => v.Say("mix V", "mezcla V"), v => v.Volume(mixMl)),
            ], Sources.AsEntered);
        List<QuickRow> rows = [new("mixMl", v => v.Say("mix, without thinner", "mezcla, sin diluyente"), mixMl, v => v.Volume(mixMl), basis)];
        foreach (var part in recipe.Of(mixMl))
        {
            rows.Add(new($"{part.Name.ToLowerInvariant()}Ml", v => v.Say($"{part.Name} by volume", $"{part.Name} en volumen"), part.Ml, v => v.Volume(part.Ml), basis));
            rows.Add(new($"{part.Name.ToLowerInvariant()}G", v => v.Say($"{part.Name} by mass", $"{part.Name} en masa"), part.G, v => v.OnScale(part.G), basis));
        }

        if (values.Of(Thinner) is > 0 and var thinner) rows.Add(new("thinnerMl", v => v.Say("thinner", "diluyente"), mixMl * thinner, v => v.Volume(mixMl * thinner), basis));
        return new QuickResult(rows) { Reasons = [.. Short(values.If(Total), remainder)] };
    }

    private static IEnumerable<Reason> Short(double? totalMl, Remainder? remainder)
    {
        if (remainder is null) yield break;
        yield return new Reason("KitRunsOut", totalMl > remainder.MixMl ? Limit.AtYourWord : Limit.Note,
            v => v.Say($"{remainder.RunsOut} runs out first: what is left makes {v.Volume(remainder.MixMl)}.", $"Primero se acaba {remainder.RunsOut}: lo que queda da {v.Volume(remainder.MixMl)}."),
            v => v.Say("Never stretch a mix with the part that is left: off ratio it does not cure right.", "No alargue la mezcla con la parte que sobra: fuera de proporción no cura bien."));
    }
}
