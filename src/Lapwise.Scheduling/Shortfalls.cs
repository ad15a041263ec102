using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>What does not fit into the days planned, by how much, and what would cure it.</summary>
internal static class Shortfalls
{
    private const double HourMin = 60;
    private const double DayMin = 24 * HourMin;

    /// <summary>More work than the crews have hours.</summary>
    public static Reason OfWork(ScheduleProblem problem, CrewLoad.Excess excess)
    {
        var (crews, by) = (excess.Of.Crews, excess.By);
        var jobs = excess.Of.Jobs(excess.Least);
        var later = FewestOf(jobs, by);
        // What there are of now gives the measure; without any hours nothing can be said of how many more.
        int? more = excess.Room == 0 ? null : (int)Math.Ceiling((double)by * crews.Count / excess.Room);
        int? days = excess.Room == 0 ? null : (int)Math.Ceiling(by * (problem.Horizon / DayMin) / excess.Room);
        var named = crews.Count == problem.Crews.Count ? null : crews.Select(c => problem.Crews[c].Name).ToList();
        return new Reason("WorkBeyondHours", Limit.Never,
            v => (named is null ? "" : v.Say($"Not every crew can do it: only {v.List(named)}. ", $"No todos los equipos pueden: solo {v.List(named)}. "))
                + v.Say(
                    $"{Jobs(v, jobs.Count)} {(jobs.Count == 1 ? "comes" : "come")} to {Hours(v, excess.Work)} of work; for it {Crews(v, crews.Count)} {(crews.Count == 1 ? "has" : "have")} {Hours(v, excess.Room)} in the days planned, less what must dry after it: {Hours(v, by)} too much.",
                    $"{Jobs(v, jobs.Count)} {(jobs.Count == 1 ? "suma" : "suman")} {Hours(v, excess.Work)} de labor; para ella {Crews(v, crews.Count)} {(crews.Count == 1 ? "tiene" : "tienen")} {Hours(v, excess.Room)} en los días previstos, descontado lo que debe secar después: sobran {Hours(v, by)}.")
                + (excess.Least == 0 ? "" : v.Say(
                    $" Visits are not split over two days: counted are those of {Voice.Span(excess.Least * HourMin)} or more, as a whole day where no other such fits beside.",
                    $" Las visitas no se parten entre dos días: se cuentan las de {Voice.Span(excess.Least * HourMin)} o más, como un día entero si no cabe otra igual al lado.")),
            v => (more is { } m && days is { } d ? v.Say($"{Crews(v, m)} more, about {Days(v, d)} more, or ", $"{Crews(v, m)} más, unos {Days(v, d)} más, o ") : "")
                + v.Say($"at least {Jobs(v, later)} later.", $"al menos {Jobs(v, later)} para más adelante."));
    }

    /// <summary>More jobs stand in line for a piece of gear than there are days for.</summary>
    public static Reason OfGear(ScheduleProblem problem, HeldLine line)
    {
        var gear = problem.Gear[line.Gear];
        var over = line.Jobs - (line.Fit * line.Pieces);
        var more = line.Fit == 0 ? 0 : (over + line.Fit - 1) / line.Fit;
        return new Reason("LineBeyondDays", Limit.Never,
            v => v.Say(
                $"{Jobs(v, line.Jobs)} each keep {gear.Name} on site, and of those there are {gear.Count}; one after the other at most {v.Number(line.Fit)} fit into these days at each: {Jobs(v, over)} too many.",
                $"{Jobs(v, line.Jobs)} mantienen cada uno {gear.Name} en la obra, y hay {gear.Count}; uno tras otro caben como mucho {v.Number(line.Fit)} por unidad en estos días: sobran {Jobs(v, over)}."),
            v => (more == 0 ? "" : v.Say($"{v.Number(more)} more of {gear.Name}, or ", $"{v.Number(more)} más de {gear.Name}, o "))
                + v.Say($"more days, or at least {Jobs(v, over)} later.", $"más días, o al menos {Jobs(v, over)} para más adelante."));
    }

    /// <summary>Nothing proves that it does not fit, but nobody found out how.</summary>
    /// <param name="by">How much later than the days planned the best that was found ends; null: none was found in far more days either.</param>
    public static Reason NotFound(int jobs, long? by) => new("NoDaysFound", Limit.Never,
        v => (by is { } over
                ? v.Say($"The best found for {Jobs(v, jobs)} ends {Voice.Span(over * HourMin)} after the days planned.", $"Lo mejor hallado para {Jobs(v, jobs)} acaba {Voice.Span(over * HourMin)} después de los días previstos.")
                : v.Say($"No place was found for all of {Jobs(v, jobs)}, nor in twice the days.", $"No se halló sitio para los {Jobs(v, jobs)}, ni con el doble de días."))
            + v.Say(" That there are such days is not ruled out.", " No se descarta que los haya."),
        v => (by is { } over ? v.Say($"Plan {Days(v, (int)Math.Ceiling(over / DayMin))} more, add", $"Planifique {Days(v, (int)Math.Ceiling(over / DayMin))} más, añada") : v.Say("Add", "Añada"))
            + v.Say(" a crew, or leave a job for later.", " un equipo o deje un trabajo para más adelante."));

    /// <summary>How many of them, taken in this order, come to so much.</summary>
    private static int FewestOf(IEnumerable<long> works, long by)
    {
        var count = 0;
        foreach (var work in works)
        {
            if (by <= 0) break;
            by -= work;
            count++;
        }

        return count;
    }

    private static string Hours(Voice v, long ticks) => v.Number(ticks / HourMin, 1) + " h";

    private static string Jobs(Voice v, int count) => v.Count(count, ("job", "jobs"), ("trabajo", "trabajos"));

    private static string Crews(Voice v, int count) => v.Count(count, ("crew", "crews"), ("equipo", "equipos"));

    private static string Days(Voice v, int count) => v.Count(count, ("day", "days"), ("día", "días"));
}
