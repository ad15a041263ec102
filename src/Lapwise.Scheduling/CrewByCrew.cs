using Google.OrTools.Sat;

namespace Lapwise.Scheduling;

/// <summary>
/// A schedule of crews that share nothing: jobs and gear are dealt out among them and each has a schedule of its own, found as any
/// other. Far fewer things stand in each other's way, so the solver gets done with what it loses itself in as a whole; what the
/// dealing costs is the difference from the bound of the whole.
/// </summary>
internal sealed class CrewByCrew
{
    /// <summary>With less than this, in its own count, the solver gets nowhere with the schedule of one crew.</summary>
    private const double LeastForEach = 1;

    private readonly ScheduleProblem problem;
    private readonly IReadOnlyList<IReadOnlyList<int>> crews;
    private readonly List<List<int>> visits;

    private CrewByCrew(ScheduleProblem problem, int shares, List<List<int>> visits)
    {
        this.problem = problem;
        this.visits = visits;
        crews = [.. Enumerable.Range(0, shares).Select(s => Enumerable.Range(0, problem.Crews.Count).Where(c => c % shares == s).ToArray())];
    }

    /// <param name="noLaterThan">When the last visit ends in what is to be bettered.</param>
    /// <param name="enough">Nothing ends earlier than this.</param>
    /// <param name="effort">For all crews together.</param>
    /// <returns>Null: crews and gear cannot be dealt out, the effort is too small, or some crew found no schedule.</returns>
    public static IReadOnlyList<PlacedVisit>? Place(ScheduleProblem problem, long noLaterThan, long enough, Effort effort, CancellationToken stop)
    {
        if (Dealt(problem with { Horizon = noLaterThan }) is not { } dealt || effort.Deterministic < LeastForEach * dealt.visits.Count) return null;
        var own = Enumerable.Range(0, dealt.visits.Count).Select(dealt.Of).ToList();
        var found = own.Select(o => new Ran(CpSolverStatus.Unknown, JobByJob.Place(o, stop), 0, IsRepeatable: true)).ToArray();
        var work = effort.Deterministic;
        // Most are done with soon; what they leave goes to those that are not.
        foreach (var part in (ReadOnlySpan<double>)[0.5, 1])
        {
            var open = Enumerable.Range(0, own.Count).Where(s => found[s].Status is CpSolverStatus.Unknown or CpSolverStatus.Feasible).ToList();
            var each = effort with { Deterministic = part * work / Math.Max(1, open.Count) };
            // They know nothing of each other, so side by side they find what they find one after the other.
            Parallel.ForEach(open, s =>
            {
                using var model = new VisitModel(own[s], enough);
                found[s] = model.EarliestEnd(each, found[s].Visits, null, stop);
            });
            work -= open.Sum(s => found[s].Work);
        }

        return dealt.Together(found);
    }

    /// <summary>As many shares as there are crews and pieces of every gear; the most work first, to whoever has least and can do it.</summary>
    private static CrewByCrew? Dealt(ScheduleProblem problem)
    {
        var used = problem.Holds.Select(h => h.Gear).Concat(problem.Visits.SelectMany(v => v.Needs).Select(n => n.Gear)).Distinct();
        var shares = used.Select(g => problem.Gear[g].Count).Append(problem.Crews.Count).Min();
        if (shares < 2) return null;
        var dealt = new CrewByCrew(problem, shares, [.. Enumerable.Range(0, shares).Select(_ => new List<int>())]);
        var load = new long[shares];
        foreach (var (job, work) in Tied(problem).Select(j => (j, Work: j.Where(v => problem.Visits[v].NeedsCrew).Sum(v => problem.Visits[v].Length))).OrderByDescending(j => j.Work).ThenBy(j => j.j[0]))
        {
            var able = Enumerable.Range(0, shares).Where(s => dealt.CanDo(s, job)).OrderBy(s => load[s] / dealt.crews[s].Count).ThenBy(s => s).ToList();
            if (able.Count == 0) return null;
            dealt.visits[able[0]].AddRange(job);
            load[able[0]] += work;
        }

        return dealt;
    }

    /// <summary>Visits that must lie in one share: those of a job, of jobs bound by a lag or a hold, and what one crew is to do together.</summary>
    private static List<List<int>> Tied(ScheduleProblem problem)
    {
        var of = Enumerable.Range(0, problem.Visits.Count).ToArray();
        int Root(int v) => of[v] == v ? v : of[v] = Root(of[v]);
        void Tie(int a, int b) => of[Math.Max(Root(a), Root(b))] = Math.Min(Root(a), Root(b));
        foreach (var group in Enumerable.Range(0, of.Length).GroupBy(v => problem.Visits[v].Job)) foreach (var v in group) Tie(group.First(), v);
        foreach (var group in Enumerable.Range(0, of.Length).Where(v => problem.Visits[v].Together is not null).GroupBy(v => problem.Visits[v].Together)) foreach (var v in group) Tie(group.First(), v);
        foreach (var lag in problem.Lags) Tie(lag.From, lag.To);
        foreach (var hold in problem.Holds) Tie(hold.From, hold.To);
        return [.. Enumerable.Range(0, of.Length).GroupBy(Root).Select(g => g.ToList())];
    }

    private bool CanDo(int share, List<int> job) => job.All(v => !problem.Visits[v].NeedsCrew || problem.CrewsFor(problem.Visits[v]).Intersect(crews[share]).Any());

    /// <summary>What one share has to do, as a problem of its own.</summary>
    private ScheduleProblem Of(int share)
    {
        var mine = visits[share];
        mine.Sort();
        var place = mine.Select((v, i) => (v, i)).ToDictionary(p => p.v, p => p.i);
        var crew = crews[share].Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i);
        return problem with
        {
            Visits = [.. mine.Select(v => problem.Visits[v]).Select(v => v.Locked?.Crew is { } c ? v with { Locked = v.Locked with { Crew = crew[c] } } : v)],
            Lags = [.. problem.Lags.Where(l => place.ContainsKey(l.From)).Select(l => l with { From = place[l.From], To = place[l.To] })],
            Holds = [.. problem.Holds.Where(h => place.ContainsKey(h.From)).Select(h => h with { From = place[h.From], To = place[h.To] })],
            Gear = [.. problem.Gear.Select(g => g with { Count = (g.Count / visits.Count) + (share < g.Count % visits.Count ? 1 : 0) })],
            Crews = [.. crews[share].Select(c => problem.Crews[c])],
        };
    }

    private IReadOnlyList<PlacedVisit>? Together(Ran[] found)
    {
        var all = new PlacedVisit[problem.Visits.Count];
        for (var s = 0; s < found.Length; s++)
        {
            if (found[s] is not { Visits: { } placed, IsRepeatable: true }) return null;
            for (var i = 0; i < placed.Count; i++)
                all[visits[s][i]] = placed[i] with { Crew = placed[i].Crew is { } c ? crews[s][c] : null };
        }

        return all;
    }
}
