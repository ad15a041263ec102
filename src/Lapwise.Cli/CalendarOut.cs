using System.Text;
using Lapwise.Core.Explain;
using Lapwise.Documents;

namespace Lapwise.Cli;

/// <summary>Days as an iCalendar file.</summary>
internal static class CalendarOut
{
    /// <summary>Minutes since 2020: a file written later takes the place of one written earlier.</summary>
    public static int SequenceNow => (int)(DateTimeOffset.UtcNow - new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero)).TotalMinutes;

    /// <summary>A job's file name without its endings: as long as it keeps that name its events keep their ids.</summary>
    public static string IdOf(string file) => Path.GetFileName(file).Split('.')[0] is { Length: > 0 } id ? id : "job";

    /// <returns>Null where it was written.</returns>
    public static Outcome? Write(string path, IReadOnlyList<CalendarJob> jobs, Voice v, Terminal terminal)
    {
        if (jobs.FirstOrDefault(j => !DaysCalendar.KnowsZone(j.Whole)) is { } lost)
        {
            return Faults.Print([new Fault("timeline.zone", "ZoneUnknown",
                x => x.Say($"{lost.Whole.Job.Timeline.Zone} is no time zone this machine knows.", $"{lost.Whole.Job.Timeline.Zone} no es una zona horaria que conozca este equipo."),
                x => x.Say("Write it as America/Chicago or Europe/Madrid.", "Escríbala como America/Chicago o Europe/Madrid."))], v, terminal);
        }

        return DaysCalendar.Write(jobs, v, DateTimeOffset.UtcNow) is { } calendar
            ? OutFile.Write(path, Encoding.UTF8.GetBytes(calendar), v, terminal)
            : Faults.Print([new Fault("timeline.start", "NoFirstDay",
                x => x.Say("A calendar needs dates, and no first day is set.", "Un calendario necesita fechas, y no hay primer día."),
                x => x.Say("Set timeline.start, as 2026-12-07.", "Fije timeline.start, como 2026-12-07."))], v, terminal);
    }
}
