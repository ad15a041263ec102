using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>Questions that cannot be answered as they stand.</summary>
internal static class Refusals
{
    public static IReadOnlyList<Reason> Of(ScheduleProblem problem)
    {
        List<Reason> reasons = [];
        if (problem.Visits.Count > Scheduler.MostVisits)
        {
            reasons.Add(new Reason("TooManyVisits", Limit.Never,
                v => v.Say($"{problem.Visits.Count} visits are asked for; at most {Scheduler.MostVisits} are planned at once.", $"Se piden {problem.Visits.Count} visitas; como mucho se planifican {Scheduler.MostVisits} a la vez."),
                v => v.Say("Plan the next months only, or one crew's jobs at a time.", "Planifique solo los próximos meses, o los trabajos de un equipo cada vez.")));
            return reasons;
        }

        if (problem.Visits.FirstOrDefault(x => x.NeedsCrew && problem.CrewsFor(x).Count == 0) is { } lost)
        {
            reasons.Add(new Reason("NobodyCan", Limit.Never,
                v => v.Say($"{lost.Name(v)} needs {(lost.Skill is { } skill ? $"a crew that can: {skill}" : "a crew")}, and there is none.", $"{lost.Name(v)} necesita {(lost.Skill is { } s ? $"un equipo que sepa: {s}" : "un equipo")}, y no hay ninguno."),
                v => v.Say("Add a crew, or give one the skill.", "Añada un equipo, o dé a uno esa capacidad.")));
        }

        foreach (var need in problem.Visits.SelectMany(x => x.Needs.Select(n => (Visit: x, Need: n))).Where(n => n.Need.Amount > problem.Gear[n.Need.Gear].Count).Take(1))
        {
            var gear = problem.Gear[need.Need.Gear];
            reasons.Add(new Reason("TooLittleGear", Limit.Never,
                v => v.Say($"{need.Visit.Name(v)} takes {need.Need.Amount} of {gear.Name}; there are {gear.Count}.", $"{need.Visit.Name(v)} necesita {need.Need.Amount} de {gear.Name}; hay {gear.Count}."),
                v => v.Say("Get more of it, or split the visit.", "Consiga más, o divida la visita.")));
        }

        if (problem.Holds.FirstOrDefault(h => h.Amount > problem.Gear[h.Gear].Count) is { } held)
        {
            var gear = problem.Gear[held.Gear];
            reasons.Add(new Reason("TooLittleGear", Limit.Never,
                v => v.Say($"{problem.Visits[held.From].JobName} keeps {held.Amount} of {gear.Name} on site; there are {gear.Count}.", $"{problem.Visits[held.From].JobName} mantiene {held.Amount} de {gear.Name} en la obra; hay {gear.Count}."),
                v => v.Say("Get more of it, or take it off the list.", "Consiga más, o quítelo de la lista.")));
        }

        if (problem.Visits.FirstOrDefault(x => x.Locked is { Crew: { } by } l && problem.Crews[by].Away.Any(a => a.From < l.Start + x.Length && l.Start < a.To)) is { } kept)
        {
            var crew = problem.Crews[kept.Locked!.Crew!.Value].Name;
            string Where(Voice v) => kept.Locked.Said is { } said ? ", " + said(v) : "";
            reasons.Add(new Reason("KeptWhileAway", Limit.Never,
                v => v.Say($"Kept in place while its crew is away ({crew}): {kept.Name(v)}{Where(v)}.", $"Se mantiene en su sitio estando su equipo ausente ({crew}): {kept.Name(v)}{Where(v)}."),
                v => v.Say("Let it move, or take back the crew's day away.", "Deje que se mueva, o quite la ausencia del equipo.")));
        }

        return reasons;
    }

    /// <summary>Some visit fits nowhere even alone: its hours are none, or too short, or the waits before it too long.</summary>
    public static Reason NoPlace(ScheduleProblem problem)
    {
        var alone = new Placing(problem);
        var first = Enumerable.Range(0, problem.Visits.Count).Select(i => alone.First(i, 0, null)).ToList();
        if (first.IndexOf(null) is >= 0 and var shut)
        {
            var without = problem.Visits[shut].Name;
            return new Reason("NoHoursFor", Limit.Never,
                v => v.Say($"No working hours are long enough for {without(v)}.", $"Ningún horario de trabajo alcanza para {without(v)}."),
                v => v.Say("Give the calendar working hours, or split the visit.", "Dé horas de trabajo al calendario, o divida la visita."));
        }

        int? Stuck(IEnumerable<Lag> lags) => LeastEnd.Stuck(problem, alone, [.. first.Select(f => f!.Value)], [.. lags]);
        // What keeps only its shortest waits runs out of days; else it is a longest wait that has no hours in it.
        if (Stuck(problem.Lags.Where(l => l.Least > 0)) is not { } late) return NoPlaceBetween(problem, Stuck(problem.Lags) ?? 0);
        var stuck = problem.Visits[late].Name;
        return new Reason("DaysRunOut", Limit.Never,
            v => v.Say($"Even with nobody else in the way these days end before this can be done: {stuck(v)}.", $"Ni sin nadie de por medio alcanzan estos días para: {stuck(v)}."),
            v => v.Say("Plan further ahead, or work longer hours.", "Planifique con más días, o trabaje más horas."));
    }

    /// <summary>Each visit fits somewhere alone, but not with what it is bound to.</summary>
    public static Reason NoPlaceBetween(ScheduleProblem problem, int visit) => new("WaitsMissHours", Limit.Never,
        v => v.Say($"Between the shortest and the longest wait there are no working hours for: {problem.Visits[visit].Name(v)}.", $"Entre la espera más corta y la más larga no hay horas de trabajo para: {problem.Visits[visit].Name(v)}."),
        v => v.Say("Work on another day, work longer hours, or widen the wait.", "Trabaje otro día o más horas, o ensanche la espera."));

    public static readonly Reason NoSchedule = new("NoScheduleThereIs", Limit.Never,
        v => v.Say("Proven: with these crews, this gear and these windows there is no schedule.", "Demostrado: con estos equipos, estos medios y estas ventanas no hay calendario posible."),
        v => v.Say("Add a crew, gear or days, or unlock a visit.", "Añada un equipo, medios o días, o libere una visita."));
}
