using System.Globalization;
using Google.OrTools.Sat;
using Google.OrTools.Util;
using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>What one run of the solver came to.</summary>
/// <param name="Visits">Null: no schedule was found.</param>
/// <param name="Work">The solver's own count of what it did.</param>
internal sealed record Ran(CpSolverStatus Status, IReadOnlyList<PlacedVisit>? Visits, long Bound, bool IsRepeatable, double Work = 0);

/// <summary>The problem in the solver's terms. Built in a fixed order, so that the same problem is the same model.</summary>
internal sealed class VisitModel : IDisposable
{
    /// <summary>Beyond this the loads of all crews and days make the model too large.</summary>
    private const int MostHoursOfCrews = 40_000;
    /// <summary>How many visits of a job that moves anyway count as much as a job that need not move at all: whoever must be told anew is told once.</summary>
    private const int MovesToAJob = 60;
    /// <summary>How much more an end counts that is later than any must be.</summary>
    private const int LateCountsMore = 20;
    /// <summary>With nothing to better, linear relaxations and probing cost more than they find: of one crew's ten jobs, most are placed in a quarter of the work.</summary>
    private const string AnyWillDo = ",linearization_level:0,cp_model_probing_level:0";

    private readonly ScheduleProblem problem;
    private readonly CpModel model = new();
    private readonly IntVar[] starts;
    private readonly IntVar lastEnd;
    // For each visit and crew; null: that crew cannot. Visits done together share theirs.
    private readonly BoolVar?[][] by;

    public VisitModel(ScheduleProblem problem, long bound)
    {
        this.problem = problem;
        starts = [.. problem.Visits.Select((v, i) => model.NewIntVarFromDomain(Places(v), $"s{i}"))];
        lastEnd = model.NewIntVar(Math.Min(bound, problem.Horizon), problem.Horizon, "end");
        var outlived = problem.Lags.Where(l => l.Least + problem.Visits[l.To].Length > problem.Visits[l.From].Length).Select(l => l.From).ToHashSet();
        for (var i = 0; i < starts.Length; i++) if (!outlived.Contains(i)) model.Add(lastEnd >= starts[i] + problem.Visits[i].Length);
        foreach (var lag in problem.Lags) model.Add(starts[lag.To] >= starts[lag.From] + lag.Least);
        by = Crews();
        Gear();
        Travel();
        Load();
    }

    public Ran EarliestEnd(Effort effort, IReadOnlyList<PlacedVisit>? hint, Action<Ran>? better, CancellationToken stop)
    {
        KeepDeadlines();
        if (hint is not null) Hint(hint);
        model.Minimize(lastEnd);
        return Run(effort, better, stop);
    }

    /// <summary>Any schedule within the horizon.</summary>
    public Ran Within(Effort effort, CancellationToken stop)
    {
        KeepDeadlines();
        return Run(effort, null, stop, AnyWillDo);
    }

    public Ran FewMoves(Effort effort, Schedule known, Action<Ran>? better, CancellationToken stop)
    {
        KeepDeadlines();
        model.Add(lastEnd <= known.LastEnd);
        Hint(known.Visits);
        List<LinearExpr> costs = [.. EndsOfJobs(), .. problem.Stretches.Select(s => starts[s.To] - starts[s.From])];
        var moves = new Dictionary<string, BoolVar>(StringComparer.Ordinal);
        for (var i = 0; i < starts.Length; i++)
        {
            if (!problem.Before.TryGetValue(problem.Visits[i].Id, out var before)) continue;
            var stays = model.NewBoolVar($"stays{i}");
            model.Add(starts[i] == before.Start).OnlyEnforceIf(stays);
            if (before.Crew is { } crew && crew < by[i].Length && by[i][crew] is { } same) model.AddImplication(stays, same);
            costs.Add((1 - stays) * (problem.Horizon / MovesToAJob));
            if (!moves.TryGetValue(problem.Visits[i].Job, out var job)) costs.Add((moves[problem.Visits[i].Job] = job = model.NewBoolVar($"moves{i}")) * problem.Horizon);
            model.AddBoolOr([stays, job]);
        }

        model.Minimize(LinearExpr.Sum(costs));
        return Run(effort, better, stop);
    }

