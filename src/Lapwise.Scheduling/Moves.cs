using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>One visit that stands elsewhere than before.</summary>
/// <param name="Visit">Its place in the problem.</param>
/// <param name="Why">What moved its job: the same for every visit of the job.</param>
public sealed record Move(int Visit, PlacedVisit From, PlacedVisit To, Phrase Why);

/// <summary>
/// What moved from where it stood, and why: one cause for each job. A job moves for something of its own (a day lost, a crew away),
/// for a job that took its crew or gear, or for what moved that job in turn, never for one that moved because of it.
/// </summary>
public sealed class Moves
{
    private readonly ScheduleProblem problem;
    private readonly IReadOnlyList<PlacedVisit> now;
    private readonly Func<int, long, Phrase?>? shut;
    private readonly List<int> moved;

    private Moves(ScheduleProblem problem, IReadOnlyList<PlacedVisit> now, Func<int, long, Phrase?>? shut)
    {
        (this.problem, this.now, this.shut) = (problem, now, shut);
        moved = [.. Enumerable.Range(0, now.Count).Where(i => Was(i) is { } was && was != now[i]).OrderBy(i => Was(i)!.Value.Start).ThenBy(i => i)];
    }

    /// <param name="shut">Why a visit cannot lie at a time, whoever works when; null: it can, or nothing more is known.</param>
    public static IReadOnlyList<Move> Since(ScheduleProblem problem, IReadOnlyList<PlacedVisit> now, Func<int, long, Phrase?>? shut = null)
    {
        var moves = new Moves(problem, now, shut);
        var causes = moves.Causes();
        return [.. moves.moved.Order().Select(i => new Move(i, moves.Was(i)!.Value, now[i], causes[problem.Visits[i].Job]))];
    }

    /// <param name="Gear">What it takes; null: the crew.</param>
    private readonly record struct Taker(Visit Other, string? Gear);

    private PlacedVisit? Was(int visit) => problem.Before.TryGetValue(problem.Visits[visit].Id, out var was) ? was : null;

