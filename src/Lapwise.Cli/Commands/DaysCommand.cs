using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;
using Lapwise.Documents;
using Lapwise.Files;
using Lapwise.Scheduling;

namespace Lapwise.Cli.Commands;

/// <summary>Many jobs and crews over one calendar.</summary>
internal static class DaysCommand
{
    private static readonly Effort Search = new(5);

    public static readonly Command Command = new("days", ["JOBS"], [Phases.Timeline],
        v => v.Say("the days of many jobs together, by crew", "los días de muchos trabajos juntos, por equipo"),
        v => v.Say(
            "All jobs over one calendar: --crews N (1), each job by one crew, half an hour between sites, waits at their worst hour. --shop FILE names crews with their skills and days away, shared gear, ways, days lost to humidity, jobs' dates and visits that stay. A job with a first day is not begun before it. Ended as early as can be; what is proven is said. --out x.ics writes it as iCalendar. The same jobs give the same days. Ends with 1 where they cannot all be placed.",
            "Todos los trabajos en un calendario: --crews N (1), cada trabajo con un solo equipo, media hora entre sitios, las esperas a su peor hora. --shop ARCHIVO da los equipos con lo que saben y sus ausencias, medios compartidos, trayectos, días perdidos por humedad, fechas de los trabajos y visitas que se quedan. Un trabajo con primer día no empieza antes. Se acaba cuanto antes; se dice lo demostrado. --out x.ics lo escribe como iCalendar. Los mismos trabajos dan los mismos días. Termina con 1 si no caben todos."),
        Run) { LastRepeats = true };

    private static Outcome Run(Request request, Terminal terminal)
    {
        if (request.Files.Count == 0) return Faults.Print([new Fault("days", "ArgumentsWrong", x => x.Say("No job is named.", "No se nombra ningún trabajo."), x => x.Say("Name one or more job files.", "Nombre uno o más archivos de trabajo."))], request.Voice, terminal);
        List<ShopJob> jobs = [];
        foreach (var file in request.Files)
        {
            if (JobInput.Read(request with { Files = [file] }, terminal) is not { } input || input.Work(terminal) is not { } whole) return Outcome.BadInput;
            jobs.Add(new ShopJob(jobs.Any(j => j.Id == CalendarOut.IdOf(file)) ? $"{CalendarOut.IdOf(file)}-{jobs.Count + 1}" : CalendarOut.IdOf(file), whole));
        }

        var v = new Voice(request.Language ?? jobs[0].Whole.Job.Language, request.Units ?? jobs[0].Whole.Job.Units);
        if (Asks(request, v, terminal) is not { } asks) return Outcome.BadInput;
        var first = jobs.Select(j => j.Whole.Job.Timeline.Start).OfType<DateOnly>().Order().FirstOrDefault(jobs[0].Whole.Timeline.Day1);
        var shop = Shop.From(asks, first);
        var problem = ShopDays.Problem(jobs, shop);
        var answer = terminal.Show(x => x.Say("Placing the jobs…", "Colocando los trabajos…"), v, () => Scheduler.Solve(problem, Search));
        switch (answer)
        {
            case Scheduling.Answer.Found(var schedule):
                Print(jobs, shop, problem, schedule, v, terminal);
                if (request.OutFile is { } path && CalendarOut.Write(path, Placed(jobs, shop, schedule), v, terminal) is { } unwritten) return unwritten;
                return schedule.Reasons.Count == 0 ? Outcome.Done : Outcome.DoesNotWork;
            case Scheduling.Answer.Impossible(var reasons):
                foreach (var reason in reasons) terminal.Reason(reason, v);
                return Outcome.DoesNotWork;
            case Scheduling.Answer.Refused(var reasons):
                foreach (var reason in reasons) terminal.Reason(reason, v);
                return Outcome.BadInput;
            case Scheduling.Answer.Undecided(var reasons):
                terminal.Line(v.Say("No days were found in this time, and none were ruled out.", "En este tiempo no se hallaron días, ni se descartaron."));
                foreach (var reason in reasons) terminal.Reason(reason, v);
                return Outcome.DoesNotWork;
            default:
                throw new InvalidOperationException("an answer of another kind");
        }
    }

