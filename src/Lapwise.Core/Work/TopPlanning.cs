using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>
/// Chooses how a top is cut and in which order it is rolled: among the ways that keep every age under the target the
/// simplest to follow; where none does, the one with the smallest worst age.
/// </summary>
internal static class TopPlanning
{
    // Counted steps of the exact search, so that every machine stops at the same place.
    private const long StepsAWay = 20_000;
    private const int WaysSearched = 6;

    /// <summary>For one person: sweeps first, any order where no sweep keeps the target.</summary>
    public static TopOrder ForOne(MeasuredTop top, Aims aims, Pace pace, ApplicationMethod method, long targetAgeMs)
    {
        var ways = new List<(CutTop Cut, OrderProblem Problem)>();
        var choice = new Choice(targetAgeMs);
        foreach (var cut in WaysOf(top, aims, method))
        {
            if (choice.Simplest is { } simplest && cut.Sections.Count > simplest.Cut.Sections.Count) break;
            var problem = TopOrder.ProblemOf(cut, [pace], method);
            ways.Add((cut, problem));
            foreach (var order in TopSweeps.Of(cut, problem)) choice.Consider(order);
        }

        if (choice.Simplest is null)
            foreach (var (cut, problem) in MostHopeful(ways)) choice.Consider(Searched(cut, problem, targetAgeMs));
        return choice.Best;
    }

    /// <summary>For several people: the fewest sections for which an order keeps the target.</summary>
    public static TopOrder ForCrew(MeasuredTop top, Aims aims, IReadOnlyList<Pace> rollers, ApplicationMethod method, long targetAgeMs)
    {
        var choice = new Choice(targetAgeMs);
        var ways = WaysOf(top, aims, method).Select(cut => (cut, TopOrder.ProblemOf(cut, rollers, method))).ToList();
        foreach (var (cut, problem) in MostHopeful(ways))
        {
            choice.Consider(Searched(cut, problem, targetAgeMs));
            if (choice.Simplest is not null) break;
        }

        return choice.Best;
    }

    private static IEnumerable<CutTop> WaysOf(MeasuredTop top, Aims aims, ApplicationMethod method) =>
        method is ApplicationMethod.Poured
            ? [Sectioning.Cut(top, aims, new CutChoice.WholeFaces())]
            : Sectioning.Ways(top, aims);

    private static IEnumerable<(CutTop Cut, OrderProblem Problem)> MostHopeful(IEnumerable<(CutTop Cut, OrderProblem Problem)> ways) =>
        ways.OrderBy(w => w.Problem.Sections.Max(s => s.ShortestMs)).ThenBy(w => w.Cut.Sections.Count).Take(WaysSearched);

    private static TopOrder Searched(CutTop cut, OrderProblem problem, long targetAgeMs)
    {
        var found = OrderSearch.Solve(problem, StepsAWay, targetAgeMs);
        var worst = Math.Max(found.WorstLapAgeMs, found.Sections.Max(p => p.EndMs - p.StartMs));
        return new TopOrder(cut, problem, [.. found.Sections.OrderBy(p => p.StartMs).Select(p => p.Section)], worst);
    }

    private sealed class Choice(long targetAgeMs)
    {
        private TopOrder? _youngest;

        public TopOrder? Simplest { get; private set; }
        public TopOrder Best => Simplest ?? _youngest!;

        public void Consider(TopOrder order)
        {
            var works = order.Cut.Reasons.Count == 0;
            if (_youngest is null || (works, -order.WorstAgeMs).CompareTo((_youngest.Cut.Reasons.Count == 0, -_youngest.WorstAgeMs)) > 0) _youngest = order;
            if (works && order.WorstAgeMs <= targetAgeMs && (Simplest is null || order.IsSimplerThan(Simplest))) Simplest = order;
        }
    }
}
