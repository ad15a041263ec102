using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>The room hour by hour, from readings or from a day that swings: go, wait or no go.</summary>
internal static class QuickDay
{
    private static readonly QuickField Readings = Asks.Lines("readings", v => v.Say("readings: a logger's CSV, or a forecast line by line", "lecturas: el CSV de un registrador, o un pronóstico línea a línea"),
        v => v.Units is UnitSystem.Us ? "08:00 64 °F 55 %\n10:00 68 °F 50 %" : "08:00 18 °C 55 %\n10:00 20 °C 50 %");
    private static readonly QuickField Mean = Asks.Temperature("mean", v => v.Say("without readings: mean air temperature of the day", "sin lecturas: temperatura media del aire en el día"));
    private static readonly QuickField Humidity = Asks.Humidity("humidity", v => v.Say("relative humidity at that mean", "humedad relativa a esa media"));
    private static readonly QuickField Swing = new("swing", v => v.Say("from coolest to warmest of the day", "de lo más frío a lo más cálido del día"), v => v.Units is UnitSystem.Us ? "18F" : "10C")
    {
        Show = (v, x) => v.TemperatureDifference(x),
        Read = (f, p, e) => f.TemperatureDifference(p, e, new Bounds(0, 40, (v, x) => v.TemperatureDifference(x))),
    };
    private static readonly QuickField Warmest = Asks.Number("warmest", v => v.Say("warmest hour of the day", "hora más cálida del día"), "15", 0, 24) with { Else = "15" };
    private static readonly QuickField Coolest = Asks.Temperature("least", v => v.Say("coolest room the product allows", "sala más fría que admite el producto")) with { Finer = true, Else = "50 °F" };
    private static readonly QuickField Hottest = Asks.Temperature("most", v => v.Say("hottest room the product allows", "sala más cálida que admite el producto")) with { Finer = true, Else = "95 °F" };
    private static readonly QuickField Moistest = Asks.Humidity("mostHumidity", v => v.Say("most humidity the product allows", "humedad máxima que admite el producto")) with { Finer = true, Else = "85 %" };
    private static readonly QuickField Touch = Asks.Time("touch", v => v.Say("time until the film may be wetted", "tiempo hasta que la película se puede mojar")) with { Finer = true, Example = _ => "4h", Else = "4 h" };

    private const double MarginK = 3;

    public static readonly QuickSum Sum = new("day", Phases.Conditions, v => v.Say("Room over the day", "La sala a lo largo del día"),
        v => v.Say("In which hours of the day may one coat?", "¿En qué horas del día se puede aplicar?"),
        [Readings, Mean, Humidity, Swing, Warmest, Coolest, Hottest, Moistest, Touch], Work);

    private static QuickResult Work(QuickValues values)
    {
        if (values.Of(Coolest) >= values.Of(Hottest))
        {
            values.Refuse(Hottest, "LeastOverMost",
                v => v.Say($"The hottest room, {v.Temperature(values.Of(Hottest))}, is not above the coolest, {v.Temperature(values.Of(Coolest))}.", $"La sala más cálida, {v.Temperature(values.Of(Hottest))}, no está por encima de la más fría, {v.Temperature(values.Of(Coolest))}."),
                v => v.Say("Check both in the data sheet.", "Revise ambos en la ficha técnica."));
        }

        var (record, notes) = values.Has(Readings) ? Read(values) : (Swinging(values), []);
        if (values.Faults.Count > 0 || record is null) return new QuickResult([]);
        var product = QuickSheet.Blank with
        {
            Limits = new ProductLimits(values.Of(Coolest), values.Of(Hottest), values.Of(Moistest), MarginK),
            DryToTouch = new TimeAt(values.Of(Touch), 23),
        };
        var day = values.Has(Readings) ? RoomDay.Of(product, record, notes) : new RoomDay(HourStrip.Of(product, record, DateTime.UnixEpoch), record, notes);
        var basis = day.Basis(product);
        var go = day.Strip.Hours.Count(h => h.Verdict is Verdict.Go);
        List<QuickRow> rows = [new("goHours", v => v.Say("hours that are go", "horas en que se puede"), go, v => v.Say($"{go} of {day.Strip.Hours.Count}", $"{go} de {day.Strip.Hours.Count}"), basis)];
        if (day.Strip.Best is { } best)
        {
            rows.Insert(0, new("bestHoursS", v => v.Say("best hours", "mejores horas"), (best.To - best.From).TotalSeconds, best.Hours, basis));
            rows.Add(new("leastMarginK", v => v.Say("in them the top stays above the dew point by", "en ellas la cubierta sigue sobre el punto de rocío por"), best.LeastDewMarginC, v => v.TemperatureDifference(best.LeastDewMarginC), basis));
        }

        return new QuickResult(rows) { Reasons = day.Strip.Best is null ? [NoHour, .. notes] : notes, Day = day };
    }

    private static (RoomRecord? Record, IReadOnlyList<Reason> Notes) Read(QuickValues values)
    {
        // A typed forecast without dates is of no particular day; only its hours are shown.
        var read = LoggerText.Read(values.Word(Readings), DateTime.UnixEpoch, values.Units);
        values.Refuse(Readings, read.Faults);
        return (read.Record, read.Notes);
    }

    private static RoomRecord? Swinging(QuickValues values)
    {
        foreach (var missing in new[] { Mean, Humidity, Swing }.Where(f => !values.Has(f)))
        {
            values.Refuse(missing, "ReadingsOrSwing",
                v => v.Say($"Without readings this is needed: {missing.Label(v)}.", $"Sin lecturas hace falta: {missing.Label(v)}."),
                v => v.Say("Give it, or paste the readings of a logger.", "Escríbalo, o pegue las lecturas de un registrador."));
        }

        if (values.Faults.Count > 0) return null;
        var dewPointC = Dew.PointC(values.Of(Mean), values.Of(Humidity));
        return new DailySwing(values.Of(Mean), values.Of(Swing), values.Of(Warmest), dewPointC).From(DateTime.UnixEpoch, hours: 48);
    }

    private static readonly Reason NoHour = new("NoGoodHour", Limit.AtYourWord,
        v => v.Say("No hour of this day is go.", "Ninguna hora de este día es buena."),
        v => v.Say("Warm and dry the room, or wait for another day.", "Caliente y seque la sala, o espere a otro día."));
}