    /// <summary>Earlier ends of the jobs, those first that end later than any must.</summary>
    public Ran EarlierEnds(Effort effort, IReadOnlyList<PlacedVisit> known, long enough, CancellationToken stop)
    {
        KeepDeadlines();
        Hint(known);
        List<LinearExpr> costs = [];
        foreach (var end in EndsOfJobs())
        {
            var late = model.NewIntVar(0, problem.Horizon, $"late{costs.Count}");
            model.Add(late >= end - enough);
            costs.Add(end);
            costs.Add(late * LateCountsMore);
        }

        model.Minimize(LinearExpr.Sum(costs));
        return Run(effort, null, stop);
    }

    private List<LinearExpr> EndsOfJobs()
    {
        List<LinearExpr> ends = [];
        foreach (var job in Enumerable.Range(0, starts.Length).GroupBy(i => problem.Visits[i].Job))
        {
            var end = model.NewIntVar(0, problem.Horizon, $"end of {job.First()}");
            foreach (var i in job) model.Add(end >= starts[i] + problem.Visits[i].Length);
            ends.Add(end);
        }

        return ends;
    }

    public Ran LeastLate(Effort effort, IReadOnlyList<PlacedVisit>? hint, CancellationToken stop)
    {
        if (hint is not null) Hint(hint);
        List<LinearExpr> costs = [lastEnd];
        for (var i = 0; i < starts.Length; i++)
        {
            if (problem.Visits[i].DueBy is not { } due) continue;
            var late = model.NewIntVar(0, problem.Horizon, $"late{i}");
            model.Add(late >= starts[i] + problem.Visits[i].Length - due);
            costs.Add(late * 100);
        }

        model.Minimize(LinearExpr.Sum(costs));
        return Run(effort, null, stop);
    }

    public void Dispose() => GC.KeepAlive(model);

    private Domain Places(Visit visit)
    {
        if (visit.Locked is { } locked) return new Domain(locked.Start, locked.Start);
        var latest = problem.Horizon - visit.Length;
        if (visit.Open.Count == 0) return new Domain(visit.NotBefore, Math.Max(visit.NotBefore, latest));
        return Domain.FromIntervals([.. visit.Open
            .Select(w => (From: Math.Max(w.From, visit.NotBefore), To: Math.Min(w.To - visit.Length, latest)))
            .Where(w => w.From <= w.To).Select(w => new[] { w.From, w.To })]);
    }

    private void KeepDeadlines()
    {
        for (var i = 0; i < starts.Length; i++)
            if (problem.Visits[i].DueBy is { } due) model.Add(starts[i] <= due - problem.Visits[i].Length);
    }

    private BoolVar?[][] Crews()
    {
        var crews = problem.Crews.Count;
        var literals = new BoolVar?[starts.Length][];
        var together = new Dictionary<string, BoolVar?[]>(StringComparer.Ordinal);
        for (var i = 0; i < starts.Length; i++)
        {
            var visit = problem.Visits[i];
            literals[i] = new BoolVar?[visit.NeedsCrew ? crews : 0];
            if (!visit.NeedsCrew) continue;
            if (visit.Together is { } name && together.TryGetValue(name, out var shared)) literals[i] = shared;
            else
            {
                for (var c = 0; c < crews; c++) literals[i][c] = model.NewBoolVar($"v{i}c{c}");
                model.AddExactlyOne(literals[i].Select(l => l!));
                if (visit.Together is { } first) together[first] = literals[i];
            }

            var able = problem.CrewsFor(visit);
            for (var c = 0; c < crews; c++) if (!able.Contains(c)) model.Add(literals[i][c]! == 0);
        }

        for (var c = 0; c < crews; c++)
        {
            List<IntervalVar> busy = [];
            for (var i = 0; i < starts.Length; i++)
                if (problem.Visits[i].NeedsCrew) busy.Add(model.NewOptionalFixedSizeIntervalVar(starts[i], problem.Visits[i].Length, literals[i][c]!, $"v{i}on{c}"));
            foreach (var away in problem.Crews[c].Away) busy.Add(model.NewFixedSizeIntervalVar(away.From, away.To - away.From, $"away{c}"));
            model.AddNoOverlap(busy);
        }

        if (crews > 1)
        {
            var all = model.AddCumulative(crews);
            for (var i = 0; i < starts.Length; i++)
                if (problem.Visits[i].NeedsCrew) all.AddDemand(model.NewFixedSizeIntervalVar(starts[i], problem.Visits[i].Length, $"w{i}"), 1);
        }

        return literals;
    }

