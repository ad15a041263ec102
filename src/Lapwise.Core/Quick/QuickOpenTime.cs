using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>Open time in a room, from the data sheet's points, with when to lap a test board.</summary>
internal static class QuickOpenTime
{
    private static readonly QuickField Time = Asks.Time("time", v => v.Say("open time of the data sheet", "tiempo abierto de la ficha")).Must with { Example = _ => "11min" };
    private static readonly QuickField At = Asks.Temperature("at", v => v.Say("its temperature", "su temperatura")).Must;
    private static readonly QuickField Time2 = Asks.Time("time2", v => v.Say("second open time", "segundo tiempo abierto")) with { Finer = true, Example = _ => "7min" };
    private static readonly QuickField At2 = Asks.Temperature("at2", v => v.Say("its temperature", "su temperatura")).CanWait;
    private static readonly QuickField Surface = Asks.Temperature("surface", v => v.Say("surface temperature today", "temperatura de la superficie hoy")).Must;
    private static readonly QuickField Air = Asks.Temperature("air", v => v.Say("air temperature; left out: the surface's", "temperatura del aire; sin ella, la de la superficie")).CanWait;
    private static readonly QuickField Humidity = Asks.Humidity("humidity", v => v.Say("relative humidity", "humedad relativa")) with { Else = "50%" };
    private static readonly QuickField Movement = Asks.OneOf("movement", v => v.Say("air movement", "movimiento del aire"), Asks.Word("still", "still", "quieto"), Asks.Word("slight", "slight", "ligero"), Asks.Word("moving", "moving: fan or vents", "fuerte: ventilador"));
    private static readonly QuickField Evaporation = Asks.Share("evaporation", v => v.Say("share of evaporation; left out: no effect of the air is claimed", "parte de evaporación; sin ella no se cuenta el aire")).CanWait;
    private static readonly QuickField Carrier = Asks.OneOf("carrier", v => v.Say("what leaves the film", "qué sale de la película"), Asks.Word("water", "water", "agua"), Asks.Word("solvent", "solvent", "disolvente")).CanWait;
    private static readonly QuickField Solids = Asks.Share("solids", v => v.Say("volume solids", "sólidos en volumen")) with { Finer = true, Else = "40%" };

    public static readonly QuickSum Sum = new("open-time", Phases.Conditions, v => v.Say("Open time", "Tiempo abierto"),
        v => v.Say("How long does the film take a lap in this room?", "¿Cuánto admite solape la película en esta sala?"),
        [Time, At, Time2, At2, Surface, Air, Humidity, Movement, Evaporation, Carrier, Solids], Work);

    private static QuickResult Work(QuickValues values)
    {
        var points = QuickSheet.Points(values, Time, At, Time2, At2);
        if (values.Of(Solids) <= 0) QuickFilm.SolidsNeeded(values, Solids);
        if (values.Faults.Count > 0) return new QuickResult([]);
        var product = QuickSheet.Blank with
        {
            OpenTime = points,
            VolumeSolids = values.Of(Solids),
            Drying = values.If(Evaporation) is { } share ? new Drying(values.Word(Carrier) == "water" ? Jobs.Carrier.Water : Jobs.Carrier.Solvent, share, Defaults.SheetHumidity.Value) : null,
        };
        var surface = values.Of(Surface);
        var room = QuickSheet.Room(values.Or(Air, surface), surface, surface, values.Of(Humidity),
            values.Word(Movement) switch { "moving" => AirMovement.Moving, "slight" => AirMovement.Slight, _ => AirMovement.Still });
        var (time, basis, reasons) = Clocks.OpenTimeOf(QuickSheet.Coat(product), room);
        var laps = TestBoard.LapsAt(time.Seconds);
        var board = new Basis("t_o/2 … 1.75 t_o", basis.Inputs, Sources.Trade);
        return new QuickResult(
        [
            new("openTimeS", v => v.Say("open time", "tiempo abierto"), time.Seconds, _ => Voice.Span(time.Seconds), basis),
            new("firstLapS", v => v.Say("test board: lap the first strip at", "placa de prueba: solape la primera franja a"), laps[0], _ => Voice.Span(laps[0]), board),
            new("lapEveryS", v => v.Say("test board: then one every", "placa de prueba: después una cada"), laps[1] - laps[0], _ => Voice.Span(laps[1] - laps[0]), board),
            new("lastLapS", v => v.Say("test board: the last at", "placa de prueba: la última a"), laps[^1], _ => Voice.Span(laps[^1]), board),
        ])
        { Reasons = [.. reasons], Steps = TestBoard.Steps(laps) };
    }
}
