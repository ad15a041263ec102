using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>
/// Chooses how a top is cut and swept: among the ways that keep every age under the target the simplest to follow;
/// where none does, the one with the smallest worst age.
/// </summary>
internal static class TopPlanning
{
    /// <summary>Counted steps of the exact search, so that every machine stops at the same place.</summary>
    private const long StepsAWay = 20_000;
    private const int WaysSearched = 6;

    public static TopOrder Choose(MeasuredTop top, Aims aims, Pace pace, ApplicationMethod method, long targetAgeMs)
    {
        var ways = new List<(CutTop Cut, OrderProblem Problem)>();
        TopOrder? simplest = null, youngest = null;
        foreach (var cut in WaysOf(top, aims, method))
        {
            if (simplest is not null && cut.Sections.Count > simplest.Cut.Sections.Count) break;
            var problem = TopOrder.ProblemOf(cut, pace, method);
            ways.Add((cut, problem));
            foreach (var order in TopSweeps.Of(cut, problem)) Consider(order);
        }

        // No sweep keeps the target: look for any order that does, most hopeful way first.
        if (simplest is null)
        {
            foreach (var (cut, problem) in ways.OrderBy(w => LongestSectionMs(w.Problem)).ThenBy(w => w.Cut.Sections.Count).Take(WaysSearched))
                Consider(Searched(cut, problem));
        }

        return simplest ?? youngest!;

        void Consider(TopOrder order)
        {
            var reachable = order.Cut.Reasons.Count == 0;
            if (youngest is null || (reachable, -order.WorstAgeMs).CompareTo((youngest.Cut.Reasons.Count == 0, -youngest.WorstAgeMs)) > 0) youngest = order;
            if (order.WorstAgeMs <= targetAgeMs && reachable && (simplest is null || order.IsSimplerThan(simplest))) simplest = order;
        }
    }

    private static IEnumerable<CutTop> WaysOf(MeasuredTop top, Aims aims, ApplicationMethod method) =>
        method is ApplicationMethod.Poured
            ? [Sectioning.Cut(top, aims, new CutChoice.WholeFaces())]
            : Sectioning.Ways(top, aims);

    private static TopOrder Searched(CutTop cut, OrderProblem problem)
    {
        var found = OrderSearch.Solve(problem, StepsAWay);
        return TopOrder.Of(cut, problem, [.. found.Sections.OrderBy(p => p.StartMs).Select(p => p.Section)]);
    }

    private static long LongestSectionMs(OrderProblem problem) => problem.Sections.Max(s => s.DurationMs[0]);
}
