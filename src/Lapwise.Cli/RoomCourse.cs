using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Files;

namespace Lapwise.Cli;

/// <summary>The room over time that a command was given: readings, or the daily swing of the job.</summary>
/// <param name="Record">Null: the swing.</param>
internal sealed record RoomCourse(RoomRecord? Record, DailySwing? Swing, IReadOnlyList<Reason> Notes)
{
    public RoomDay DayOf(Product product) => Record is { } record ? RoomDay.Of(product, record, Notes) : RoomDay.Of(product, Swing!);

    /// <summary>Null with the faults where there is neither, or where the readings cannot be used.</summary>
    public static (RoomCourse? Course, IReadOnlyList<Fault> Faults) Of(Job job, Request request, Voice v, Terminal terminal)
    {
        if (request.Files.Count > 2) return (null, [Misplaced("ReadingsTwice", x => x.Say("More than one file of readings is named.", "Se nombra más de un archivo de lecturas."), x => x.Say("Name one.", "Nombre uno."))]);
        if (request.Files.Count < 2)
        {
            if (DailySwing.Of(job) is { } swing) return (new RoomCourse(null, swing, [TakenForMean(swing)]), []);
            return (null, [Misplaced("NoReadings", x => x.Say("There are no readings, and the job gives no daily swing.", "No hay lecturas y el trabajo no da oscilación diaria."),
                x => x.Say("Name a file of readings, or write timeline: { daySwing: 14 °F } in the job.", "Nombre un archivo de lecturas, o escriba timeline: { daySwing: 8 °C } en el trabajo."))]);
        }

        var (text, unreadable) = LoggerFile.Read(request.Files[1], terminal.In);
        if (text is null) return (null, unreadable);
        // A typed forecast without dates is of no particular day; only its hours are shown.
        var logged = LoggerText.Read(text, DateTime.UnixEpoch, v.Units);
        return logged.Record is { } record ? (new RoomCourse(record, null, logged.Notes), []) : (null, logged.Faults);
    }

    private static Fault Misplaced(string code, Phrase text, Phrase cure) => new("READINGS", code, text, cure);

    private static Reason TakenForMean(DailySwing swing) => new("RoomTakenForMean", Limit.Note,
        v => v.Say($"The room as read is taken for the mean of the day; it swings by {v.TemperatureDifference(swing.SwingK)}, warmest at {v.HourOfDay(swing.WarmestHour)}, and its moisture stays.",
            $"La sala leída se toma como media del día; oscila {v.TemperatureDifference(swing.SwingK)}, con el máximo a las {v.HourOfDay(swing.WarmestHour)}, y su humedad absoluta no cambia."),
        v => v.Say("Readings of the room itself are better: a logger's file takes their place.", "Mejor lecturas de la propia sala: un archivo de registrador las sustituye."));
}