    /// <summary>The shop's own file, or crews by number alone; null: it could not be used, and why was said.</summary>
    private static DaysAsks? Asks(Request request, Voice v, Terminal terminal)
    {
        var document = new DaysDocument();
        FileRead<DaysDocument>? file = null;
        if (request.Shop is { } path)
        {
            file = DocumentFile.ReadDays(path, terminal.In);
            if (file.Document is null)
            {
                Faults.Print(file.Faults, v, terminal);
                return null;
            }

            document = file.Document;
        }

        if (request.Crews is { } crews) document = document with { Crews = [.. Enumerable.Range(1, crews).Select(c => new ShopCrewDocument { Name = v.Say($"crew {c}", $"equipo {c}") })] };
        var read = DaysReading.Read(document, v);
        if (read.Asks is null) Faults.Print(file?.WithLines(read.Faults) ?? read.Faults, v, terminal);
        return read.Asks;
    }

    private static void Print(IReadOnlyList<ShopJob> jobs, Shop shop, ScheduleProblem problem, Schedule schedule, Voice v, Terminal terminal)
    {
        var table = Screen.Table(new Column.Word(v.Say("Day", "Día")), new Column.Word(v.Say("Hours", "Horas")), new Column.Word(v.Say("Who", "Quién")), new Column.Text(v.Say("Job", "Trabajo")), new Column.Text(v.Say("What", "Qué")));
        var day = "";
        foreach (var (job, visit, place) in ShopDays.Visits(jobs).OrderBy(x => schedule.Visits[x.Place].Start).ThenBy(x => x.Place))
        {
            var (from, at) = (ShopDays.At(shop, schedule.Visits[place].Start), schedule.Visits[place]);
            var now = v.WeekDay(DateOnly.FromDateTime(from));
            var steps = visit.Steps.Select(s => job.Whole.Timeline.Steps[s].Name(v)).ToList();
            table.Row(now == day ? "" : now, $"{v.Hour(from)}–{v.Hour(from + visit.Length)}",
                at.Crew is { } crew ? shop.Asks.Crews[crew].Name : SiteClock.Say(visit.By, v), job.Whole.Job.Name, steps.Count > 1 ? $"{steps[0]} … {steps[^1]}" : steps[0]);
            day = now;
        }

        terminal.Tables().Write(table);
        terminal.Line(schedule.IsProven
            ? v.Say("✓ Proven: with these visits and crews they cannot all end earlier.", "✓ Demostrado: con estas visitas y equipos no pueden acabar todos antes.")
            : v.Say($"· At best they could all end {Voice.Span((schedule.LastEnd - schedule.Bound) * 60.0)} earlier; more is not proven.", $"· Como mucho podrían acabar todos {Voice.Span((schedule.LastEnd - schedule.Bound) * 60.0)} antes; no hay más demostrado."));
        foreach (var reason in (IEnumerable<Reason>)[.. schedule.Reasons, .. ShopNotes.Of(jobs, shop, problem, schedule)]) terminal.Reason(reason, v);
        foreach (var job in jobs.Where(j => !j.Whole.Timeline.Holds)) terminal.Line("✗ " + v.Say($"{job.Whole.Job.Name} does not work by itself yet: see lapwise timeline.", $"{job.Whole.Job.Name} aún no funciona por sí solo: vea lapwise timeline."), indent: 2);
    }

    private static IReadOnlyList<CalendarJob> Placed(IReadOnlyList<ShopJob> jobs, Shop shop, Schedule schedule) =>
    [
        .. ShopDays.Visits(jobs).GroupBy(x => x.Job).Select(g => new CalendarJob(g.Key.Id, CalendarOut.SequenceNow, g.Key.Whole,
            [.. g.Select(x => (x.Visit, ShopDays.At(shop, schedule.Visits[x.Place].Start)))])),
    ];
}
