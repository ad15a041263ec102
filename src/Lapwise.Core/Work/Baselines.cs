using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>
/// The usual ways at the same pace, so that the finisher sees what the plan gains: sections of about 4 ft × 2 ft in the
/// best sweep from any corner, and everything wetted before everything is dry-rolled. Common practice, no source. None for
/// what is poured, nor for what takes no lap at all.
/// </summary>
internal static class Baselines
{
    public static IReadOnlyList<Baseline> Of(MeasuredJob measured, TopWays ways, Aims aims, Pace pace, Product product)
    {
        if (product is not { Method: ApplicationMethod.Rolled and var method, WholeTopAtOnce: false } || measured.Tops.Count == 0) return [];
        long sweepMs = 0, wetFirstMs = 0;
        foreach (var top in measured.Tops)
        {
            var cut = ways.UsualWay(top, aims);
            var problem = TopOrder.ProblemOf(cut, [pace], method) with { Before = [] };
            var best = CornerSweeps(cut).Select(sequence => TopOrder.Of(cut, problem, sequence)).MinBy(o => o.WorstAgeMs)!;
            sweepMs = Math.Max(sweepMs, best.WorstAgeMs);
            wetFirstMs = Math.Max(wetFirstMs, WetFirst(cut, problem, best.Sequence, pace, method));
        }

        return
        [
            new Baseline("usual-sweep", v => v.Say("Sections of about 4 ft × 2 ft, best sweep from any corner", "Secciones de unos 1,2 m × 0,6 m, el mejor barrido desde cualquier esquina"), sweepMs),
            new Baseline("wet-all-first", v => v.Say("Everything wetted first, then dry-rolled", "Todo en húmedo primero, luego todo en seco"), wetFirstMs),
        ];
    }

    /// <summary>Row by row and column by column, from each corner of the plan.</summary>
    private static IEnumerable<IReadOnlyList<int>> CornerSweeps(CutTop cut)
    {
        foreach (var (signX, signY) in new[] { (1, 1), (1, -1), (-1, 1), (-1, -1) })
        {
            yield return [.. cut.Sections.OrderBy(s => Line(signX * Place(s).X)).ThenBy(s => signY * Place(s).Y).Select(s => s.Index)];
            yield return [.. cut.Sections.OrderBy(s => Line(signY * Place(s).Y)).ThenBy(s => signX * Place(s).X).Select(s => s.Index)];
        }

        static PointM Place(SectionShape s) => s.Face.Kind is FaceKind.Flat ? s.CentreM : s.StandAt;
        static long Line(double m) => (long)Math.Round(m * 20);
    }

    /// <summary>Wet every section in turn, then dry-roll every section in turn.</summary>
    private static long WetFirst(CutTop cut, OrderProblem problem, IReadOnlyList<int> sequence, Pace pace, ApplicationMethod method)
    {
        var start = new long[sequence.Count];
        var end = new long[sequence.Count];
        long now = 0;
        foreach (var u in sequence)
        {
            start[u] = now;
            now += SectionTime.Of(cut.Sections[u], pace, method).WetMs;
        }

        foreach (var u in sequence) end[u] = now += SectionTime.Of(cut.Sections[u], pace, method).DryMs;
        var sections = sequence.Select(u => end[u] - start[u]);
        var laps = problem.Laps.Select(l => Math.Max(end[l.A], end[l.B]) - Math.Min(start[l.A], start[l.B]));
        return sections.Concat(laps).Max();
    }
}
