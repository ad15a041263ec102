using Lapwise.Core.Jobs;

namespace Lapwise.Verifier.Rules;

/// <summary>
/// Each section is rolled from one batch, after it is mixed and wetted out before its pot life ends; each batch holds
/// what its sections take and what the tools keep back, and no more than may be mixed at one time. Roller and tray are charged
/// from the first batch, once for each who rolls. A person's batches are mixed in the order of their use, and what grows hot in
/// its cup is not mixed ahead by one who rolls alone.
/// </summary>
internal static class Batches
{
    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Batches);
        var byId = c.Plan.Batches.DistinctBy(b => b.Id).ToDictionary(b => b.Id, StringComparer.Ordinal);
        f.Holds(byId.Count == c.Plan.Batches.Count, "BatchTwice", c.Place, v => v.Say("Two batches have the same id.", "Dos mezclas tienen el mismo id."));
        foreach (var s in c.Plan.Sections)
        {
            if (!f.Holds(byId.TryGetValue(s.Batch, out var batch), "BatchUnknown", c.At(s), v => v.Say($"There is no batch {s.Batch}.", $"No hay mezcla {s.Batch}."))) continue;
            f.Holds(s.StartS >= batch!.MixEndS + c.Coat.Product.InductionS - Tolerance.S, "UsedBeforeMixed", c.At(s),
                v => v.Say($"It starts {v.Number(batch.MixEndS + c.Coat.Product.InductionS - s.StartS, 1)} s before batch {batch.Id} is mixed and has stood.", $"Empieza {v.Number(batch.MixEndS + c.Coat.Product.InductionS - s.StartS, 1)} s antes de que la mezcla {batch.Id} esté hecha y reposada."));
            f.Holds(s.WetEndS <= batch.UseByS + Tolerance.S || !c.Plan.Holds, "BatchOutlivesPot", c.At(s),
                v => v.Say($"It is wetted out {v.Number(s.WetEndS - batch.UseByS, 1)} s after batch {batch.Id} must be used up.", $"Se moja {v.Number(s.WetEndS - batch.UseByS, 1)} s después del límite de la mezcla {batch.Id}."));
        }

        Ahead(c, f);
        var spreadMlPerM2 = c.Coat.WetFilm.Micrometres / (1 + c.Coat.ThinnerFraction);
        var largestMl = Math.Min(c.Job.Tools.LargestBatchMl / (1 + c.Coat.ThinnerFraction), c.Coat.Product.LargestBatchMl ?? double.PositiveInfinity);
        var first = c.Plan.Sections.MinBy(s => s.StartS)?.Batch;
        foreach (var b in c.Plan.Batches)
        {
            var netMl = c.Plan.Sections.Where(s => s.Batch == b.Id).Sum(s => s.FilmM2 * spreadMlPerM2);
            f.Holds(netMl > 0, "BatchForNothing", c.At(b), v => v.Say("No section is rolled from it.", "Ninguna sección se aplica con ella."));
            f.Holds(Math.Abs(b.NetMl - netMl) <= 0.001 + (netMl * 1e-6), "BatchNetWrong", c.At(b),
                v => v.Say($"The plan says {v.Volume(b.NetMl)} go on; its sections take {v.Volume(netMl)}.", $"El plan dice que se aplican {v.Volume(b.NetMl)}; sus secciones toman {v.Volume(netMl)}."));
            var wantedMl = netMl + KeptBackMl(c, b, b.Id == first);
            f.Holds(b.VolumeMl >= wantedMl - 0.001 - (wantedMl * 1e-6), "BatchTooSmall", c.At(b),
                v => v.Say($"{v.Volume(b.VolumeMl)} are mixed; its sections and the tools take {v.Volume(wantedMl)}.", $"Se mezclan {v.Volume(b.VolumeMl)}; sus secciones y las herramientas toman {v.Volume(wantedMl)}."));
            // Less than a roller takes up cannot be measured in its ratio.
            var mostMl = Math.Max(wantedMl, Math.Min(c.Job.Tools.RollerChargeMl / (1 + c.Coat.ThinnerFraction), largestMl));
            f.Holds(b.VolumeMl <= mostMl + Math.Max(mostMl / 10, 4 * c.Job.Tools.CupStepMl) + Tolerance.Ml, "BatchMoreThanWanted", c.At(b),
                v => v.Say($"{v.Volume(b.VolumeMl)} are mixed; its sections and the tools take {v.Volume(wantedMl)}, and marks round up by a tenth or four steps at most.", $"Se mezclan {v.Volume(b.VolumeMl)}; sus secciones y las herramientas toman {v.Volume(wantedMl)}, y las marcas redondean hacia arriba una décima o cuatro pasos como máximo."));
            f.Holds(b.VolumeMl <= largestMl + (3 * c.Job.Tools.CupStepMl) || !c.Plan.Holds, "BatchTooLarge", c.At(b),
                v => v.Say($"{v.Volume(b.VolumeMl)} are mixed; the largest batch is {v.Volume(largestMl)}.", $"Se mezclan {v.Volume(b.VolumeMl)}; la mezcla más grande es de {v.Volume(largestMl)}."));
            f.Holds(Math.Abs(b.UseByS - b.MixStartS - c.Plan.PotLifeS) <= Tolerance.S, "UseByWrong", c.At(b),
                v => v.Say($"It must be used up {v.Number(b.UseByS - b.MixStartS, 1)} s after mixing begins; the pot life is {v.Number(c.Plan.PotLifeS, 1)} s.", $"Debe gastarse {v.Number(b.UseByS - b.MixStartS, 1)} s tras empezar a mezclar; la vida es de {v.Number(c.Plan.PotLifeS, 1)} s."));
            if (!c.Crew.TryGetValue(b.MixedBy, out var mixer)) continue;
            var mixS = b.MixEndS - b.MixStartS;
            f.Holds(b.MixStartS >= -Tolerance.S && mixS >= mixer.Pace.MixS - Tolerance.S && mixS <= mixer.Pace.MixS + Tolerance.RoundedUpS, "MixTimeWrong", c.At(b),
                v => v.Say($"Mixing is given {v.Number(mixS, 1)} s; {b.MixedBy} takes {v.Number(mixer.Pace.MixS, 1)} s.", $"Se dan {v.Number(mixS, 1)} s para mezclar; {b.MixedBy} tarda {v.Number(mixer.Pace.MixS, 1)} s."));
        }
    }

    private static void Ahead(CoatCase c, Findings f)
    {
        var isAlone = c.Plan.Sections.Select(s => s.Person).Distinct(StringComparer.Ordinal).Count() == 1;
        foreach (var b in c.Plan.Batches)
        {
            var firstS = FirstUseS(b);
            f.Holds(!c.Plan.Batches.Any(other => other.MixedBy == b.MixedBy && other.MixStartS > b.MixStartS && FirstUseS(other) < firstS), "MixedOutOfOrder", c.At(b),
                v => v.Say("A batch that is used sooner is mixed after it.", "Una mezcla que se usa antes se prepara después de ella."));
            f.Holds(!isAlone || !c.Coat.Product.HeatsItself || !c.Plan.Sections.Any(s => s.Person == b.MixedBy && s.StartS >= b.MixEndS && s.StartS < firstS), "HotMixStands", c.At(b),
                v => v.Say("It grows hot in its cup, and another batch is rolled first.", "Se calienta en su vaso, y antes se aplica otra mezcla."));
        }

        double FirstUseS(PlannedBatch b) => c.Plan.Sections.Where(s => s.Batch == b.Id).Select(s => s.StartS).DefaultIfEmpty(double.PositiveInfinity).Min();
    }

    /// <summary>
    /// A and B that roughness, edges, cup and, once for each who rolls, roller and tray take of a batch. What they keep is
    /// thinned, of which only a part was A and B.
    /// </summary>
    private static double KeptBackMl(CoatCase c, PlannedBatch batch, bool isFirst)
    {
        var (tools, thinned) = (c.Job.Tools, 1 + c.Coat.ThinnerFraction);
        var isPoured = c.Coat.Product.Method is ApplicationMethod.Poured;
        var ml = tools.CupResidueMl;
        foreach (var s in c.Plan.Sections.Where(s => s.Batch == batch.Id))
        {
            var edgeM2 = isPoured ? s.EdgeM * tools.RunOffWidthM : (s.FilmM2 - s.AreaM2) * tools.EdgeLossFraction;
            ml += (c.Coat.RoughnessUm / 2 * s.FilmM2) + (c.Coat.WetFilm.Micrometres * edgeM2);
        }

        var rollers = isFirst && !isPoured ? c.Plan.Sections.Select(s => s.Person).Distinct(StringComparer.Ordinal).Count() : 0;
        return (ml + (rollers * (tools.RollerChargeMl + tools.TrayResidueMl))) / thinned;
    }
}
