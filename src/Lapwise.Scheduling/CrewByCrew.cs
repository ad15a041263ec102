using Google.OrTools.Sat;

namespace Lapwise.Scheduling;

/// <summary>
/// A schedule of crews that share nothing: jobs and gear are dealt out among them and each has a schedule of its own, found as any
/// other. Far fewer things stand in each other's way, so the solver gets done with what it loses itself in as a whole; what the
/// dealing costs is the difference from the bound of the whole. Asked is for a day by whose evening all is done: a day to spare
/// costs the solver far more than it helps.
/// </summary>
internal sealed class CrewByCrew
{
    /// <summary>In the solver's own count: with less than the least for each crew there is nothing to begin, and what one crew's schedule does not come to within the most it rarely comes to.</summary>
    private const double LeastForEach = 1;
    private const double MostForEach = 0.3;
    /// <summary>Share of the work left that exchanges for one evening may take.</summary>
    private const double Exchanges = 0.6;
    /// <summary>What counts an exchange that could not be made, or a crew's work that is refuted without the solver.</summary>
    private const double NoExchange = 0.01;
    private const double Refuted = 0.01;

    private readonly ScheduleProblem problem;
    private readonly IReadOnlyList<IReadOnlyList<int>> crews;
    // What each has, job by job, and the schedule found for it.
    private readonly List<List<int>>[] jobs;
    private readonly IReadOnlyList<PlacedVisit>?[] found;
    private readonly Random random = new(1);
    private double work;

    private CrewByCrew(ScheduleProblem problem, int shares, double work)
    {
        (this.problem, this.work) = (problem, work);
        crews = [.. Enumerable.Range(0, shares).Select(s => Enumerable.Range(0, problem.Crews.Count).Where(c => c % shares == s).ToArray())];
        jobs = [.. crews.Select(_ => new List<List<int>>())];
        found = new IReadOnlyList<PlacedVisit>?[shares];
    }

    /// <param name="before">Only what ends earlier is of use.</param>
    /// <param name="enough">Nothing ends earlier than this.</param>
    /// <param name="effort">For all crews together.</param>
    /// <param name="better">Told each schedule of all that ends earlier.</param>
    /// <returns>Null: crews and gear cannot be dealt out, the effort is too small, or no schedule was found that ends earlier.</returns>
    public static IReadOnlyList<PlacedVisit>? Place(ScheduleProblem problem, long before, long enough, Effort effort, Action<IReadOnlyList<PlacedVisit>> better, CancellationToken stop)
    {
        if (Dealt(problem, effort) is not { } dealt) return null;
        IReadOnlyList<PlacedVisit>? best = null;
        var evenings = Evenings(problem, enough, before);
        var (low, high) = (0, evenings.Count);
        // One that the jobs as dealt can keep is soon known; then the bound's own with exchanges, and the middle of what is left.
        for (var next = 0; next < high && dealt.work > 0 && !stop.IsCancellationRequested; next = Math.Max(1, 2 * next)) Ask(next, 0);
        for (var next = 0; low < high && dealt.work > 0 && !stop.IsCancellationRequested; next = (low + high) / 2)
            if (!Ask(next, Exchanges)) low = next + 1;
        return best;

        bool Ask(int evening, double exchanges)
        {
            if (dealt.By(evenings[evening], exchanges, stop) is not { } placed) return false;
            (best, high) = (placed, evening);
            better(placed);
            return true;
        }
    }

    private static List<long> Evenings(ScheduleProblem problem, long enough, long before) =>
        [.. problem.Visits.Select(v => v.Open).Distinct().SelectMany(o => o).Select(w => w.To).Append(before - 1).Where(e => e >= enough && e < before).Distinct().Order()];

    /// <summary>As many shares as there are crews and pieces of every gear; the bulkiest job first, to whoever has least and can do it.</summary>
    private static CrewByCrew? Dealt(ScheduleProblem problem, Effort effort)
    {
        var used = problem.Holds.Select(h => h.Gear).Concat(problem.Visits.SelectMany(v => v.Needs).Select(n => n.Gear)).Distinct();
        var shares = used.Select(g => problem.Gear[g].Count).Append(problem.Crews.Count).Min();
        if (shares < 2 || effort.Deterministic < LeastForEach * shares) return null;
        var dealt = new CrewByCrew(problem, shares, effort.Deterministic);
        var load = new double[shares];
        foreach (var job in Tied(problem).OrderByDescending(dealt.Bulk).ThenBy(j => j[0]))
        {
            var able = Enumerable.Range(0, shares).Where(s => dealt.CanDo(s, job)).OrderBy(s => load[s] / dealt.crews[s].Count).ThenBy(s => s).ToList();
            if (able.Count == 0) return null;
            dealt.jobs[able[0]].Add(job);
            load[able[0]] += dealt.Bulk(job);
        }

        return dealt;
    }

