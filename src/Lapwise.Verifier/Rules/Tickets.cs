namespace Lapwise.Verifier.Rules;

/// <summary>The parts of each batch: they add up, keep the ratio as well as they say, and never hold too much thinner.</summary>
internal static class Tickets
{
    public static void Check(CoatCase c, Findings f)
    {
        f.LookAt(Names.Tickets);
        var (product, tools, fraction) = (c.Coat.Product, c.Job.Tools, c.Coat.ThinnerFraction);
        var (mix, threeParts) = (product.Mix, product.Mix.PartsCByVolume > 0);
        foreach (var b in c.Plan.Batches)
        {
            var (cMl, cG) = (b.CMl ?? 0, b.CG ?? 0);
            f.Holds(b.AMl > 0 && b.BMl > 0 && cMl > 0 == threeParts && Math.Abs(b.AMl + b.BMl + cMl - b.VolumeMl) <= Tolerance.Ml, "PartsDoNotAddUp", c.At(b),
                v => v.Say($"{v.Number(b.AMl, 2)} mL, {v.Number(b.BMl, 2)} mL and {v.Number(cMl, 2)} mL of the parts do not make {v.Number(b.VolumeMl, 2)} mL.", $"{v.Number(b.AMl, 2)} mL, {v.Number(b.BMl, 2)} mL y {v.Number(cMl, 2)} mL de las partes no dan {v.Number(b.VolumeMl, 2)} mL."));
            Ratio("RatioErrorWrong", b, b.RatioError, FurthestOff(b.AMl, b.BMl, cMl));
            Ratio("RatioErrorByMassWrong", b, b.RatioErrorByMass, FurthestOff(b.AG / product.DensityAGPerMl, b.BG / product.DensityBGPerMl, cG / product.DensityCGPerMl));

            Mass("MassAWrong", b, b.AG, product.DensityAGPerMl, b.AMl);
            Mass("MassBWrong", b, b.BG, product.DensityBGPerMl, b.BMl);
            Mass("MassCWrong", b, cG, product.DensityCGPerMl, cMl);
            Mass("MassThinnerWrong", b, b.ThinnerG, product.Thinner?.DensityGPerMl ?? 1, b.ThinnerMl);

            f.Holds(Math.Abs(b.ThinnerMl - (b.VolumeMl * fraction)) <= tools.CupStepMl + Tolerance.Ml, "ThinnerWrong", c.At(b),
                v => v.Say($"{v.Number(b.ThinnerMl, 1)} mL of thinner; the job asks for {v.Percent(fraction, 1)} of {v.Number(b.VolumeMl, 1)} mL.", $"{v.Number(b.ThinnerMl, 1)} mL de diluyente; el trabajo pide {v.Percent(fraction, 1)} de {v.Number(b.VolumeMl, 1)} mL."));
            var limit = product.Thinner?.LimitFraction ?? 0;
            f.Holds(b.ThinnerMl <= (b.VolumeMl * limit) + Tolerance.Ml || !c.Plan.Holds, "ThinnerOverLimit", c.At(b),
                v => v.Say($"{v.Number(b.ThinnerMl, 1)} mL of thinner in {v.Number(b.VolumeMl, 1)} mL; the limit is {v.Percent(limit, 1)}.", $"{v.Number(b.ThinnerMl, 1)} mL de diluyente en {v.Number(b.VolumeMl, 1)} mL; el límite es {v.Percent(limit, 1)}."));
        }

        double FurthestOff(double a, double b, double third)
        {
            var ofB = (a / b * mix.PartsBByVolume / mix.PartsAByVolume) - 1;
            var ofC = threeParts ? (a / third * mix.PartsCByVolume / mix.PartsAByVolume) - 1 : 0;
            return Math.Abs(ofC) > Math.Abs(ofB) ? ofC : ofB;
        }

        void Ratio(string code, PlannedBatch b, double planned, double own) => f.Holds(Math.Abs(planned - own) <= Tolerance.Ratio, code, c.At(b),
            v => v.Say($"The plan says {v.Percent(planned, 2)}; the parts give {v.Percent(own, 2)}.", $"El plan dice {v.Percent(planned, 2)}; las partes dan {v.Percent(own, 2)}."));

        // Cup and scale are each rounded for themselves, for the sake of the ratio by up to a tenth or four of their steps.
        void Mass(string code, PlannedBatch b, double grams, double gramsPerMl, double ml) =>
            f.Holds(Math.Abs(grams - (ml * gramsPerMl)) <= (0.1 * ml * gramsPerMl) + (4 * ((tools.CupStepMl * gramsPerMl) + tools.ScaleStepG)), code, c.At(b),
                v => v.Say($"{v.Number(grams, 1)} g do not go with {v.Number(ml, 1)} mL.", $"{v.Number(grams, 1)} g no corresponden a {v.Number(ml, 1)} mL."));
    }
}
