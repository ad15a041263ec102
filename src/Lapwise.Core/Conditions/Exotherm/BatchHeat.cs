using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Conditions.Exotherm;

/// <summary>What its own heat does to one batch: in its bucket, and poured out flat at once.</summary>
/// <param name="Fit">The mix, and how far it misses the lives it was fitted to.</param>
public sealed record BatchHeat(FittedMix Fit, double MassG, Vessel Vessel, BatchLife InVessel, BatchLife InTray, Basis Basis)
{
    /// <summary>Seconds from the first contact of A and B, standing in its vessel.</summary>
    public double PourOutByS => InVessel.Seconds;

    /// <summary>A lined tray of 9 × 12 in; common practice, no source.</summary>
    public static readonly Vessel.Tray RollerTray = new(9 * 12 * Factors.SquareMetresPerSquareInch);

    /// <summary>
    /// Null where the data sheet gives no life of a stated mass, or where the end is hidden: then no effect of the mass is
    /// claimed, and the clock of the sheet rules.
    /// </summary>
    /// <param name="volumeMl">A and B together, above 0.</param>
    public static BatchHeat? Of(Product product, double volumeMl, double materialCelsius, double airCelsius, Vessel? vessel = null)
    {
        if (product.MassLives.Count == 0 || product.EndsBy is EndOfPotLife.Hidden) return null;
        var fit = LifeFit.Through(product.MassLives, product.MixedDensityGPerMl, product.HeatJPerG);
        var mass = volumeMl * product.MixedDensityGPerMl;
        double? hot = product.EndsBy is EndOfPotLife.Overheats ? product.HottestMixC : null;
        var stands = vessel ?? new Vessel.Bucket();
        BatchLife Run(Vessel v) => new SelfHeating(fit.Mix, mass, v.AreaM2(volumeMl), fit.LossWPerM2K).Run(materialCelsius, airCelsius, hotCelsius: hot);
        return new BatchHeat(fit, mass, stands, Run(stands), Run(RollerTray), BasisOf(fit, product, mass, stands.AreaM2(volumeMl), materialCelsius, airCelsius, hot));
    }

    private static Basis BasisOf(FittedMix fit, Product product, double massG, double areaM2, double materialCelsius, double airCelsius, double? hot) => new(
        "dα/dt = k₂₅ exp(E/R (1/298 − 1/T)) (1 − α); c dT/dt = H dα/dt − U A (T − T_a) / m; t(α = 1/√3)",
        [
            new(v => v.Say("mass m", "masa m"), v => v.Mass(massG)),
            new(v => v.Say("surface that loses heat A", "superficie que pierde calor A"), v => v.Area(areaM2)),
            new(v => v.Say("material temperature T", "temperatura del material T"), v => v.Temperature(materialCelsius)),
            new(v => v.Say("air temperature T_a", "temperatura del aire T_a"), v => v.Temperature(airCelsius)),
            .. product.MassLives.Select((l, i) => new BasisInput(
                v => v.Say("data sheet", "ficha técnica"),
                v => v.Say($"{v.Mass(l.MassG)} at {v.Temperature(l.Celsius)}: {Voice.Span(l.Seconds)} (fit misses by {v.Percent(fit.Misses[i], 1)})",
                    $"{v.Mass(l.MassG)} a {v.Temperature(l.Celsius)}: {Voice.Span(l.Seconds)} (el ajuste falla en {v.Percent(fit.Misses[i], 1)})"))),
            new(v => v.Say("activation energy E", "energía de activación E"),
                v => v.Number(fit.Mix.EnergyOverRK * 8.314462618 / 1000, 1) + " kJ/mol" + (fit.EnergyFitted ? v.Say(", fitted", ", ajustada") : v.Say(", stated default", ", valor por defecto"))),
            new(v => v.Say("heat of the mix H", "calor de la mezcla H"),
                v => v.HeatPerMass(fit.Mix.HeatJPerG) + (product.HeatJPerG is null ? v.Say(", stated default", ", valor por defecto") : "")),
            new(v => v.Say("heat capacity c", "capacidad calorífica c"), v => v.Number(Reactivity.HeatCapacityJPerGK, 1) + " J/(g·K)"),
            new(v => v.Say("heat loss U", "pérdida de calor U"), v => v.Number(fit.LossWPerM2K, 1) + " W/(m²·K)" + (fit.LossFitted ? v.Say(", fitted", ", ajustada") : v.Say(", stated default", ", valor por defecto"))),
            .. hot is { } h ? [new BasisInput(v => v.Say("or at temperature", "o al llegar a"), v => v.Temperature(h))] : Array.Empty<BasisInput>(),
        ],
        Sources.HeatBalance);

    /// <summary>What is worth saying beside a pot life that the mass shortens.</summary>
    public IEnumerable<Reason> Reasons(double clockS)
    {
        if (InVessel.Seconds < clockS)
        {
            yield return new Reason("BatchHeatsItself", Limit.Note,
                v => v.Say($"{v.Mass(MassG)} in one bucket heats itself and lives {Voice.Span(InVessel.Seconds)}, not {Voice.Span(clockS)}; left standing it would reach {v.Temperature(InVessel.PeakCelsius)}.",
                    $"{v.Mass(MassG)} en un solo cubo se calientan solos y viven {Voice.Span(InVessel.Seconds)}, no {Voice.Span(clockS)}; si se dejaran ahí llegarían a {v.Temperature(InVessel.PeakCelsius)}."),
                v => InTray.Seconds > InVessel.Seconds * 1.05
                    ? v.Say($"Mix smaller batches, or pour each one out flat at once: in a tray it lives {Voice.Span(InTray.Seconds)}.", $"Haga mezclas más pequeñas, o extiéndalas enseguida: en una bandeja viven {Voice.Span(InTray.Seconds)}.")
                    : v.Say("Mix smaller batches, of cooler material.", "Haga mezclas más pequeñas, con material más frío."));
        }

        if (Fit.WorstMiss > 0.1)
        {
            yield return new Reason("MassLivesDisagree", Limit.Note,
                v => v.Say($"The lives of the data sheet do not fit one another: the best fit misses one by {v.Percent(Fit.WorstMiss)}.", $"Los tiempos de la ficha técnica no concuerdan entre sí: el mejor ajuste falla en uno un {v.Percent(Fit.WorstMiss)}."),
                v => v.Say("Check mass, time and temperature of each; time a small batch yourself.", "Revise masa, tiempo y temperatura de cada uno; cronometre usted una mezcla pequeña."));
        }
    }
}
