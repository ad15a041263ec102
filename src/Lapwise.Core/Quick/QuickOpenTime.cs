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

    private static readonly QuickField Wet = Asks.Film("wet", v => v.Say("wet film today; left out: the sheet's", "película húmeda hoy; sin ella, la de la ficha")).CanWait;
    private static readonly QuickField SheetWet = Asks.Film("sheetWet", v => v.Say("wet film the sheet means", "película húmeda de la ficha")) with { Finer = true, Else = "150 um" };
    private static readonly QuickField Thinner = Asks.Share("thinner", v => v.Say("thinner, share of A and B", "diluyente, parte de A y B")) with { Finer = true, Else = "0%" };
    private static readonly QuickField SheetHumidity = Asks.Humidity("sheetHumidity", v => v.Say("humidity the sheet's time holds at", "humedad a la que vale el tiempo de la ficha")) with { Finer = true, Else = "50%" };
    private static readonly QuickField LastGood = Asks.Time("lastGood", v => v.Say("test board, if lapped: last lap without a line", "placa de prueba, si la hay: último solape sin línea")) with { Finer = true, Example = _ => "9min" };
    private static readonly QuickField FirstBad = Asks.Time("firstBad", v => v.Say("test board: first lap with a line", "placa de prueba: primer solape con línea")) with { Finer = true, Example = _ => "10min30s" };

    public static readonly QuickSum Sum = new("open-time", Phases.Conditions, v => v.Say("Open time", "Tiempo abierto"),
        v => v.Say("How long does the film take a lap in this room?", "¿Cuánto admite solape la película en esta sala?"),
        [Time, At, Time2, At2, Surface, Air, Humidity, Movement, Evaporation, Carrier, Solids, Wet, SheetWet, Thinner, SheetHumidity, LastGood, FirstBad], Work);

    private static QuickResult Work(QuickValues values)
    {
        var points = QuickSheet.Points(values, Time, At, Time2, At2);
        if (values.Of(Solids) <= 0) QuickFilm.SolidsNeeded(values, Solids);
        if (values.Faults.Count > 0) return new QuickResult([]);
        var product = QuickSheet.Blank with
        {
            OpenTime = points,
            VolumeSolids = values.Of(Solids),
            LeastWetFilm = new WetFilm(values.Of(SheetWet)),
            MostWetFilm = new WetFilm(values.Of(SheetWet)),
            Drying = values.If(Evaporation) is { } share ? new Drying(values.Word(Carrier) == "water" ? Jobs.Carrier.Water : Jobs.Carrier.Solvent, share, values.Of(SheetHumidity)) : null,
        };
        var surface = values.Of(Surface);
        var room = QuickSheet.Room(values.Or(Air, surface), surface, surface, values.Of(Humidity),
            values.Word(Movement) switch { "moving" => AirMovement.Moving, "slight" => AirMovement.Slight, _ => AirMovement.Still });
        var coat = QuickSheet.Coat(product, values.Or(Wet, values.Of(SheetWet)), values.Of(Thinner));
        var board = BoardSeen(values);
        if (values.Faults.Count > 0) return new QuickResult([]);
        var (expected, expectedBasis, expectedReasons) = Clocks.OpenTimeOf(coat, room);
        var (time, basis, reasons) = board is null ? (expected, expectedBasis, expectedReasons)
            : Clocks.OpenTimeOf(coat with { TestBoard = new OpenTime(board.LastGoodS, Origin.TestBoard), TestBoardFirstBadS = board.FirstBadS }, room);
        var laps = TestBoard.LapsAt(expected.Seconds);
        var strips = new Basis("t_o/2 … 1.75 t_o", expectedBasis.Inputs, Sources.Trade);
        var drying = CoatDrying.Of(coat, room, [new TemperatureAt(0, surface)], holdsLast: true);
        return new QuickResult(
        [
            new("openTimeS", v => v.Say("open time", "tiempo abierto"), time.Seconds, v => Voice.Span(time.Seconds) + (board is null ? "" : v.Say(", from the test board", ", de la placa de prueba")), basis),
            .. board is null ? [] : Interval(board, expected, basis, expectedBasis),
            new("firstLapS", v => v.Say("test board: lap the first strip at", "placa de prueba: solape la primera franja a"), laps[0], _ => Voice.Span(laps[0]), strips),
            new("lapEveryS", v => v.Say("test board: then one every", "placa de prueba: después una cada"), laps[1] - laps[0], _ => Voice.Span(laps[1] - laps[0]), strips),
            new("lastLapS", v => v.Say("test board: the last at", "placa de prueba: la última a"), laps[^1], _ => Voice.Span(laps[^1]), strips),
            .. Stages(drying),
        ])
        { Reasons = [.. reasons, .. drying.Water is null || double.IsFinite(drying.DriedS) ? Array.Empty<Reason>() : [DoesNotDry]], Steps = TestBoard.Steps(laps), Curve = drying.WaterCurve };
    }

    /// <summary>What the board showed; null where none was lapped.</summary>
    private static BoardResult? BoardSeen(QuickValues values)
    {
        if (!values.Has(LastGood) && !values.Has(FirstBad)) return null;
        List<BoardLap> laps = [];
        if (values.If(LastGood) is { } good) laps.Add(new BoardLap(good, Shows: false));
        if (values.If(FirstBad) is { } bad) laps.Add(new BoardLap(bad, Shows: true));
        var (result, fault) = TestBoard.Read(laps);
        if (fault is not null) values.Refuse(LastGood, [fault]);
        return result;
    }

    /// <summary>The other end of the interval, and the sheet's figure that the board takes the place of.</summary>
    private static IEnumerable<QuickRow> Interval(BoardResult board, OpenTime expected, Basis seen, Basis sheet) =>
    [
        .. board.FirstBadS is { } bad ? [new QuickRow("firstBadS", v => v.Say("a line shows from", "se ve una línea desde"), bad, _ => Voice.Span(bad), seen)] : Array.Empty<QuickRow>(),
        new("sheetS", v => v.Say("the data sheet's, no longer used", "el de la ficha, que ya no se usa"), expected.Seconds, _ => Voice.Span(expected.Seconds), sheet),
    ];

    /// <summary>The two stages in which water leaves the film; none where no water does, or none can.</summary>
    private static IEnumerable<QuickRow> Stages(CoatDrying drying)
    {
        if (drying is not { Water: { } water, WaterBasis: { } basis } || !double.IsFinite(drying.DriedS)) return [];
        return
        [
            new("constantRateS", v => v.Say("water leaves at a constant rate for", "el agua sale a velocidad constante durante"), water.ConstantRateS, _ => Voice.Span(water.ConstantRateS), basis),
            new("driedS", v => v.Say("a twentieth of the water is left after (an estimate, no time to recoat by)", "queda la vigésima parte del agua tras (una estimación, no un tiempo de repintado)"), drying.DriedS, _ => Voice.Span(drying.DriedS), basis),
            new("shareHeldByHumidity", v => v.Say("of that time held back by humidity", "de ese tiempo, frenado por la humedad"), drying.ShareHeldByHumidity, v => v.Percent(drying.ShareHeldByHumidity), basis),
        ];
    }

    private static readonly Reason DoesNotDry = new("AirGivesWaterBack", Limit.AtYourWord,
        v => v.Say("In this room the air gives water back to the film: it does not dry.", "En esta sala el aire devuelve agua a la película: no seca."),
        v => v.Say("Warm the top or dry the air.", "Caliente la cubierta o seque el aire."));
}
