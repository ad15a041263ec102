namespace Lapwise.Scheduling;

/// <summary>
/// When each visit can begin with nobody in the way, where nothing ends later than a moment: its open hours, less what the hours
/// of visits bound to it by lags do not allow. A coat on a Friday falls out where the next must follow within a weekend that
/// nobody works.
/// </summary>
internal sealed class Places
{
    /// <summary>Longer than any calendar.</summary>
    private const long Far = long.MaxValue / 4;
    /// <summary>What is left after so many rounds is more than could be left, and still no less than there is.</summary>
    private const int MostRounds = 100;

    /// <summary>One begins so long after the other.</summary>
    private readonly record struct Pair(int From, int To, long Least, long Most);

    private readonly ScheduleProblem problem;
    private readonly IReadOnlyList<Window>[] starts;
    private readonly List<Pair> pairs;
    // Whose places became fewer, in this round and in the one before.
    private bool[] fewer;
    private bool[] fewerBefore;

    private Places(ScheduleProblem problem, long end)
    {
        this.problem = problem;
        starts = [.. problem.Visits.Select(v => Alone(v, end))];
        pairs = [.. problem.Lags.GroupBy(l => (Math.Min(l.From, l.To), Math.Max(l.From, l.To))).Select(Bound)];
        (fewer, fewerBefore) = (new bool[starts.Length], [.. starts.Select(_ => true)]);
        Nowhere = Array.FindIndex(starts, s => s.Count == 0) is >= 0 and var shut ? shut : null;
    }

    /// <summary>A visit that has no place; null: all have theirs.</summary>
    public int? Nowhere { get; private set; }

    public static Places Until(ScheduleProblem problem, long end)
    {
        var places = new Places(problem, end);
        for (var round = 0; round < MostRounds && places.Nowhere is null && places.fewerBefore.Contains(true); round++) places.Settle(back: round % 2 == 1);
        return places;
    }

    public long Earliest(int visit) => starts[visit][0].From;

    public long LatestEnd(int visit) => starts[visit][^1].To - 1 + problem.Visits[visit].Length;

    private static IReadOnlyList<Window> Alone(Visit visit, long end)
    {
        if (visit.Locked is { } locked) return locked.Start + visit.Length <= end ? [new Window(locked.Start, locked.Start + 1)] : [];
        IReadOnlyList<Window> open = visit.Open.Count > 0 ? visit.Open : [new Window(0, end)];
        return [.. open.Select(w => new Window(Math.Max(w.From, visit.NotBefore), Math.Min(w.To, end) - visit.Length + 1)).Where(w => w.From < w.To)];
    }

    private static Pair Bound(IGrouping<(int From, int To), Lag> lags)
    {
        var (from, to) = lags.Key;
        return new Pair(from, to, lags.Where(l => l.From == from).Select(l => l.Least).DefaultIfEmpty(-Far).Max(), -lags.Where(l => l.From == to).Select(l => l.Least).DefaultIfEmpty(-Far).Max());
    }

    /// <summary>One round over all pairs; every other one goes back, so that what is pushed runs along a whole job at once.</summary>
    private void Settle(bool back)
    {
        for (var i = 0; i < pairs.Count && Nowhere is null; i++)
        {
            var (from, to, least, most) = pairs[back ? ^(i + 1) : i];
            if (!(fewer[from] || fewer[to] || fewerBefore[from] || fewerBefore[to])) continue;
            Leave(to, Shifted(starts[from], least, most));
            if (Nowhere is null) Leave(from, Shifted(starts[to], -most, -least));
        }

        (fewerBefore, fewer) = (fewer, new bool[starts.Length]);
    }

    private void Leave(int visit, List<Window> allowed)
    {
        var left = Both(starts[visit], allowed);
        if (left.SequenceEqual(starts[visit])) return;
        (starts[visit], fewer[visit]) = (left, true);
        if (left.Count == 0) Nowhere = visit;
    }

    /// <summary>Every moment that lies so long after one of these.</summary>
    private static List<Window> Shifted(IReadOnlyList<Window> moments, long least, long most)
    {
        List<Window> shifted = [];
        foreach (var (from, to) in moments)
        {
            if (shifted.Count > 0 && from + least <= shifted[^1].To) shifted[^1] = shifted[^1] with { To = to + most };
            else shifted.Add(new Window(from + least, to + most));
        }

        return shifted;
    }

    private static List<Window> Both(IReadOnlyList<Window> one, List<Window> other)
    {
        List<Window> both = [];
        for (var (i, j) = (0, 0); i < one.Count && j < other.Count;)
        {
            var (from, to) = (Math.Max(one[i].From, other[j].From), Math.Min(one[i].To, other[j].To));
            if (from < to) both.Add(new Window(from, to));
            if (one[i].To < other[j].To) i++;
            else j++;
        }

        return both;
    }
}
