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
    public static async ValueTask<TopOrder> ForOneAsync(MeasuredTop top, Aims aims, Pace pace, Product product, TopWays known, long targetAgeMs, Effort effort)
    {
        var ways = new List<(CutTop Cut, OrderProblem Problem)>();
        var choice = new Choice(targetAgeMs);
        await foreach (var cut in known.Of(top, aims, product, effort.Pause))
        {
            if (choice.Simplest is { } simplest && cut.Sections.Count > simplest.Cut.Sections.Count) break;
            var problem = TopOrder.ProblemOf(cut, [pace], product.Method);
            ways.Add((cut, problem));
            foreach (var order in TopSweeps.Of(cut, problem)) choice.Consider(order);
            await effort.Pause();
        }

        if (choice.Simplest is null)
            foreach (var (cut, problem) in MostHopeful(ways)) choice.Consider(await SearchedAsync(cut, problem, targetAgeMs, effort));
        return choice.Best;
    }

    /// <summary>For several people: the fewest sections for which an order keeps the target.</summary>
    public static async ValueTask<TopOrder> ForCrewAsync(MeasuredTop top, Aims aims, IReadOnlyList<Pace> rollers, Product product, TopWays known, long targetAgeMs, Effort effort)
    {
        var choice = new Choice(targetAgeMs);
        var ways = new List<(CutTop Cut, OrderProblem Problem)>();
        await foreach (var cut in known.Of(top, aims, product, effort.Pause)) ways.Add((cut, TopOrder.ProblemOf(cut, rollers, product.Method)));
        foreach (var (cut, problem) in MostHopeful(ways))
        {
            choice.Consider(await SearchedAsync(cut, problem, targetAgeMs, effort));
            if (choice.Simplest is not null) break;
        }

        return choice.Best;
    }

    /// <summary>Everything is reached, and there is a place to stand.</summary>
    public static bool Works(CutTop cut) => cut.Reasons.All(r => r.Limit == Explain.Limit.Note);

    private static IEnumerable<(CutTop Cut, OrderProblem Problem)> MostHopeful(IEnumerable<(CutTop Cut, OrderProblem Problem)> ways) =>
        ways.OrderBy(w => w.Problem.Sections.Max(s => s.ShortestMs)).ThenBy(w => w.Cut.Sections.Count).Take(WaysSearched);

    private static async ValueTask<TopOrder> SearchedAsync(CutTop cut, OrderProblem problem, long targetAgeMs, Effort effort)
    {
        var found = await OrderSearch.SolveAsync(problem, StepsAWay * effort.Times, targetAgeMs, effort.Pause);
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
            var works = Works(order.Cut);
            if (_youngest is null || (works, -order.WorstAgeMs).CompareTo((Works(_youngest.Cut), -_youngest.WorstAgeMs)) > 0) _youngest = order;
            if (works && order.WorstAgeMs <= targetAgeMs && (Simplest is null || order.IsSimplerThan(Simplest))) Simplest = order;
        }
    }
}
