using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>
/// Windows that contradict one another whatever the crews do: a positive cycle of lags (Bellman and Ford). Found before the
/// solver is asked, because it can say which they are and the solver cannot.
/// </summary>
internal static class Cycles
{
    private readonly record struct Edge(int From, int To, long Least, Phrase Name);

    /// <summary>Names of the lags round one cycle, in order; null: they can all be met.</summary>
    public static IReadOnlyList<Phrase>? Contradiction(ScheduleProblem problem)
    {
        var origin = problem.Visits.Count;
        var edges = problem.Lags.Select(l => new Edge(l.From, l.To, l.Least, l.Name)).Concat(FromOrigin(problem, origin)).ToList();
        var far = new long[origin + 1];
        var by = new int[origin + 1];
        Array.Fill(by, -1);
        var changed = -1;
        for (var round = 0; round <= origin + 1; round++)
        {
            changed = -1;
            for (var e = 0; e < edges.Count; e++)
            {
                var edge = edges[e];
                if (far[edge.From] + edge.Least <= far[edge.To]) continue;
                far[edge.To] = far[edge.From] + edge.Least;
                by[edge.To] = e;
                changed = edge.To;
            }

            if (changed < 0) return null;
        }

        // After that many rounds the last one pushed hangs on a cycle; walking back far enough lands inside it.
        for (var i = 0; i <= origin + 1; i++) changed = edges[by[changed]].From;
        List<Phrase> names = [];
        var at = changed;
        do
        {
            names.Add(edges[by[at]].Name);
            at = edges[by[at]].From;
        }
        while (at != changed);
        names.Reverse();
        return names;
    }

    private static IEnumerable<Edge> FromOrigin(ScheduleProblem problem, int origin)
    {
        for (var i = 0; i < problem.Visits.Count; i++)
        {
            var visit = problem.Visits[i];
            if (visit.NotBefore > 0) yield return new(origin, i, visit.NotBefore, v => $"{visit.Name(v)}: {v.Say("not before", "no antes")}");
            if (visit.Locked is not { } locked) continue;
            string Stays(Voice v) => $"{visit.Name(v)}: {v.Say("stays", "se queda")}{(locked.Said is { } said ? $" ({said(v)})" : "")}";
            yield return new(origin, i, locked.Start, Stays);
            yield return new(i, origin, -locked.Start, Stays);
        }
    }

    public static Reason Say(IReadOnlyList<Phrase> cycle) => new("WindowsContradict", Limit.Never,
        v => v.Say($"These cannot all be met, whoever works when: {string.Join(" → ", cycle.Select(c => c(v)))}.", $"No se pueden cumplir todas, trabaje quien trabaje: {string.Join(" → ", cycle.Select(c => c(v)))}."),
        v => v.Say("Widen one of them, or unlock a visit.", "Ensanche una, o libere una visita."));
}
