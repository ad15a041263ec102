using System.Globalization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>Reads days and hours. A field with a fault stands at its default, so that a page can go on showing days.</summary>
internal static class TimelineReading
{
    private const string At = "timeline";

    public static TimelineAsks Read(Fields fields, TimelineDocument? document)
    {
        var usual = TimelineAsks.Usual;
        if (document is not { } entered) return usual;
        var (from, to) = (Clock(fields, "workFrom", entered.WorkFrom) ?? usual.WorkFromMin, Clock(fields, "workTo", entered.WorkTo) ?? usual.WorkToMin);
        if (to <= from)
        {
            NoHours(fields, "workTo");
            (from, to) = (usual.WorkFromMin, usual.WorkToMin);
        }

        var start = Day(fields, "start", entered.Start);
        var promised = Day(fields, "promisedBy", entered.PromisedBy);
        PromiseIsDated(fields, start, promised);
        return new TimelineAsks(
            start, Zone(fields, entered.Zone), from, to, WorkDays(fields, entered.WorkDays),
            [.. fields.Items(At + ".daysOff", entered.DaysOff, Ranges.MostDaysOff).Select(d => Day(fields, d.Path[(At.Length + 1)..], d.Item)).OfType<DateOnly>().Distinct().Order()],
            Known(entered.DaySwing, e => fields.TemperatureDifference(At + ".daySwing", e, Ranges.DaySwing)) ?? 0,
            Clock(fields, "warmestAt", entered.WarmestAt) ?? usual.WarmestAtMin,
            promised,
            Known(entered.LongestWithout, e => fields.Time(At + ".longestWithout", e, Ranges.Wait)),
            entered.BondTest,
            entered.Fixtures is null ? null : [.. fields.Items(At + ".fixtures", entered.Fixtures, Ranges.MostFixtures).Select(f => ReadFixture(fields, f.Item, f.Path))],
            [.. fields.Items(At + ".steps", entered.Steps, Ranges.MostFixtures).Select(s => new StepAsk(
                s.Item.Step, Known(s.Item.Time, e => fields.Time(s.Path + ".time", e, Ranges.StepTime)), s.Item.LeaveOut ?? false))]);
    }

    private static Fixture ReadFixture(Fields fields, FixtureDocument fixture, string path) => new(
        fields.Name(path + ".name", fixture.Name), fixture.By ?? Doer.Trade,
        Known(fixture.Out, e => fields.Time(path + ".out", e, Ranges.StepTime)),
        Known(fixture.Back, e => fields.Time(path + ".back", e, Ranges.StepTime)));

    private static double? Known(Entry? entry, Func<Entry, double> read) => Fields.OrNull(entry, read) is { } value && !double.IsNaN(value) ? value : null;

    private static IReadOnlyList<DayOfWeek> WorkDays(Fields fields, IReadOnlyList<Weekday>? entered)
    {
        if (entered is null) return TimelineAsks.Usual.WorkDays;
        if (entered.Count > 0) return [.. entered.Distinct().Select(d => (DayOfWeek)(((int)d + 1) % 7))];
        NoHours(fields, "workDays");
        return TimelineAsks.Usual.WorkDays;
    }

    private static void NoHours(Fields fields, string place) => fields.Add($"{At}.{place}", "NoWorkingHours",
        v => v.Say("This leaves no working hours: nothing can ever be done.", "Así no queda ninguna hora de trabajo: nunca se puede hacer nada."),
        v => v.Say("Work must begin before it ends, on at least one day of the week.", "El trabajo debe empezar antes de acabar, al menos un día de la semana."));

    private static void PromiseIsDated(Fields fields, DateOnly? start, DateOnly? promised)
    {
        if (promised is not { } by) return;
        if (start is not { } first)
        {
            fields.Add(At + ".promisedBy", "PromiseWithoutStart",
                v => v.Say("A date is promised, but the first day is not set.", "Hay una fecha prometida, pero no el primer día."),
                v => v.Say("Set the first day on site.", "Fije el primer día en la casa."));
        }
        else if (by < first)
        {
            fields.Add(At + ".promisedBy", "PromiseBeforeStart",
                v => v.Say($"{v.Date(by)} is before the first day, {v.Date(first)}.", $"El {v.Date(by)} es anterior al primer día, {v.Date(first)}."),
                v => v.Say("Check both dates.", "Revise las dos fechas."));
        }
    }

    private static DateOnly? Day(Fields fields, string place, string? text)
    {
        if (string.IsNullOrWhiteSpace(text)) return null;
        if (DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is >= 2000 and < 2200) return day;
        fields.Add($"{At}.{place}", "DateNotUnderstood",
            v => v.Say($"{Misreads.Quote(v, text)} is not a date.", $"{Misreads.Quote(v, text)} no es una fecha."),
            v => v.Say("Write year, month and day, as 2026-12-07.", "Escriba año, mes y día, como 2026-12-07."));
        return null;
    }

    /// <summary>Minutes from midnight.</summary>
    private static int? Clock(Fields fields, string place, string? text)
    {
        if (string.IsNullOrWhiteSpace(text)) return null;
        if (TimeOnly.TryParseExact(text.Trim(), ["H:mm", "HH:mm", "H.mm", "h:mm tt", "h tt"], CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var time)) return (time.Hour * 60) + time.Minute;
        fields.Add($"{At}.{place}", "ClockNotUnderstood",
            v => v.Say($"{Misreads.Quote(v, text)} is not a time of day.", $"{Misreads.Quote(v, text)} no es una hora del día."),
            v => v.Say("Write hours and minutes, as 8:00 or 16:30.", "Escriba horas y minutos, como 8:00 o 16:30."));
        return null;
    }

    private static string? Zone(Fields fields, string? text)
    {
        if (string.IsNullOrWhiteSpace(text)) return null;
        var zone = text.Trim();
        if (TimelineAsks.CanBeZone(zone)) return zone;
        fields.Add(At + ".zone", "ZoneNotUnderstood",
            v => v.Say($"{Misreads.Quote(v, text)} is not the name of a time zone.", $"{Misreads.Quote(v, text)} no es el nombre de una zona horaria."),
            v => v.Say("Write it as America/Chicago or Europe/Madrid.", "Escríbala como America/Chicago o Europe/Madrid."));
        return null;
    }
}