    /// <summary>How hard a job is to fit in: long visits leave little of their day to others, so they count more than their hours.</summary>
    private double Bulk(List<int> job) => job.Where(v => problem.Visits[v].NeedsCrew).Sum(v => (double)problem.Visits[v].Length * problem.Visits[v].Length);

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

    /// <summary>All done by an evening; null: not found. Where some crews are not, jobs are exchanged between them and others.</summary>
    /// <param name="exchanges">The share of the work left that they may take.</param>
    private IReadOnlyList<PlacedVisit>? By(long evening, double exchanges, CancellationToken stop)
    {
        var left = work * (1 - exchanges);
        for (var s = 0; s < found.Length; s++) if (found[s] is { } placed && LastEnd(s, placed) > evening) found[s] = null;
        Solve(Lacking());
        while (Lacking() is { Count: > 0 } lacking && work > left && !stop.IsCancellationRequested)
        {
            var from = Any(lacking);
            var to = Any(Enumerable.Range(0, found.Length).Where(s => s != from).ToList());
            var (one, other) = (Any(jobs[from]), Any(jobs[to]));
            var isOfUse = found[to] is null ? Bulk(one) != Bulk(other) : Bulk(one) > Bulk(other);
            if (!isOfUse || !CanDo(to, one) || !CanDo(from, other))
            {
                work -= NoExchange;
                continue;
            }

            var had = found[to];
            Exchange(from, one, to, other);
            Solve([from, to]);
            // Where the other still gets done with the bulkier job, whoever is not has less to do from now on.
            if (found[from] is not null || found[to] is not null) continue;
            Exchange(from, other, to, one);
            found[to] = had;
        }

        return Lacking().Count == 0 ? Together() : null;

        List<int> Lacking() => [.. Enumerable.Range(0, found.Length).Where(s => found[s] is null)];

        T Any<T>(List<T> of) => of[random.Next(of.Count)];

        void Solve(List<int> shares)
        {
            // They know nothing of each other, so side by side they find what they find one after the other.
            var ran = new Ran[found.Length];
            Parallel.ForEach(shares, s => ran[s] = Within(s, evening, stop));
            foreach (var s in shares)
            {
                work -= ran[s].Work;
                found[s] = ran[s].IsRepeatable ? ran[s].Visits : null;
            }
        }
    }

    private Ran Within(int share, long evening, CancellationToken stop)
    {
        var asked = Of(share) with { Horizon = evening };
        if (LeastEnd.Of(asked).Against.Count > 0) return new Ran(CpSolverStatus.Infeasible, null, 0, IsRepeatable: true, Refuted);
        using var model = new VisitModel(asked, 0);
        return model.Within(new Effort(MostForEach), stop);
    }

    private void Exchange(int one, List<int> its, int other, List<int> theirs)
    {
        jobs[one][jobs[one].IndexOf(its)] = theirs;
        jobs[other][jobs[other].IndexOf(theirs)] = its;
    }

    private List<int> Visits(int share) => [.. jobs[share].SelectMany(j => j).Order()];

    private long LastEnd(int share, IReadOnlyList<PlacedVisit> placed) => Visits(share).Select((v, i) => placed[i].Start + problem.Visits[v].Length).DefaultIfEmpty(0).Max();

    /// <summary>What one share has to do, as a problem of its own.</summary>
    private ScheduleProblem Of(int share)
    {
        var mine = Visits(share);
        var place = mine.Select((v, i) => (v, i)).ToDictionary(p => p.v, p => p.i);
        var crew = crews[share].Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i);
        return problem with
        {
            Visits = [.. mine.Select(v => problem.Visits[v]).Select(v => v.Locked?.Crew is { } c ? v with { Locked = v.Locked with { Crew = crew[c] } } : v)],
            Lags = [.. problem.Lags.Where(l => place.ContainsKey(l.From)).Select(l => l with { From = place[l.From], To = place[l.To] })],
            Holds = [.. problem.Holds.Where(h => place.ContainsKey(h.From)).Select(h => h with { From = place[h.From], To = place[h.To] })],
            Gear = [.. problem.Gear.Select(g => g with { Count = (g.Count / jobs.Length) + (share < g.Count % jobs.Length ? 1 : 0) })],
            Crews = [.. crews[share].Select(c => problem.Crews[c])],
        };
    }

    private IReadOnlyList<PlacedVisit> Together()
    {
        var all = new PlacedVisit[problem.Visits.Count];
        for (var s = 0; s < found.Length; s++)
            foreach (var (v, at) in Visits(s).Zip(found[s]!)) all[v] = at with { Crew = at.Crew is { } c ? crews[s][c] : null };
        return all;
    }
}