    private Dictionary<string, Phrase> Causes()
    {
        var jobs = moved.GroupBy(i => problem.Visits[i].Job, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        var causes = new Dictionary<string, Phrase>(StringComparer.Ordinal);
        foreach (var (job, visits) in jobs) if (OfItsOwn(visits) is { } own) causes[job] = own;
        // From what has a cause to what that stands in the way of, the nearest first; who is never reached moved by choice.
        for (var found = true; found;)
        {
            var next = jobs.Where(j => !causes.ContainsKey(j.Key)).Select(j => (j.Key, Why: ByAnother(j.Value, jobs, causes))).Where(n => n.Why is not null).ToList();
            foreach (var (job, why) in next) causes[job] = why!;
            found = next.Count > 0;
        }

        foreach (var (job, visits) in jobs) causes.TryAdd(job, ByChoice(visits));
        return causes;
    }

    /// <summary>What stands against its old place whatever other jobs do.</summary>
    private Phrase? OfItsOwn(List<int> visits) =>
        visits.Select(Shut).FirstOrDefault(w => w is not null) ?? visits.Select(Away).FirstOrDefault(w => w is not null)
        ?? visits.Select(KeptElsewhere).FirstOrDefault(w => w is not null) ?? ItsWaits(problem.Visits[visits[0]].Job);

    private Phrase? Shut(int i)
    {
        var (visit, was) = (problem.Visits[i], Was(i)!.Value);
        if (was.Start < visit.NotBefore) return v => v.Say("it may not begin as early any more", "ya no puede empezar tan pronto");
        if (visit.Open.Count == 0 || visit.Open.Any(w => w.From <= was.Start && was.Start + visit.Length <= w.To)) return null;
        return shut?.Invoke(i, was.Start) ?? (v => v.Say("the hours worked have changed", "cambiaron las horas de trabajo"));
    }

    private Phrase? Away(int i)
    {
        if (Was(i) is not { Crew: { } crew } was) return problem.Visits[i].NeedsCrew ? v => v.Say("its crew is no longer there", "su equipo ya no existe") : null;
        if (!problem.CrewsFor(problem.Visits[i] with { Locked = null }).Contains(crew)) return v => v.Say("its crew cannot do what is asked of it now", "su equipo no sabe lo que ahora se pide");
        return problem.Crews[crew].Away.Any(a => a.From < was.Start + problem.Visits[i].Length && was.Start < a.To)
            ? v => v.Say($"its crew is away: {problem.Crews[crew].Name}", $"su equipo está ausente: {problem.Crews[crew].Name}") : null;
    }

    private Phrase? KeptElsewhere(int i) => problem.Visits[i].Locked is null ? null
        : v => v.Say($"it is kept elsewhere at your own word: {problem.Visits[i].Name(v)}", $"se mantiene en otro sitio bajo su palabra: {problem.Visits[i].Name(v)}");

    /// <summary>The job itself is another than when its days were settled.</summary>
    private Phrase? ItsWaits(string job)
    {
        var broken = problem.Lags.FirstOrDefault(l => problem.Visits[l.From].Job == job && problem.Visits[l.To].Job == job && Was(l.From) is { } from && Was(l.To) is { } to && to.Start < from.Start + l.Least);
        return broken is null ? null : v => v.Say($"the job itself changed: {broken.Name(v)}", $"cambió el propio trabajo: {broken.Name(v)}");
    }

    /// <summary>A job that takes its crew or its gear and is new, did not move, or moved for a cause that is known.</summary>
    private Phrase? ByAnother(List<int> visits, Dictionary<string, List<int>> jobs, Dictionary<string, Phrase> causes)
    {
        var takers = visits.SelectMany(CrewTaken).Concat(GearTaken(problem.Visits[visits[0]].Job)).ToList();
        return takers.Where(t => IsNew(t.Other.Job)).Select(t => Say(t, null)).FirstOrDefault()
            ?? takers.Where(t => causes.ContainsKey(t.Other.Job)).Select(t => Say(t, causes[t.Other.Job])).FirstOrDefault()
            ?? takers.Where(t => !jobs.ContainsKey(t.Other.Job)).Select(t => Say(t, null)).FirstOrDefault();
    }

    private bool IsNew(string job) => Enumerable.Range(0, now.Count).Where(i => problem.Visits[i].Job == job).All(i => Was(i) is null);

    private Phrase Say(Taker taker, Phrase? because)
    {
        var (other, gear) = taker;
        return v => (IsNew(other.Job) ? v.Say("the new job ", "el trabajo nuevo ") : "") + other.JobName
            + (gear is null ? v.Say(" has its crew then", " tiene entonces a su equipo") : v.Say($" has the {gear} then", $" tiene entonces: {gear}"))
            + (because is null ? "" : v.Say(", and moved because ", ", y se movió porque ") + because(v));
    }

    private IEnumerable<Taker> CrewTaken(int i)
    {
        var (visit, was) = (problem.Visits[i], Was(i)!.Value);
        return Enumerable.Range(0, now.Count).Where(j => was.Crew is not null && now[j].Crew == was.Crew && problem.Visits[j] is var other && other.Job != visit.Job
            && now[j].Start < was.Start + visit.Length + problem.TravelBetween(visit, other) && was.Start < now[j].Start + other.Length + problem.TravelBetween(other, visit))
            .Select(j => new Taker(problem.Visits[j], null));
    }

    /// <summary>Others that now have the gear over the time in which this job had it.</summary>
    private IEnumerable<Taker> GearTaken(string job)
    {
        var mine = Uses(job, i => Was(i)).ToList();
        var theirs = problem.Visits.Select(v => v.Job).Distinct(StringComparer.Ordinal).Where(j => j != job).SelectMany(j => Uses(j, i => now[i])).ToList();
        foreach (var use in mine)
        {
            var over = theirs.Where(t => t.Gear == use.Gear && t.From < use.To && use.From < t.To).ToList();
            if (over.Sum(t => t.Amount) + use.Amount <= problem.Gear[use.Gear].Count) continue;
            foreach (var taker in over) yield return new Taker(problem.Visits[taker.Visit], problem.Gear[use.Gear].Name);
        }
    }

    private IEnumerable<(int Visit, int Gear, int Amount, long From, long To)> Uses(string job, Func<int, PlacedVisit?> place)
    {
        for (var i = 0; i < now.Count; i++)
        {
            if (problem.Visits[i].Job != job || place(i) is not { } at) continue;
            foreach (var need in problem.Visits[i].Needs) yield return (i, need.Gear, need.Amount, at.Start, at.Start + problem.Visits[i].Length);
        }

        foreach (var hold in problem.Holds)
            if (problem.Visits[hold.From].Job == job && place(hold.From) is { } from && place(hold.To) is { } to)
                yield return (hold.From, hold.Gear, hold.Amount, from.Start, to.Start + problem.Visits[hold.To].Length);
    }

    /// <summary>Nothing stands in its way: what the search gained by it.</summary>
    private Phrase ByChoice(List<int> visits)
    {
        long LastEnd(IEnumerable<int> of, Func<int, PlacedVisit?> place) => of.Where(i => place(i) is not null).Select(i => place(i)!.Value.Start + problem.Visits[i].Length).DefaultIfEmpty(0).Max();
        var all = Enumerable.Range(0, now.Count).ToList();
        var own = all.Where(i => problem.Visits[i].Job == problem.Visits[visits[0]].Job).ToList();
        if (LastEnd(all, i => now[i]) < LastEnd(all, Was)) return v => v.Say("all jobs together end sooner so", "así acaban antes todos los trabajos juntos");
        return LastEnd(own, i => now[i]) < LastEnd(own, Was)
            ? v => v.Say("it ends sooner so", "así acaba antes")
            : v => v.Say("crews and gear are shared out anew so that every job finds its place", "equipos y medios se reparten de nuevo para que quepa cada trabajo");
    }
}