    private void Gear()
    {
        var done = starts.Select((s, i) => problem.Visits[i].Needs.Count == 0 ? null : model.NewFixedSizeIntervalVar(s, problem.Visits[i].Length, $"g{i}")).ToArray();
        for (var gear = 0; gear < problem.Gear.Count; gear++)
        {
            var cumulative = model.AddCumulative(problem.Gear[gear].Count);
            for (var i = 0; i < starts.Length; i++)
                foreach (var need in problem.Visits[i].Needs)
                    if (need.Gear == gear && need.Amount > 0) cumulative.AddDemand(done[i]!, need.Amount);
            foreach (var hold in problem.Holds)
            {
                if (hold.Gear != gear) continue;
                var length = model.NewIntVar(0, problem.Horizon, "held");
                cumulative.AddDemand(model.NewIntervalVar(starts[hold.From], length, starts[hold.To] + problem.Visits[hold.To].Length, "hold"), hold.Amount);
            }
        }
    }

    /// <summary>What a crew does within one stretch of open hours is no longer than that. It follows from the rest; said outright it is found sooner.</summary>
    private void Load()
    {
        if (problem.Visits.Select((v, i) => v.Locked is null ? v.Open.Count(h => h.From < problem.Horizon) * by[i].Length : 1).Sum() > MostHoursOfCrews) return;
        var load = new Dictionary<(int Crew, Window Hours), List<LinearExpr>>();
        for (var i = 0; i < starts.Length; i++)
        {
            var visit = problem.Visits[i];
            if (!visit.NeedsCrew || visit.Open.Count < 2) continue;
            if (visit.Locked is { } locked)
            {
                // One that stays may stay outside the hours, and by whatever crew is said elsewhere.
                foreach (var hours in visit.Open.Where(h => locked.Crew is not null && h.From <= locked.Start && locked.Start + visit.Length <= h.To))
                    Add(locked.Crew!.Value, hours, LinearExpr.Constant(visit.Length));
                continue;
            }

            List<BoolVar> within = [];
            foreach (var hours in visit.Open)
            {
                var (from, to) = (Math.Max(hours.From, visit.NotBefore), Math.Min(hours.To, problem.Horizon) - visit.Length);
                if (from > to) continue;
                var lies = model.NewBoolVar($"v{i}in{hours.From}");
                model.AddLinearExpressionInDomain(starts[i], new Domain(from, to)).OnlyEnforceIf(lies);
                within.Add(lies);
                foreach (var c in problem.CrewsFor(visit))
                {
                    var does = model.NewBoolVar($"v{i}in{hours.From}by{c}");
                    model.AddBoolOr([does, lies.Not(), by[i][c]!.Not()]);
                    model.AddImplication(does, lies);
                    model.AddImplication(does, by[i][c]!);
                    Add(c, hours, does * visit.Length);
                }
            }

            model.AddExactlyOne(within);
        }

        foreach (var ((_, hours), does) in load) model.Add(LinearExpr.Sum(does) <= hours.To - hours.From);

        void Add(int crew, Window hours, LinearExpr does)
        {
            if (!load.TryGetValue((crew, hours), out var all)) load[(crew, hours)] = all = [];
            all.Add(does);
        }
    }

    /// <summary>Two visits of one crew at two places: whichever is first, the way lies between.</summary>
    private void Travel()
    {
        if (problem.Travel.Count == 0) return;
        var same = new Dictionary<(BoolVar?[], BoolVar?[]), BoolVar>();
        var taken = new Dictionary<(int Visit, int Crew), List<long[]>>();
        for (var a = 0; a < starts.Length; a++)
        {
            for (var b = a + 1; b < starts.Length; b++)
            {
                var (one, other) = (problem.Visits[a], problem.Visits[b]);
                var (there, back) = (problem.TravelBetween(one, other), problem.TravelBetween(other, one));
                if (!one.NeedsCrew || !other.NeedsCrew || (there == 0 && back == 0) || NeverNear(one, other, Math.Max(there, back))) continue;
                if (one.Locked is { Crew: { } crew } settled) Takes(b, crew, settled.Start - other.Length - back, settled.Start + one.Length + there);
                else if (other.Locked is { Crew: { } its } fixedAt) Takes(a, its, fixedAt.Start - one.Length - there, fixedAt.Start + other.Length + back);
                else
                {
                    var first = model.NewBoolVar($"{a}first{b}");
                    model.Add(starts[b] >= starts[a] + one.Length + there).OnlyEnforceIf([first, Same(a, b)]);
                    model.Add(starts[a] >= starts[b] + other.Length + back).OnlyEnforceIf([first.Not(), Same(a, b)]);
                }
            }
        }

        foreach (var ((visit, crew), spans) in taken)
            model.AddLinearExpressionInDomain(starts[visit], Domain.FromIntervals([.. spans]).Complement()).OnlyEnforceIf(by[visit][crew]!);

        // A settled visit, with the ways to and from it, leaves another of its crew no start between.
        void Takes(int visit, int crew, long after, long before)
        {
            if (!taken.TryGetValue((visit, crew), out var spans)) taken[(visit, crew)] = spans = [];
            spans.Add([after + 1, before - 1]);
        }

        BoolVar Same(int a, int b)
        {
            if (same.TryGetValue((by[a], by[b]), out var literal)) return literal;
            same[(by[a], by[b])] = literal = model.NewBoolVar($"same{a},{b}");
            for (var c = 0; c < problem.Crews.Count; c++) model.AddBoolOr([literal, by[a][c]!.Not(), by[b][c]!.Not()]);
            return literal;
        }
    }

