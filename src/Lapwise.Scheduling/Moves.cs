using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>One visit that stands elsewhere than before.</summary>
/// <param name="Visit">Its place in the problem.</param>
/// <param name="Why">What took its old place, or what it could gain.</param>
public sealed record Move(int Visit, PlacedVisit From, PlacedVisit To, Phrase Why);

/// <summary>What moved between two schedules, and why.</summary>
public static class Moves
{
    public static IReadOnlyList<Move> Since(IReadOnlyDictionary<string, PlacedVisit> before, ScheduleProblem problem, IReadOnlyList<PlacedVisit> now)
    {
        List<Move> moves = [];
        for (var i = 0; i < now.Count; i++)
            if (before.TryGetValue(problem.Visits[i].Id, out var was) && was != now[i]) moves.Add(new Move(i, was, now[i], Why(problem, now, i, was)));
        return moves;
    }

    /// <summary>What would stand against the old place in the new schedule.</summary>
    private static Phrase Why(ScheduleProblem problem, IReadOnlyList<PlacedVisit> now, int i, PlacedVisit was)
    {
        var visit = problem.Visits[i];
        var end = was.Start + visit.Length;
        if (was.Start < visit.NotBefore || (visit.Open.Count > 0 && !visit.Open.Any(w => w.From <= was.Start && end <= w.To)))
            return v => v.Say("it cannot be done then any more: a day lost, or hours that changed", "ya no puede hacerse entonces: un día perdido, u horas que cambiaron");
        if (was.Crew is { } crew && (crew >= problem.Crews.Count || problem.Crews[crew].Away.Any(a => a.From < end && was.Start < a.To)))
            return v => v.Say("its crew is away", "su equipo no está");
        for (var j = 0; was.Crew is not null && j < now.Count; j++)
        {
            if (j == i || now[j].Crew != was.Crew) continue;
            var other = problem.Visits[j];
            if (now[j].Start < end + problem.TravelBetween(visit, other) && was.Start < now[j].Start + other.Length + problem.TravelBetween(other, visit))
                return v => v.Say($"its crew is at {other.Name}", $"su equipo está en {other.Name}");
        }

        foreach (var lag in problem.Lags)
        {
            if (lag.To == i && was.Start < now[lag.From].Start + lag.Least) return v => v.Say($"{lag.Name}: {problem.Visits[lag.From].Name} moved", $"{lag.Name}: se movió {problem.Visits[lag.From].Name}");
            if (lag.From == i && now[lag.To].Start < was.Start + lag.Least) return v => v.Say($"{lag.Name}: {problem.Visits[lag.To].Name} moved", $"{lag.Name}: se movió {problem.Visits[lag.To].Name}");
        }

        return now[i].Start < was.Start
            ? v => v.Say("it can be earlier now", "ahora puede ser antes")
            : v => v.Say("all jobs together end sooner so", "así acaban antes todos los trabajos juntos");
    }
}
