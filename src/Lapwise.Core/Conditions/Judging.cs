using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Conditions.Exotherm;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Conditions;

/// <summary>May I coat in this room today, and how long does the film stay open?</summary>
public static class Judging
{
    /// <param name="materials">What goes on, for the vapour it gives off; null: only the wipes give any.</param>
    public static JobConditions Judge(Job job, JobMaterials? materials = null)
    {
        var room = job.Room;
        // A room that was not read stands at NaN, and so does its dew point; the fault is already said.
        var dewPointC = double.IsNaN(room.RelativeHumidity) ? double.NaN : Dew.PointC(room.Air.Celsius, room.RelativeHumidity);
        var basis = new Basis(
            "γ = ln RH + 17.625 t / (243.04 + t); t_d = 243.04 γ / (17.625 − γ)",
            [
                new(v => v.Say("air temperature t", "temperatura del aire t"), v => v.Temperature(room.Air.Celsius)),
                new(v => v.Say("relative humidity RH", "humedad relativa RH"), v => v.Percent(room.RelativeHumidity)),
            ],
            Sources.AlduchovEskridge);
        return new JobConditions(dewPointC, basis, Beside([.. job.System.Select((coat, i) => JudgeCoat(coat, job.Tools, room, dewPointC, materials?.Coats[i]))]));
    }

    /// <summary>Coats of other tops may be rolled within the hour: where both give off vapour, each says so.</summary>
    private static IReadOnlyList<CoatConditions> Beside(IReadOnlyList<CoatConditions> coats) =>
    [
        .. coats.Select(coat =>
        {
            List<string> beside = [.. Enumerable.Range(0, coats.Count).Where(k => coat.Vapours.Count > 0 && coats[k].Vapours.Count > 0 && coat.Coat.SharesNoTop(coats[k].Coat)).Select(k => $"{k + 1}")];
            return beside.Count == 0 ? coat : coat with { Reasons = [.. coat.Reasons.Append(VapourReasons.OnTopOf(beside)).OrderBy(r => r.Limit)] };
        }),
    ];

    private static CoatConditions JudgeCoat(Coat coat, Tools tools, Room room, double dewPointC, CoatMaterial? material)
    {
        // The plan may fill any batch to the brim, so the pot life is that of the largest.
        var heat = BatchHeat.Of(coat.Product, Consumption.Of(coat, tools).LargestBatchMl, room.Material.Celsius, room.Air.Celsius);
        var (openTime, openBasis, openReasons) = Clocks.OpenTimeOf(coat, room);
        var vapours = CoatVapour.Of(coat, room, material, openTime.Seconds);
        var vapourReasons = vapours.SelectMany(v => v.Reasons).DistinctBy(r => r.Code is VapourReasons.NotAClearance ? r.Code : r.Text(Voice.Default)).Concat(CoatVapour.NotReckoned(coat, room, material) is { } missing ? [missing] : []);
        var (potLife, potBasis, potReasons) = Clocks.PotLifeOf(coat, room, heat);
        return new CoatConditions(
            coat, room.Surface.Celsius - dewPointC, DewMarginBasis(coat.Product.Limits, room, dewPointC), openTime, openBasis, potLife, potBasis,
            [.. RoomLimits.Of(coat.Product, room, dewPointC).Concat(openReasons).Concat(potReasons).Concat(vapourReasons).OrderBy(r => r.Limit)])
        {
            Ageing = BatchAgeing.Of(coat.Product, openTime, potLife),
            LargestBatch = heat,
            Vapours = vapours,
        };
    }

    private static Basis DewMarginBasis(ProductLimits limits, Room room, double dewPointC) => new(
        "m = t_s − t_d",
        [
            new(v => v.Say("surface temperature t_s", "temperatura de la superficie t_s"), v => v.Temperature(room.Surface.Celsius)),
            new(v => v.Say("dew point t_d", "punto de rocío t_d"), v => v.Temperature(dewPointC)),
            new(v => v.Say("least margin", "margen mínimo"), v => v.TemperatureDifference(limits.DewMarginC)),
        ],
        // The two rules of the trade by their figure; any other margin is the data sheet's own.
        Math.Round(limits.DewMarginC, 2) switch { 3 => Sources.Iso8502Part4, 2.78 => Sources.MilHdbk1110, _ => Sources.AsEntered });
}
