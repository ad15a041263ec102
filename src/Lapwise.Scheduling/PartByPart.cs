using Google.OrTools.Sat;

namespace Lapwise.Scheduling;

/// <summary>
/// Betters a schedule a few jobs at a time: all others stay where they are, and the solver places those few anew, with no later
/// end than there was. The same count of work gives the same answer.
/// </summary>
internal sealed class PartByPart
{
    private const int FewestJobs = 3;
    private const int FewAtFirst = 6;
    /// <summary>The solver's own count for one part, and what stating the question costs at the least.</summary>
    private const double MostWork = 0.5;
    private const double LeastWork = 0.05;

    private enum Choice { LateAmongNeighbours, Neighbours, Any }

    private readonly ScheduleProblem problem;
    private readonly List<int[]> jobs;
    private readonly Random random = new(1);
    // How many jobs the solver gets done with, for each way of choosing them.
    private readonly int[] few = [.. Enum.GetValues<Choice>().Select(_ => FewAtFirst)];

    private PartByPart(ScheduleProblem problem)
    {
        this.problem = problem;
        jobs = [.. Enumerable.Range(0, problem.Visits.Count).GroupBy(i => problem.Visits[i].Job).Select(g => g.ToArray()).Where(g => g.All(v => problem.Visits[v].Locked is null))];
    }

    /// <summary>Whether parts are much smaller than the whole.</summary>
    public static bool IsOfUse(ScheduleProblem problem) => problem.Crews.Count > 0 && new PartByPart(problem).jobs.Count > 2 * FewAtFirst;

    /// <param name="enough">Nothing ends earlier than this.</param>
    /// <param name="work">In the solver's own count.</param>
    /// <param name="better">Told each that ends earlier.</param>
    public static IReadOnlyList<PlacedVisit> Better(ScheduleProblem problem, IReadOnlyList<PlacedVisit> first, long enough, double work, Action<IReadOnlyList<PlacedVisit>> better, CancellationToken stop)
    {
        var parts = new PartByPart(problem);
        var (best, lastEnd) = (first, parts.LastEnd(first));
        while (work > 0 && lastEnd > enough && !stop.IsCancellationRequested)
        {
            var choice = (Choice)parts.random.Next(parts.few.Length);
            using var model = new VisitModel(parts.AllButFew(best, choice), enough);
            var ran = model.EarlierEnds(new Effort(MostWork), best, enough, stop);
            work -= Math.Max(LeastWork, ran.Work);
            parts.Learn(choice, ran);
            if (ran.Visits is not { } visits || Checking.Broken(problem, visits).Count > 0) continue;
            var isEarlier = parts.LastEnd(visits) < lastEnd;
            (best, lastEnd) = (visits, parts.LastEnd(visits));
            if (isEarlier) better(best);
        }

        return best;
    }

    /// <summary>All jobs but the chosen ones are settled where they are, and nothing may end later than it does.</summary>
    private ScheduleProblem AllButFew(IReadOnlyList<PlacedVisit> placed, Choice choice)
    {
        var free = Chosen(placed, choice).Take(few[(int)choice]).SelectMany(j => jobs[j]).ToHashSet();
        return problem with
        {
            Horizon = LastEnd(placed),
            Visits = [.. problem.Visits.Select((v, i) => free.Contains(i) ? v : v with { Locked = new Locked(placed[i].Start, placed[i].Crew) })],
        };
    }

    private IEnumerable<int> Chosen(IReadOnlyList<PlacedVisit> placed, Choice choice)
    {
        var any = Enumerable.Range(0, jobs.Count).OrderBy(_ => random.Next()).ToList();
        if (choice == Choice.Any) return any;
        var middle = Middle(any[0]);
        var neighbours = any.OrderBy(j => Math.Abs(Middle(j) - middle));
        return choice == Choice.Neighbours ? neighbours : neighbours.Prepend(any.MaxBy(j => jobs[j].Max(v => placed[v].Start))).Distinct();

        double Middle(int job) => jobs[job].Average(v => placed[v].Start);
    }

    private void Learn(Choice choice, Ran ran)
    {
        var step = ran.Status != CpSolverStatus.Optimal ? -1 : ran.Work < MostWork / 4 ? 1 : 0;
        few[(int)choice] = Math.Clamp(few[(int)choice] + step, FewestJobs, jobs.Count);
    }

    private long LastEnd(IReadOnlyList<PlacedVisit> placed) => placed.Select((p, i) => p.Start + problem.Visits[i].Length).Max();
}
