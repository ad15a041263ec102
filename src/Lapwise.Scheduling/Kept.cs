using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>Visits that stay, where they are what stands against a schedule.</summary>
internal static class Kept
{
    // Each is looked at with a question of its own; what was worked long ago is rarely to blame.
    private const int MostLookedAt = 50;
    private const int MostNamed = 3;

    /// <summary>Those of which any one, let move, would leave nothing known against a schedule; where it takes several, those outside their hours.</summary>
    /// <param name="stands">Whether something is known against a schedule.</param>
    public static IReadOnlyList<Reason> Against(ScheduleProblem problem, Func<ScheduleProblem, bool> stands)
    {
        var kept = Enumerable.Range(0, problem.Visits.Count).Where(i => problem.Visits[i].Locked is not null).OrderBy(i => IsInHours(problem.Visits[i])).ThenByDescending(i => problem.Visits[i].Locked!.Start).Take(MostLookedAt).ToList();
        if (kept.Count == 0) return [];
        var alone = kept.Where(i => !stands(Let(problem, [i]))).Take(MostNamed).ToList();
        if (alone.Count > 0) return [.. alone.Select(i => Say(problem.Visits[i]))];
        return stands(Let(problem, kept)) ? [] : [.. kept.Where(i => !IsInHours(problem.Visits[i])).DefaultIfEmpty(kept[0]).Take(MostNamed).Select(i => Say(problem.Visits[i]))];
    }

    /// <summary>Whether it could be placed there if it did not stay.</summary>
    public static bool IsInHours(Visit visit) =>
        visit.Locked is not { } locked || visit.Open.Count == 0 || visit.Open.Any(w => w.From <= locked.Start && locked.Start + visit.Length <= w.To);

    private static ScheduleProblem Let(ScheduleProblem problem, IReadOnlyCollection<int> move) =>
        problem with { Visits = [.. problem.Visits.Select((v, i) => move.Contains(i) ? v with { Locked = null } : v)] };

    private static Reason Say(Visit visit)
    {
        string Where(Voice v) => visit.Locked!.Said is { } said ? ", " + said(v) : "";
        return new Reason("KeptVisitAgainst", Limit.Never,
            v => v.Say($"What stands against it is a visit that is kept in place: {visit.Name(v)}{Where(v)}.", $"Lo que lo impide es una visita que se mantiene en su sitio: {visit.Name(v)}{Where(v)}."),
            v => v.Say("Let it move, or keep it at another time.", "Deje que se mueva, o manténgala a otra hora."));
    }
}
