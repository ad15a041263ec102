using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Quick;

/// <summary>A wait of the data sheet in a room that is warmer, cooler or swings with the day.</summary>
internal static class QuickCure
{
    private static readonly QuickField Time = Asks.Time("time", v => v.Say("wait of the data sheet", "espera de la ficha")).Must with { Example = _ => "4h" };
    private static readonly QuickField At = Asks.Temperature("at", v => v.Say("its temperature", "su temperatura")).Must;
    private static readonly QuickField Time2 = Asks.Time("time2", v => v.Say("the same wait at a second temperature", "la misma espera a otra temperatura")) with { Finer = true, Example = _ => "2h" };
    private static readonly QuickField At2 = Asks.Temperature("at2", v => v.Say("the second temperature", "la otra temperatura")).CanWait;
    private static readonly QuickField Room = Asks.Temperature("room", v => v.Say("mean temperature of the top", "temperatura media de la cubierta")).Must;
    private static readonly QuickField Swing = new("swing", v => v.Say("from coolest to warmest of the day", "de lo más frío a lo más cálido del día"), v => v.Units is UnitSystem.Us ? "18F" : "10C") { Show = (v, x) => v.TemperatureDifference(x), Read = (f, p, e) => f.TemperatureDifference(p, e, new Quantities.Bounds(0, 40, (v, x) => v.TemperatureDifference(x))) };
    private static readonly QuickField Start = Asks.Number("start", v => v.Say("hour of the day the coat ends", "hora del día en que acaba la capa"), "14", 0, 24) with { Finer = true, Else = "14" };
    private static readonly QuickField Warmest = Asks.Number("warmest", v => v.Say("warmest hour of the day", "hora más cálida del día"), "15", 0, 24) with { Finer = true, Else = "15" };

    public static readonly QuickSum Sum = new("cure", Phases.Conditions, v => v.Say("Drying and cure", "Secado y curado"),
        v => v.Say("When is it dry, recoatable or cured in this room?", "¿Cuándo está seco, repintable o curado en esta sala?"),
        [Time, At, Time2, At2, Room, Swing, Start, Warmest], Work);

    private static QuickResult Work(QuickValues values)
    {
        var points = QuickSheet.Points(values, Time, At, Time2, At2);
        if (values.Faults.Count > 0) return new QuickResult([]);
        var law = Conditions.TemperatureLaw.Through(points)!;
        var (mean, swing) = (values.Of(Room), values.Or(Swing, 0));
        var day = new DailySwing(mean, swing, values.Of(Warmest), -20);
        var course = swing > 0
            ? day.From(DateTime.UnixEpoch.AddHours(values.Of(Start)), 24 * 60).Readings.Select(r => new TemperatureAt(r.ElapsedS, r.AirC)).ToList()
            : [new TemperatureAt(0, mean)];
        var seconds = EquivalentAge.Until(law, course, holdsLast: swing <= 0);
        var basis = new Basis("∫ dt / t(T(t)) = 1",
            [
                .. points.Select(p => new BasisInput(v => v.Say("data sheet", "ficha técnica"), v => v.Say($"{Voice.Span(p.Seconds)} at {v.Temperature(p.Celsius)}", $"{Voice.Span(p.Seconds)} a {v.Temperature(p.Celsius)}"))),
                new(v => v.Say("top", "cubierta"), v => v.Say($"{v.Temperature(mean - (swing / 2))} to {v.Temperature(mean + (swing / 2))}", $"de {v.Temperature(mean - (swing / 2))} a {v.Temperature(mean + (swing / 2))}")),
            ], law is Conditions.TemperatureLaw.ThroughTwoPoints ? Sources.Arrhenius : Sources.Ufgs09971);
        if (seconds is not { } wait)
        {
            values.Refuse(Time, "LongerThanKnown", v => v.Say("It would take more than 60 days in this room.", "Tardaría más de 60 días en esta sala."), v => v.Say("Warm the room.", "Caliente la sala."));
            return new QuickResult([]);
        }

        return new QuickResult([new("waitS", v => v.Say("in this room", "en esta sala"), wait, _ => Voice.Span(wait), basis)])
        {
            Reasons = Conditions.TemperatureLaw.Contradict(points) ? [Contradicts] : [],
            Curve = swing <= 0 ? null : DryingCurve.Of(v => v.Say("The wait through the day's temperature", "La espera según la temperatura del día"), law, course, wait),
        };
    }

    private static readonly Reason Contradicts = new("SheetContradicts", Limit.Note,
        v => v.Say("The longer wait is at the hotter temperature; only the shorter was used, half for each 10 °C up.", "La espera más larga es a la temperatura más alta; solo se usó la más corta, la mitad por cada 10 °C más."),
        v => v.Say("Check the two points.", "Revise los dos puntos."));
}
