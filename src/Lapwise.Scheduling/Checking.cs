using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>Whether a schedule keeps everything it was asked to keep, with no code of the search.</summary>
public static class Checking
{
    /// <summary>What is broken, in words for a log; empty: nothing. Deadlines are not looked at.</summary>
    public static IReadOnlyList<string> Broken(ScheduleProblem problem, IReadOnlyList<PlacedVisit> placed)
    {
        if (placed.Count != problem.Visits.Count) return ["not every visit has a place"];
        List<string> broken = [];
        long End(int i) => placed[i].Start + problem.Visits[i].Length;
        for (var i = 0; i < placed.Count; i++)
        {
            var (visit, at) = (problem.Visits[i], placed[i]);
            if (at.Start < visit.NotBefore || End(i) > problem.Horizon) broken.Add($"{visit.Id} outside its days");
            // One that stays may stay outside the hours: they may have changed since it was promised.
            if (visit.Locked is null && visit.Open.Count > 0 && !visit.Open.Any(w => w.From <= at.Start && End(i) <= w.To)) broken.Add($"{visit.Id} outside its hours");
            if (visit.Locked is { } locked && (locked.Start != at.Start || (locked.Crew is { } c && c != at.Crew))) broken.Add($"{visit.Id} did not stay");
            if (visit.NeedsCrew != at.Crew is not null) broken.Add($"{visit.Id} has the wrong crew");
            if (at.Crew is { } crew)
            {
                if (visit.Skill is { } skill && !problem.Crews[crew].Skills.Contains(skill, StringComparer.Ordinal)) broken.Add($"{visit.Id} by a crew without the skill");
                if (problem.Crews[crew].Away.Any(w => w.From < End(i) && at.Start < w.To)) broken.Add($"{visit.Id} while its crew is away");
            }
        }

        foreach (var lag in problem.Lags) if (placed[lag.To].Start < placed[lag.From].Start + lag.Least) broken.Add($"lag {lag.Name(Voice.Default)}");
        foreach (var group in Enumerable.Range(0, placed.Count).Where(i => problem.Visits[i].Together is not null && placed[i].Crew is not null).GroupBy(i => problem.Visits[i].Together))
            if (group.Select(i => placed[i].Crew).Distinct().Count() > 1) broken.Add($"{group.Key} not by one crew");
        foreach (var crew in Enumerable.Range(0, placed.Count).Where(i => placed[i].Crew is not null).GroupBy(i => placed[i].Crew))
        {
            var inTurn = crew.OrderBy(i => placed[i].Start).ThenBy(End).ToList();
            foreach (var (a, b) in inTurn.Zip(inTurn.Skip(1)))
                if (placed[b].Start < End(a) + problem.TravelBetween(problem.Visits[a], problem.Visits[b])) broken.Add($"{problem.Visits[a].Id} and {problem.Visits[b].Id} at once");
        }

        for (var gear = 0; gear < problem.Gear.Count; gear++)
        {
            var uses = Enumerable.Range(0, placed.Count).SelectMany(i => problem.Visits[i].Needs.Where(n => n.Gear == gear).Select(n => (From: placed[i].Start, To: End(i), n.Amount)))
                .Concat(problem.Holds.Where(h => h.Gear == gear).Select(h => (From: placed[h.From].Start, To: End(h.To), h.Amount))).ToList();
            if (uses.Any(u => u.To > u.From && uses.Where(o => o.From <= u.From && u.From < o.To).Sum(o => o.Amount) > problem.Gear[gear].Count)) broken.Add($"too little {problem.Gear[gear].Name}");
        }

        return broken;
    }
}
