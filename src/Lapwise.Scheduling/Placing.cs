namespace Lapwise.Scheduling;

/// <summary>The first place for one visit beside what stands already: open hours, crews with their travel, gear.</summary>
internal sealed class Placing(ScheduleProblem problem)
{
    private readonly List<(int Visit, long Start)>[] busy = [.. problem.Crews.Select(_ => new List<(int, long)>())];
    private readonly List<(long From, long To, int Amount)>[] taken = [.. problem.Gear.Select(_ => new List<(long, long, int)>())];

    public void Put(int visit, PlacedVisit at)
    {
        if (at.Crew is { } crew) busy[crew].Add((visit, at.Start));
        foreach (var need in problem.Visits[visit].Needs) taken[need.Gear].Add((at.Start, at.Start + problem.Visits[visit].Length, need.Amount));
    }

    public void Keep(Hold hold, long from, long to) => taken[hold.Gear].Add((from, to, hold.Amount));

    /// <summary>Null: none before the horizon.</summary>
    public long? First(int index, long earliest, int? crew)
    {
        var visit = problem.Visits[index];
        if (visit.Locked is { } locked) return locked.Start >= earliest ? locked.Start : null;
        var at = Math.Max(earliest, visit.NotBefore);
        while (at + visit.Length <= problem.Horizon)
        {
            var next = Opening(visit, at);
            if (next is not { } open) return null;
            at = open;
            if (crew is { } c && AfterOthers(visit, at, c) is { } later) at = later;
            else if (AfterGear(visit, at) is { } free) at = free;
            else return at;
        }

        return null;
    }

    /// <summary>When gear held over a span is free; null: it is, as the span stands.</summary>
    public long? WhenFree(Hold hold, long from, long to) => Over(hold.Gear, hold.Amount, from, to);

    private static long? Opening(Visit visit, long at)
    {
        if (visit.Open.Count == 0) return at;
        var (low, high) = (0, visit.Open.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (visit.Open[middle].To - visit.Length < at) low = middle + 1;
            else high = middle;
        }

        for (; low < visit.Open.Count; low++)
            if (Math.Max(at, visit.Open[low].From) + visit.Length <= visit.Open[low].To) return Math.Max(at, visit.Open[low].From);
        return null;
    }

    private long? AfterOthers(Visit visit, long at, int crew)
    {
        foreach (var away in problem.Crews[crew].Away)
            if (at < away.To && away.From < at + visit.Length) return away.To;
        foreach (var (other, start) in busy[crew])
        {
            var placed = problem.Visits[other];
            var free = start + placed.Length + problem.TravelBetween(placed, visit);
            if (at < free && start < at + visit.Length + problem.TravelBetween(visit, placed)) return free;
        }

        return null;
    }

    private long? AfterGear(Visit visit, long at)
    {
        foreach (var need in visit.Needs)
            if (Over(need.Gear, need.Amount, at, at + visit.Length) is { } free) return free;
        return null;
    }

    /// <summary>The first end of what is in the way; null: there is enough.</summary>
    private long? Over(int gear, int amount, long from, long to)
    {
        // Counted where it can rise: at the beginning, and where another's use begins.
        var most = problem.Gear[gear].Count - amount;
        long? free = null;
        var isShort = At(from) > most;
        foreach (var use in taken[gear])
        {
            if (use.From >= to || from >= use.To) continue;
            free = free is { } sooner && sooner < use.To ? sooner : use.To;
            isShort |= use.From > from && At(use.From) > most;
        }

        return isShort ? free : null;

        int At(long moment)
        {
            var sum = 0;
            foreach (var use in taken[gear]) if (use.From <= moment && moment < use.To) sum += use.Amount;
            return sum;
        }
    }
}
