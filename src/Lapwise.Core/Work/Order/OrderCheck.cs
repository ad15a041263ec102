using Lapwise.Core.Explain;

namespace Lapwise.Core.Work.Order;

/// <summary>Says what of a problem cannot be searched.</summary>
public static class OrderCheck
{
    /// <summary>More sections than this are refused: no kitchen has them, and no screen shows them.</summary>
    public const int MostSections = 2000;
    public const int MostCrew = 8;
    private const long MostMs = 7L * 24 * 3600 * 1000;

    /// <summary>Every fault of the problem, with its place in the bare order file; empty: it can be searched.</summary>
    public static IReadOnlyList<Fault> Faults(OrderProblem problem)
    {
        var faults = new List<Fault>();
        var count = problem.Sections.Count;
        if (count == 0)
            faults.Add(new Fault("sections", "NoSections", v => v.Say("There are no sections.", "No hay secciones."), v => v.Say("Give at least one.", "Indique al menos una.")));
        if (count > MostSections)
            faults.Add(new Fault("sections", "TooManySections",
                v => v.Say($"There are {count} sections; at most {MostSections} can be ordered.", $"Hay {count} secciones; se pueden ordenar {MostSections} como máximo."),
                v => v.Say("Split the work into separate jobs, or make the sections larger.", "Divida el trabajo en varios, o haga las secciones más grandes.")));
        if (problem.Crew is < 1 or > MostCrew)
            faults.Add(new Fault("crew", "CrewOutOfRange",
                v => v.Say($"A crew of {problem.Crew} cannot be planned.", $"No se puede planificar con {problem.Crew} personas."),
                v => v.Say($"Give 1 to {MostCrew} people.", $"Indique de 1 a {MostCrew} personas.")));
        for (var i = 0; i < count; i++) CheckSection(problem.Sections[i], i, faults);
        for (var i = 0; i < problem.Laps.Count; i++) CheckLap(problem.Laps[i], i, count, faults);
        for (var i = 0; i < problem.Before.Count; i++)
        {
            var (first, then) = problem.Before[i];
            if (!InRange(first, count) || !InRange(then, count) || first == then) faults.Add(Unknown($"before[{i}]"));
        }

        if (faults.Count == 0 && HasCycle(problem))
            faults.Add(new Fault("before", "BeforeGoesRound",
                v => v.Say("The pairs of first and then go round in a circle.", "Los pares de antes y después forman un círculo."),
                v => v.Say("Take one of the pairs out.", "Quite uno de los pares.")));
        return faults;
    }

    internal static void Throw(OrderProblem problem)
    {
        if (Faults(problem) is [var first, ..]) throw new ArgumentException(first.Say(Voice.Default), nameof(problem));
    }

    private static void CheckSection(OrderSection section, int i, List<Fault> faults)
    {
        if (section.DurationMs.Count == 0 || section.DurationMs.Any(d => d is <= 0 or > MostMs))
            faults.Add(new Fault($"sections[{i}].seconds", "SectionTimeOutOfRange",
                v => v.Say($"Section {section.Id} has no time above zero and within a week.", $"La sección {section.Id} no tiene un tiempo mayor que cero y menor que una semana."),
                v => v.Say("Give its rolling time in seconds.", "Indique su tiempo de rodillo en segundos.")));
        if (section.NotBeforeMs is < 0 or > MostMs || Math.Abs(section.StartedAtMs ?? 0) > MostMs)
            faults.Add(new Fault($"sections[{i}]", "TimeOutOfRange",
                v => v.Say($"Section {section.Id} has a start outside a week.", $"La sección {section.Id} empieza fuera de una semana."),
                v => v.Say("Count the seconds from the start of the work.", "Cuente los segundos desde el inicio del trabajo.")));
    }

    private static void CheckLap(OrderLap lap, int i, int count, List<Fault> faults)
    {
        if (!InRange(lap.A, count) || !InRange(lap.B, count) || lap.A == lap.B) faults.Add(Unknown($"laps[{i}]"));
        if (lap.LimitMs is <= 0)
            faults.Add(new Fault($"laps[{i}].limitS", "LimitNotPositive",
                v => v.Say("The limit of a lap must be above zero.", "El límite de un solape debe ser mayor que cero."),
                v => v.Say("Give its open time in seconds.", "Indique su tiempo abierto en segundos.")));
    }

    private static bool InRange(int i, int count) => i >= 0 && i < count;

    private static Fault Unknown(string path) => new(path, "SectionUnknown",
        v => v.Say("It names a section that is not there, or the same one twice.", "Nombra una sección que no existe, o dos veces la misma."),
        v => v.Say("Use two ids of the list of sections.", "Use dos identificadores de la lista de secciones."));

    private static bool HasCycle(OrderProblem problem)
    {
        var waiting = new int[problem.Sections.Count];
        foreach (var (_, then) in problem.Before) waiting[then]++;
        var ready = new Queue<int>(Enumerable.Range(0, waiting.Length).Where(i => waiting[i] == 0));
        var done = 0;
        var after = problem.Before.ToLookup(b => b.First, b => b.Then);
        while (ready.TryDequeue(out var u))
        {
            done++;
            foreach (var then in after[u])
                if (--waiting[then] == 0) ready.Enqueue(then);
        }

        return done < waiting.Length;
    }
}