    /// <summary>Two that together fill more than any of their windows, where nights are longer than the way, never meet in one.</summary>
    private static bool NeverNear(Visit one, Visit other, long travel) =>
        one.Open.Count > 1 && ReferenceEquals(one.Open, other.Open) && one.Open.All(w => w.To - w.From < one.Length + other.Length)
        && one.Open.Zip(one.Open.Skip(1)).All(p => p.Second.From - p.First.To >= travel);

    private void Hint(IReadOnlyList<PlacedVisit> known)
    {
        HashSet<BoolVar?[]> told = [];
        for (var i = 0; i < starts.Length; i++)
        {
            model.AddHint(starts[i], known[i].Start);
            if (!told.Add(by[i])) continue;
            for (var c = 0; c < by[i].Length; c++) model.AddHint(by[i][c]!, known[i].Crew == c ? 1 : 0);
        }
    }

    private PlacedVisit[] Read(Func<IntVar, long> value) =>
        [.. starts.Select((s, i) => new PlacedVisit(value(s), by[i].Length == 0 ? null : Array.FindIndex(by[i], l => value((IntVar)l!) == 1)))];

    private Ran Run(Effort effort, Action<Ran>? better, CancellationToken stop, string more = "")
    {
        using var solver = new CpSolver();
        var workers = effort.Workers > 1 ? $"num_workers:{effort.Workers}" : "num_workers:1";
        solver.StringParameters = string.Create(CultureInfo.InvariantCulture,
            $"{workers},random_seed:1,max_deterministic_time:{effort.Deterministic:0.###},max_time_in_seconds:{effort.SafetyS:0.###}{more}");
        using var watch = new Watching(this, better);
        if (stop.IsCancellationRequested) return new Ran(CpSolverStatus.Unknown, null, 0, IsRepeatable: false);
        if (better is not null) solver.SetBestBoundCallback(watch.Bounded);
        CpSolverStatus status;
        using (new Stopping(solver, stop)) status = solver.Solve(model, watch);
        var found = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        return new Ran(status, found ? Read(solver.Value) : null, (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6),
            effort.Workers == 1 && !stop.IsCancellationRequested && (status == CpSolverStatus.Optimal || solver.WallTime() < effort.SafetyS),
            solver.Response?.DeterministicTime ?? 0);
    }

    /// <summary>Hands a wish to stop on to the solver, again and again: one that comes before it has begun would be lost on it.</summary>
    private sealed class Stopping : IDisposable
    {
        private const int EveryMs = 50;
        private readonly Lock ending = new();
        private readonly Timer timer;
        private bool hasEnded;

        public Stopping(CpSolver solver, CancellationToken stop) => timer = new Timer(_ =>
        {
            // The solver is native: nothing may be asked of it once it is gone.
            lock (ending) if (!hasEnded && stop.IsCancellationRequested) solver.StopSearch();
        }, null, EveryMs, EveryMs);

        public void Dispose()
        {
            lock (ending) hasEnded = true;
            timer.Dispose();
        }
    }

    /// <summary>Hands on what the solver finds: better visits, and better bounds for the visits there are.</summary>
    private sealed class Watching(VisitModel of, Action<Ran>? better) : CpSolverSolutionCallback
    {
        private Ran? last;

        public override void OnSolutionCallback()
        {
            last = new Ran(CpSolverStatus.Feasible, of.Read(Value), (long)Math.Ceiling(BestObjectiveBound() - 1e-6), IsRepeatable: true);
            better?.Invoke(last);
        }

        public void Bounded(double bound)
        {
            if (last is { } ran && better is not null) better(last = ran with { Bound = Math.Max(ran.Bound, (long)Math.Ceiling(bound - 1e-6)) });
        }
    }
}
